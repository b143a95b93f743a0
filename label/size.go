package label

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"backleaf/record"
	"backleaf/record/measure"
)

// An Area is a width and a height.
type Area struct{ WidthMM, HeightMM float64 }

// In writes height × width, as panels and sheets are measured, in the unit of
// a studio: inches to sixteenths, centimetres, else millimetres.
func (a Area) In(u record.LengthUnit) string {
	switch u {
	case "in":
		inches := func(mm float64) string {
			s, _ := measure.InchFraction(int64(math.Round(mm*1000)), 16)
			return s
		}
		return inches(a.HeightMM) + " × " + inches(a.WidthMM) + " in"
	case "cm":
		return fmt.Sprintf("%.4g × %.4g cm", a.HeightMM/10, a.WidthMM/10)
	}
	return a.String()
}

// String is In millimetres.
func (a Area) String() string { return fmt.Sprintf("%.4g × %.4g mm", a.HeightMM, a.WidthMM) }

// within reports whether the area fits inside another one.
func (a Area) within(b Area) bool {
	return a.WidthMM <= b.WidthMM+1e-6 && a.HeightMM <= b.HeightMM+1e-6
}

// A Size is how large a label is. The zero value, Auto, stands for the place
// of a bought sheet, or else for the largest named size that fits.
type Size struct {
	name string
	area Area
}

// The named sizes. Their widths and heights let 24, 12 and 6 labels stand on
// A4, and 20, 12 and 6 on Letter.
var (
	Auto   = Size{}
	Small  = Size{"small", Area{42, 42}}
	Medium = Size{"medium", Area{62, 62}}
	Large  = Size{"large", Area{95, 85}}
)

// named are the named sizes, the largest first.
var named = []Size{Large, Medium, Small}

// Sides of a label of one's own, in millimetres.
const (
	shortestMM = 25
	longestMM  = 400
)

// SizeOf is a label of an area of one's own; an error has its figures in the
// unit.
func SizeOf(a Area, u record.LengthUnit) (Size, error) {
	if !(min(a.WidthMM, a.HeightMM) >= shortestMM && max(a.WidthMM, a.HeightMM) <= longestMM) {
		least, most := Area{shortestMM, shortestMM}, Area{longestMM, longestMM}
		return Auto, fmt.Errorf("a label of %s is not to be had: the least is %s, the most %s", a.In(u), least.In(u), most.In(u))
	}
	return Size{area: a}, nil
}

// ParseSize reads the name of a size or a height × width, such as "40 x 60 mm".
func ParseSize(text string, u record.LengthUnit) (Size, error) {
	switch text = strings.TrimSpace(text); text {
	case "auto", "":
		return Auto, nil
	case "small", "medium", "large":
		for _, s := range named {
			if s.name == text {
				return s, nil
			}
		}
	}
	size, err := record.ParseSize(text)
	if err != nil {
		like := map[record.LengthUnit]string{"in": "2 x 4 in", "cm": "4 x 6 cm"}[u]
		return Auto, fmt.Errorf("there is no label size %q: expected small, medium, large, auto, or a height × width such as %q", text, cmp.Or(like, "40 x 60 mm"))
	}
	return SizeOf(back(size), u)
}

// String returns the name of the size, or its height × width in millimetres.
func (s Size) String() string { return s.In("mm") }

// In returns the name of the size, or its height × width in a unit.
func (s Size) In(u record.LengthUnit) string {
	switch {
	case s.name != "":
		return s.name
	case s == Auto:
		return "auto"
	}
	return s.area.In(u)
}

// room returns the largest label that a back may carry: on each side some of
// the panel is left free.
func room(back Area) Area {
	margin := math.Min(8, math.Max(4, 0.06*math.Min(back.WidthMM, back.HeightMM)))
	return Area{back.WidthMM - 2*margin, back.HeightMM - 2*margin}
}

// Fit returns the size of the label for a back in a place of a sheet: all of
// the place, as far as the back allows, or on plain paper, without a place,
// the largest named size that fits. A back that is not known takes the smallest.
func Fit(back, place Area, u record.LengthUnit) (Size, error) {
	switch {
	case place != (Area{}) && back == (Area{}):
		return Size{area: place}, nil
	case place != (Area{}):
		r := room(back)
		return SizeOf(Area{math.Min(place.WidthMM, r.WidthMM), math.Min(place.HeightMM, r.HeightMM)}, u)
	case back == (Area{}):
		return Small, nil
	}
	for _, s := range named {
		if s.area.within(room(back)) {
			return s, nil
		}
	}
	return Auto, Small.fits(back, place, u)
}

// fits says why a size does not fit; a back that is not known takes any.
func (s Size) fits(back, place Area, u record.LengthUnit) error {
	if place != (Area{}) && !s.area.within(place) {
		return fmt.Errorf("a label of %s does not fit in a place of the sheet of %s", s.area.In(u), place.In(u))
	}
	if back != (Area{}) && !s.area.within(room(back)) {
		return fmt.Errorf("a label of %s does not fit on a back of %s with a margin left around it", s.area.In(u), back.In(u))
	}
	return nil
}
