package label_test

import (
	"math"
	"strings"
	"testing"

	"backleaf/label"
	"backleaf/record"
)

func sheet(t *testing.T, page, place string, rows, cols int64, margins ...string) record.LabelSheet {
	t.Helper()
	s := record.LabelSheet{Rows: rows, Cols: cols}
	for text, into := range map[string]interface{ UnmarshalText([]byte) error }{page: &s.Page, place: &s.Label} {
		if err := into.UnmarshalText([]byte(text)); err != nil {
			t.Fatal(err)
		}
	}
	for i, l := range []*record.Length{&s.Top, &s.Left, &s.PitchV, &s.PitchH} {
		if i < len(margins) && margins[i] != "" {
			if err := l.UnmarshalText([]byte(margins[i])); err != nil {
				t.Fatal(err)
			}
		}
	}
	return s
}

func TestSheetOf(t *testing.T) {
	for name, c := range map[string]struct {
		in        record.LabelSheet
		top, left float64
		bad       string
	}{
		"all given":           {sheet(t, "297 x 210 mm", "38.1 x 63.5 mm", 7, 3, "15.1 mm", "7.2 mm", "38.1 mm", "66 mm"), 15.1, 7.2, ""},
		"in inches":           {sheet(t, "11 x 8 1/2 in", "2 x 4 in", 5, 2, "1/2 in", "5/32 in", "2 in", "4 3/16 in"), 12.7, 3.96875, ""},
		"in the middle":       {sheet(t, "297 x 210 mm", "67.7 x 99.1 mm", 4, 2), 13.1, 5.9, ""},
		"too many rows":       {sheet(t, "297 x 210 mm", "67.7 x 99.1 mm", 5, 2), 0, 0, "do not lie on a page"},
		"labels that overlap": {sheet(t, "297 x 210 mm", "40 x 60 mm", 2, 2, "10 mm", "10 mm", "30 mm", "60 mm"), 0, 0, "overlap"},
		"off the page":        {sheet(t, "297 x 210 mm", "40 x 60 mm", 2, 2, "280 mm", "10 mm"), 0, 0, "do not lie on a page"},
		"no rows":             {sheet(t, "297 x 210 mm", "40 x 60 mm", 0, 2), 0, 0, "rows: expected 1 to 100"},
		"no page":             {record.LabelSheet{Rows: 2, Cols: 2}, 0, 0, "page"},
	} {
		got, err := label.SheetOf(c.in)
		switch {
		case c.bad != "":
			if err == nil || !strings.Contains(err.Error(), c.bad) {
				t.Errorf("%s: error %v", name, err)
			}
		case err != nil:
			t.Errorf("%s: %v", name, err)
		case math.Abs(got.Top-c.top) > 0.001 || math.Abs(got.Left-c.left) > 0.001:
			t.Errorf("%s: top %.4f, left %.4f", name, got.Top, got.Left)
		}
	}
}

// A label that its panel cannot carry is not squeezed into the sheet: it is
// drawn smaller in its place, with lines to cut along, or refused.
func TestPlaceLargerThanThePanel(t *testing.T) {
	in := finished()
	in.Back = label.Area{WidthMM: 80, HeightMM: 60}
	o := options(label.Auto)
	o.Sheet = in1(label.Area{WidthMM: 99.1, HeightMM: 67.7})
	ls, err := label.Arrange([]label.Input{in}, o)
	if err != nil {
		t.Fatal(err)
	}
	if a := ls[0].Area; a.WidthMM != 72 || a.HeightMM != 52 {
		t.Errorf("a label of %v", a)
	}
	checkBoxes(t, ls[0], in)
	o.Size = label.Large
	if _, err := label.Arrange([]label.Input{in}, o); err == nil {
		t.Error("a large label was put on a back of 80 × 60 mm")
	}
}

func TestNames(t *testing.T) {
	for _, s := range []label.Size{label.Auto, label.Small, label.Medium, label.Large} {
		if got, err := label.ParseSize(s.String(), "mm"); got != s || err != nil {
			t.Errorf("%v: %v, %v", s, got, err)
		}
	}
	if s, err := label.ParseSize("40 x 60 mm", "mm"); err != nil || s.String() != "40 × 60 mm" {
		t.Errorf("40 x 60 mm: %v, %v", s, err)
	}
	for _, bad := range []string{"10 x 60 mm", "40 x 600 mm", "40 mm", "40 x 60"} {
		if s, err := label.ParseSize(bad, "mm"); err == nil {
			t.Errorf("%q is a size of %v", bad, s)
		}
	}
	if _, err := label.ParseSize("huge", "mm"); err == nil {
		t.Error("huge is a size")
	}
	if _, err := label.ParseStage("sold"); err == nil {
		t.Error("sold is a stage")
	}
	if _, err := label.PaperNamed("legal"); err == nil {
		t.Error("legal is a paper")
	}
}
