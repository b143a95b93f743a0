// Package photo makes a kept photograph ready for print: upright, in sRGB,
// and with no more pixels than the print can show; and it finds out what a
// photograph holds before it is kept.
//
// It reads baseline and progressive JPEG (ITU-T T.81; grey, YCbCr, RGB, CMYK)
// and PNG. Which way is up is read from Exif (CIPA DC-008, tag 0x0112), also
// in PNG (eXIf chunk). Colour is read from an embedded ICC profile
// (ICC.1:2010) if it is made of a matrix and curves, as those of cameras are,
// or of one grey curve. Without a profile, or with one made of tables, the
// values are taken for sRGB.
//
// Where the picture was taken is found in Exif, XMP, IPTC and other notes, and
// behind the picture, and can be taken out; makers' notes of cameras, whose form
// is not published, are not looked into.
//
// A picture that would take more than some 230 MB to decode is refused before
// it is; TestBounds measures it. TestColourByAnotherProgram holds the conversion
// against an independent colour management system; TestOrientation holds the
// eight orientations, TestPlacesByAnotherReader what is found and taken out,
// against other readers.
package photo

import (
	"bytes"
	"fmt"
	"image"
	_ "image/jpeg" // the two kinds of photograph that are kept
	_ "image/png"
)

// open takes a photograph apart and refuses what is none or takes too much.
func open(photograph []byte) (file, error) {
	f, err := takeApart(photograph)
	if err == nil {
		err = f.affordable(len(photograph))
	}
	if err != nil {
		return file{}, fmt.Errorf("cannot read the photograph: %w", err)
	}
	return f, nil
}

// size returns width and height of a photograph held upright.
func size(photograph []byte, o orientation) (width, height int, err error) {
	c, _, err := image.DecodeConfig(bytes.NewReader(photograph))
	if err != nil {
		return 0, 0, fmt.Errorf("cannot read the photograph: %w", errDamaged)
	}
	if o.sideways() {
		return c.Height, c.Width, nil
	}
	return c.Width, c.Height, nil
}

// Size returns the width and height of a photograph held upright, in pixels.
func Size(photograph []byte) (width, height int, err error) {
	f, err := open(photograph)
	if err != nil {
		return 0, 0, err
	}
	return size(photograph, f.tags().orientation)
}

// About is what a photograph holds.
type About struct {
	Type          string // "jpeg" or "png"
	Width, Height int    // held upright, in pixels
	// Profile is the name of the colour profile, empty if there is none: text
	// from outside. If Converted is false, its values are printed as sRGB.
	Profile   string
	Converted bool
	// Places are where in the file stands where the picture was taken.
	Places []Place
}

// Look reads all of a photograph, decodes it once, and says what it holds.
func Look(photograph []byte) (About, error) {
	f, err := open(photograph)
	if err != nil {
		return About{}, err
	}
	t := f.tags()
	a := About{Type: "jpeg"}
	if f.png {
		a.Type = "png"
	}
	if a.Width, a.Height, err = size(photograph, t.orientation); err != nil {
		return About{}, err
	}
	if _, _, err := image.Decode(bytes.NewReader(photograph)); err != nil {
		return About{}, fmt.Errorf("cannot read the photograph: %w: %w", errDamaged, err)
	}
	if t.profile != nil {
		a.Profile = profileName(t.profile)
		_, a.Converted = readProfile(t.profile)
	}
	found, behind := f.places()
	for _, place := range []Place{InExif, InNote} {
		for i := range f.parts {
			if found[i] == place {
				a.Places = append(a.Places, place)
				break
			}
		}
	}
	if behind {
		a.Places = append(a.Places, InBehind)
	}
	return a, nil
}

// Print reads a photograph and returns it upright and in sRGB, scaled down to
// at most maxWidth × maxHeight pixels. It is never scaled up and its
// proportions are kept.
func Print(photograph []byte, maxWidth, maxHeight int) (image.Image, error) {
	f, err := open(photograph)
	if err != nil {
		return nil, err
	}
	t := f.tags()
	w, h, err := size(photograph, t.orientation)
	if err != nil {
		return nil, err
	}
	if maxWidth < 1 || maxHeight < 1 {
		return nil, fmt.Errorf("cannot print the photograph in %d × %d pixels", maxWidth, maxHeight)
	}
	full, _, err := image.Decode(bytes.NewReader(photograph))
	if err != nil {
		return nil, fmt.Errorf("cannot read the photograph: %w: %w", errDamaged, err)
	}
	scale := min(1, float64(maxWidth)/float64(w), float64(maxHeight)/float64(h))
	b := full.Bounds()
	small := scaled(full, max(1, int(float64(b.Dx())*scale+0.5)), max(1, int(float64(b.Dy())*scale+0.5)))
	if p, ok := readProfile(t.profile); ok {
		p.convert(small)
	}
	return t.orientation.upright(small), nil
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
