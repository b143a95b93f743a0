// Package photo makes a kept photograph ready for print: upright, in sRGB,
// and with no more pixels than the print can show.
//
// It reads baseline and progressive JPEG (ITU-T T.81; grey, YCbCr, RGB, CMYK)
// and PNG. Which way is up is read from Exif (CIPA DC-008, tag 0x0112), also
// in PNG (eXIf chunk). Colour is read from an embedded ICC profile
// (ICC.1:2010) if it is made of a matrix and curves, as those of cameras are,
// or of one grey curve. Without a profile, or with one made of tables, the
// values are taken for sRGB.
//
// TestColourByAnotherProgram holds the conversion against an independent
// colour management system; TestOrientation holds the eight orientations
// against another reader.
package photo

import (
	"bytes"
	"fmt"
	"image"
	_ "image/jpeg" // the two kinds of photograph that are kept
	_ "image/png"

	"golang.org/x/image/draw"
)

// maxPixels bounds what is unpacked: larger than any camera's picture, and
// about a gigabyte of memory at worst.
const maxPixels = 250_000_000

// Size returns the width and height of a photograph held upright, in pixels.
func Size(file []byte) (width, height int, err error) {
	c, kind, err := image.DecodeConfig(bytes.NewReader(file))
	if err != nil || kind != "jpeg" && kind != "png" {
		return 0, 0, fmt.Errorf("cannot read the photograph: it is neither JPEG nor PNG")
	}
	if c.Width < 1 || c.Height < 1 || c.Width > maxPixels/c.Height {
		return 0, 0, fmt.Errorf("cannot read the photograph: %d × %d pixels are too many", c.Width, c.Height)
	}
	if readTags(file).orientation.sideways() {
		return c.Height, c.Width, nil
	}
	return c.Width, c.Height, nil
}

// Print reads a photograph and returns it upright and in sRGB, scaled down to
// at most maxWidth × maxHeight pixels. It is never scaled up and its
// proportions are kept.
func Print(file []byte, maxWidth, maxHeight int) (image.Image, error) {
	w, h, err := Size(file)
	if err != nil {
		return nil, err
	}
	if maxWidth < 1 || maxHeight < 1 {
		return nil, fmt.Errorf("cannot print the photograph in %d × %d pixels", maxWidth, maxHeight)
	}
	full, _, err := image.Decode(bytes.NewReader(file))
	if err != nil {
		return nil, fmt.Errorf("cannot read the photograph: %w", err)
	}
	tags := readTags(file)
	scale := min(1, float64(maxWidth)/float64(w), float64(maxHeight)/float64(h))
	b := full.Bounds()
	small := scaled(full, max(1, int(float64(b.Dx())*scale+0.5)), max(1, int(float64(b.Dy())*scale+0.5)))
	if p, ok := readProfile(tags.profile); ok {
		p.convert(small)
	}
	return tags.orientation.upright(small), nil
}

// scaled draws the picture on white at a size of its own. Grey stays grey by
// value; paper prints equal channels as it prints grey.
func scaled(full image.Image, w, h int) *image.RGBA {
	small := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(small, small.Bounds(), image.White, image.Point{}, draw.Src)
	draw.CatmullRom.Scale(small, small.Bounds(), full, full.Bounds(), draw.Over, nil)
	return small
}

// An orientation is the value of the Exif tag: which row and column of the
// picture are its top and left. 0 says nothing.
type orientation int

// sideways reports that rows are columns.
func (o orientation) sideways() bool { return o >= 5 && o <= 8 }

// upright turns and mirrors a picture so that its top is up.
func (o orientation) upright(in *image.RGBA) *image.RGBA {
	if o < 2 || o > 8 {
		return in
	}
	w, h := in.Rect.Dx(), in.Rect.Dy()
	outW, outH := w, h
	if o.sideways() {
		outW, outH = h, w
	}
	out := image.NewRGBA(image.Rect(0, 0, outW, outH))
	for y := range h {
		for x := range w {
			tx, ty := o.place(x, y, w, h)
			copy(out.Pix[out.PixOffset(tx, ty):][:4], in.Pix[in.PixOffset(x, y):][:4])
		}
	}
	return out
}

// place returns where a pixel of a picture of w × h goes (CIPA DC-008, table
// of the orientation tag).
func (o orientation) place(x, y, w, h int) (int, int) {
	switch o {
	case 2: // the 0th column is at the right
		return w - 1 - x, y
	case 3: // the 0th row is at the bottom, the 0th column at the right
		return w - 1 - x, h - 1 - y
	case 4: // the 0th row is at the bottom
		return x, h - 1 - y
	case 5: // the 0th row is at the left
		return y, x
	case 6: // the 0th row is at the right
		return h - 1 - y, x
	case 7: // the 0th row is at the right, the 0th column at the bottom
		return h - 1 - y, w - 1 - x
	}
	return y, w - 1 - x // 8: the 0th row is at the left, the 0th column at the bottom
}
