package label

import (
	"fmt"
	"math"

	"backleaf/record"
)

// A Sheet is a page with places for labels, in rows from the top, each from
// left to right. A sheet without places is plain paper: every size of label
// gets the places it needs, and crop marks to cut along.
type Sheet struct {
	Page       Area
	Place      Area
	Rows, Cols int
	Top, Left  float64 // mm from the edges of the page to the first place
	Down       float64 // mm from the top of one place to that of the next below
	Across     float64 // mm from the left of one place to that of the next
}

// Papers of every day. ISO 216 and ANSI X3.151 (from memory).
var (
	A4     = Area{210, 297}
	Letter = Area{215.9, 279.4}
)

// PaperNamed returns A4 for "a4" and for nothing, Letter for "letter".
func PaperNamed(name string) (Area, error) {
	switch name {
	case "a4", "":
		return A4, nil
	case "letter":
		return Letter, nil
	}
	return Area{}, fmt.Errorf("there is no paper %q: expected a4 or letter", name)
}

// On plain paper, what printers leave white at the edges, and the gap between
// labels that has room for crop marks.
const (
	whiteMM = 8
	gapMM   = 4
)

// SheetOf reads the layout kept in the settings of a studio. Margins that are
// not given put the labels in the middle of the page; a pitch that is not
// given puts them edge to edge.
func SheetOf(s record.LabelSheet) (Sheet, error) {
	return SheetOn(back(s.Page), s)
}

// SheetOn is [SheetOf] on another page than that of the settings.
func SheetOn(page Area, s record.LabelSheet) (Sheet, error) {
	fail := func(of, why string) (Sheet, error) {
		return Sheet{}, &record.FieldError{Field: "label_sheet/" + of, Why: why}
	}
	out := Sheet{Page: page, Place: back(s.Label), Rows: int(s.Rows), Cols: int(s.Cols)}
	switch {
	case out.Page == (Area{}):
		return fail("page", "the size of its page is not given")
	case out.Place == (Area{}) && s.Rows == 0 && s.Cols == 0:
		return Sheet{Page: out.Page}, nil
	case out.Place == (Area{}):
		return fail("label", "the size of one label is not given")
	case s.Rows < 1 || s.Rows > 100:
		return fail("rows", "expected 1 to 100")
	case s.Cols < 1 || s.Cols > 100:
		return fail("columns", "expected 1 to 100")
	}
	mm := func(l record.Length, otherwise float64) float64 {
		if um, ok := l.Micrometers(); ok {
			return float64(um) / 1000
		}
		return otherwise
	}
	out.Down, out.Across = mm(s.PitchV, out.Place.HeightMM), mm(s.PitchH, out.Place.WidthMM)
	high, wide := out.span()
	out.Top, out.Left = mm(s.Top, (out.Page.HeightMM-high)/2), mm(s.Left, (out.Page.WidthMM-wide)/2)
	return out, out.check(record.LengthUnit(s.Label.Height.Unit()))
}

// span is what all places together take.
func (s Sheet) span() (high, wide float64) {
	return float64(s.Rows-1)*s.Down + s.Place.HeightMM, float64(s.Cols-1)*s.Across + s.Place.WidthMM
}

// check refuses places that overlap or leave the page.
func (s Sheet) check(u record.LengthUnit) error {
	const slack = 0.05 // of figures that were rounded to tenths
	high, wide := s.span()
	switch {
	case s.Rows > 1 && s.Down < s.Place.HeightMM-slack:
		return &record.FieldError{Field: "label_sheet/down", Why: "it is less than the height of a label, so that labels would overlap"}
	case s.Cols > 1 && s.Across < s.Place.WidthMM-slack:
		return &record.FieldError{Field: "label_sheet/across", Why: "it is less than the width of a label, so that labels would overlap"}
	case s.Top < -slack || s.Left < -slack || s.Top+high > s.Page.HeightMM+slack || s.Left+wide > s.Page.WidthMM+slack:
		return &record.FieldError{Field: "label_sheet/label", Why: fmt.Sprintf("%d × %d labels of %s do not lie on a page of %s", s.Rows, s.Cols, s.Place.In(u), s.Page.In(u))}
	}
	return nil
}

// plain reports that the sheet has no places of its own.
func (s Sheet) plain() bool { return s.Place == Area{} }

// forArea gives plain paper places for labels of one area.
func (s Sheet) forArea(a Area, u record.LengthUnit) (Sheet, error) {
	if !s.plain() {
		return s, nil
	}
	count := func(page, label float64) int { return int(math.Floor((page-2*whiteMM+gapMM)/(label+gapMM) + 1e-9)) }
	s.Place, s.Rows, s.Cols = a, count(s.Page.HeightMM, a.HeightMM), count(s.Page.WidthMM, a.WidthMM)
	if s.Rows < 1 || s.Cols < 1 {
		return s, fmt.Errorf("a page of %s has no room for a label of %s", s.Page.In(u), a.In(u))
	}
	s.Down, s.Across = a.HeightMM+gapMM, a.WidthMM+gapMM
	high, wide := s.span()
	s.Top, s.Left = (s.Page.HeightMM-high)/2, (s.Page.WidthMM-wide)/2
	return s, nil
}

// places is how many labels a sheet takes.
func (s Sheet) places() int { return s.Rows * s.Cols }

// at is where the place with an index stands, on the dots of a printer.
func (s Sheet) at(i int) (x, y float64) {
	return snap(s.Left + float64(i%s.Cols)*s.Across), snap(s.Top + float64(i/s.Cols)*s.Down)
}
