package paper

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
)

// pictureQuality keeps what a print at 300 dpi can show.
const pictureQuality = 92

// maxPictureSide is what JPEG can hold.
const maxPictureSide = 65500

// Within gives the picture the largest size in an area that keeps its proportions.
func (p Picture) Within(width, height float64) Picture {
	size := p.Image.Bounds().Size()
	scale := min(width/float64(size.X), height/float64(size.Y))
	p.W, p.H = scale*float64(size.X), scale*float64(size.Y)
	return p
}

// encodePicture writes the image as JPEG in sRGB or grey, on white.
func encodePicture(img image.Image) ([]byte, error) {
	if img == nil || img.Bounds().Empty() {
		return nil, fmt.Errorf("cannot draw picture: it is empty")
	}
	if s := img.Bounds().Size(); s.X > maxPictureSide || s.Y > maxPictureSide {
		return nil, fmt.Errorf("cannot draw picture: %d × %d is larger than %d pixels a side", s.X, s.Y, maxPictureSide)
	}
	if _, grey := img.(*image.Gray); !grey {
		flat := image.NewRGBA(image.Rectangle{Max: img.Bounds().Size()})
		draw.Draw(flat, flat.Bounds(), image.NewUniform(color.White), image.Point{}, draw.Src)
		draw.Draw(flat, flat.Bounds(), img, img.Bounds().Min, draw.Over)
		img = flat
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: pictureQuality}); err != nil {
		return nil, fmt.Errorf("cannot draw picture: %w", err)
	}
	return b.Bytes(), nil
}
