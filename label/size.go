package label

import (
	"fmt"
	"math"
	"strings"

	"backleaf/record"
)

// An Area is a width and a height.
type Area struct{ WidthMM, HeightMM float64 }

// String writes height × width, as panels and sheets are measured.
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

// SizeOf is a label of an area of one's own.
func SizeOf(a Area) (Size, error) {
	if !(min(a.WidthMM, a.HeightMM) >= shortestMM && max(a.WidthMM, a.HeightMM) <= longestMM) {
		return Auto, fmt.Errorf("a label of %v is not to be had: its sides must be %d to %d mm", a, shortestMM, longestMM)
	}
	return Size{area: a}, nil
}

// ParseSize reads the name of a size or a height × width, such as "40 x 60 mm".
func ParseSize(text string) (Size, error) {
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
		return Auto, fmt.Errorf("there is no label size %q: expected small, medium, large, auto, or a height × width such as \"40 x 60 mm\"", text)
	}
	return SizeOf(back(size))
}

// String returns the name of the size, or its height × width.
func (s Size) String() string {
	switch {
	case s.name != "":
		return s.name
	case s == Auto:
		return "auto"
	}
	return s.area.String()
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
func Fit(back, place Area) (Size, error) {
	switch {
	case place != (Area{}) && back == (Area{}):
		return Size{area: place}, nil
	case place != (Area{}):
		r := room(back)
		return SizeOf(Area{math.Min(place.WidthMM, r.WidthMM), math.Min(place.HeightMM, r.HeightMM)})
	case back == (Area{}):
		return Small, nil
	}
	for _, s := range named {
		if s.area.within(room(back)) {
			return s, nil
		}
	}
	return Auto, Small.fits(back, place)
}

// fits says why a size does not fit; a back that is not known takes any.
func (s Size) fits(back, place Area) error {
	if place != (Area{}) && !s.area.within(place) {
		return fmt.Errorf("a label of %v does not fit in a place of the sheet of %v", s.area, place)
	}
	if back != (Area{}) && !s.area.within(room(back)) {
		return fmt.Errorf("a label of %v does not fit on a back of %v with a margin left around it", s.area, back)
	}
	return nil
}
