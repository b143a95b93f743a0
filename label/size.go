package label

import (
	"fmt"

	"backleaf/record/paper"
)

// A Size is one of the three designs of a label. The zero value, Auto, stands
// for the largest that fits.
type Size int

// The sizes.
const (
	Auto Size = iota
	Small
	Medium
	Large
)

var sizeNames = [...]string{"auto", "small", "medium", "large"}

// String returns the name of the size: small, medium, large, auto.
func (s Size) String() string { return sizeNames[s] }

// ParseSize reads the name of a size.
func ParseSize(name string) (Size, error) {
	for s, n := range sizeNames {
		if n == name {
			return Size(s), nil
		}
	}
	return Auto, fmt.Errorf("there is no label size %q: expected small, medium, large or auto", name)
}

// An Area is a width and a height.
type Area struct{ WidthMM, HeightMM float64 }

func (a Area) String() string { return fmt.Sprintf("%.4g × %.4g mm", a.WidthMM, a.HeightMM) }

// within reports whether the area fits inside another one.
func (a Area) within(b Area) bool {
	return a.WidthMM <= b.WidthMM+1e-6 && a.HeightMM <= b.HeightMM+1e-6
}

// A design is what a size means in millimetres and type.
type design struct {
	area     Area    // of the label by itself
	least    Area    // of a place on a sheet that can take it
	marginMM float64 // of panel left free around it
	padMM    float64
	scale    float64 // of the label styles
	headMM   float64 // column of headings; 0: they run in
	dotsMost int     // largest QR module, in dots of 1/300 inch
	dotsLast int     // smallest
	rowMM    float64 // a line to write on, from one to the next
	qrLow    bool    // the symbol stands at the foot and not beside the title
}

// The widths and heights let 24, 12 and 6 labels stand on A4, and 20, 12 and
// 6 on Letter. A module has 5 dots of 1/300 inch (0.42 mm) at least on the
// smallest label, and 6 (0.51 mm) on the others.
var designs = map[Size]design{
	Small:  {area: Area{42, 42}, least: Area{40, 29}, marginMM: 4, padMM: 2.6, scale: 0.81, dotsMost: 6, dotsLast: 5, rowMM: 5, qrLow: true},
	Medium: {area: Area{62, 62}, least: Area{58, 38}, marginMM: 6, padMM: 3.2, scale: 0.88, dotsMost: 6, dotsLast: 6, rowMM: 5.5},
	Large:  {area: Area{95, 85}, least: Area{88, 54}, marginMM: 8, padMM: 4, scale: 1, headMM: 21, dotsMost: 7, dotsLast: 6, rowMM: 6.5},
}

// Area returns the size of a label of this design by itself.
func (s Size) Area() Area { return designs[s].area }

// room returns the largest label that a back may carry.
func (d design) room(back Area) Area {
	return Area{back.WidthMM - 2*d.marginMM, back.HeightMM - 2*d.marginMM}
}

// Fit chooses the largest design that fits on a back with its margin and,
// if place is not zero, in a place of a sheet. A back that is not known takes
// the smallest.
func Fit(back, place Area) (Size, error) {
	for s := Large; s > Small && back != (Area{}); s-- {
		if s.fits(back, place) == nil {
			return s, nil
		}
	}
	return Small, Small.fits(back, place)
}

// fits says why a design does not fit; a back that is not known takes any.
func (s Size) fits(back, place Area) error {
	d := designs[s]
	need := d.area
	if place != (Area{}) {
		need = d.least
		if !need.within(place) {
			return fmt.Errorf("the %v label needs %v, and a place of the sheet has %v", s, need, place)
		}
	}
	if back != (Area{}) && !need.within(d.room(back)) {
		return fmt.Errorf("the %v label of %v does not fit on a back of %v with %.0f mm left around it", s, need, back, d.marginMM)
	}
	return nil
}

// grown is the area a label takes: all of its place, as far as the back
// allows; without a place that of the design.
func (s Size) grown(back, place Area) Area {
	d := designs[s]
	switch {
	case place == (Area{}):
		return d.area
	case back == (Area{}):
		return place
	}
	room := d.room(back)
	return Area{min(place.WidthMM, room.WidthMM), min(place.HeightMM, room.HeightMM)}
}

// The styles of a design, from those every paper shares.
func (d design) number() paper.Style { return paper.LabelNumber.Scaled(d.scale) }
func (d design) title() paper.Style  { return paper.LabelBold.Scaled(1.25 * d.scale) }
func (d design) strong() paper.Style { return paper.LabelBold.Scaled(d.scale) }
func (d design) body() paper.Style   { return paper.LabelBody.Scaled(d.scale) }
func (d design) small() paper.Style  { return paper.LabelSmall.Scaled(d.scale) }
func (d design) head() paper.Style   { return paper.LabelHead.Scaled(d.scale) }
