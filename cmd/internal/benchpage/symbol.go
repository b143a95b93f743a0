package benchpage

import (
	"image"
	"image/draw"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	xdraw "golang.org/x/image/draw"
)

// symbols reads QR symbols in a photograph, as a person takes it: at several
// sizes, because a blurred symbol is read best when its modules are few pixels.
func symbols(img image.Image) (texts []string) {
	b := img.Bounds()
	for _, side := range []int{max(b.Dx(), b.Dy()), 1400, 1000, 700, 500} {
		small := scaled(img, side)
		for _, binary := range []gozxing.Binarizer{
			gozxing.NewHybridBinarizer(gozxing.NewLuminanceSourceFromImage(small)),
			gozxing.NewGlobalHistgramBinarizer(gozxing.NewLuminanceSourceFromImage(small)),
		} {
			bitmap, err := gozxing.NewBinaryBitmap(binary)
			if err != nil {
				continue
			}
			for _, hints := range []map[gozxing.DecodeHintType]any{nil, {gozxing.DecodeHintType_TRY_HARDER: true}} {
				if r, err := qrcode.NewQRCodeReader().Decode(bitmap, hints); err == nil {
					return append(texts, r.GetText())
				}
			}
		}
	}
	return texts
}

// scaled is a picture in grey whose longer side has at most so many pixels.
func scaled(img image.Image, side int) *image.Gray {
	b := img.Bounds()
	w, h := b.Dx(), b.Dy()
	if long := max(w, h); long > side {
		w, h = max(w*side/long, 1), max(h*side/long, 1)
	}
	out := image.NewGray(image.Rect(0, 0, w, h))
	if w == b.Dx() {
		draw.Draw(out, out.Bounds(), img, b.Min, draw.Src)
	} else {
		xdraw.CatmullRom.Scale(out, out.Bounds(), img, b, draw.Src, nil)
	}
	return out
}
