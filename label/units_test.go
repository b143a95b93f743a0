package label_test

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"backleaf/label"
	"backleaf/record"
)

var figureAndUnit = regexp.MustCompile(`\d (mm|cm|in)\b`)

// The ruler along the places of a bought sheet has the units of the studio.
func TestRulerInTheUnitOfTheStudio(t *testing.T) {
	for _, unit := range []record.LengthUnit{"mm", "cm", "in"} {
		o := options(label.Auto)
		o.Units, o.Ruler = unit, true
		o.Sheet = &label.Sheet{Page: label.Letter, Place: label.Area{WidthMM: 203.2, HeightMM: 127}, Rows: 2, Cols: 1, Down: 127, Top: 12, Left: 6}
		figures := strings.Fields(pdfText(t, draw(t, o))) // the rulers of the page before end at 150 mm and 6 inches
		if slices.Contains(figures, "200") != (unit != "in") || slices.Contains(figures, "9") != (unit == "in") {
			t.Errorf("%s: %q", unit, figures)
		}
	}
}

// What is too large, too small or off the sheet is told in the unit in which
// the studio measures, and in no other.
func TestErrorsInTheUnitOfTheStudio(t *testing.T) {
	size := func(text string) record.Size {
		s, err := record.ParseSize(text)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	back, place := label.Area{WidthMM: 101.6, HeightMM: 50.8}, label.Area{WidthMM: 66.675, HeightMM: 25.4}
	for _, u := range []struct {
		unit              record.LengthUnit
		tall, small, like string
	}{{"mm", "85 × 95 mm", "25 × 25 mm", "40 x 60 mm"}, {"cm", "8.5 × 9.5 cm", "2.5 × 2.5 cm", "4 x 6 cm"}, {"in", "3 3/8 × 3 3/4 in", "1 × 1 in", "2 x 4 in"}} {
		_, unread := label.ParseSize("huge", u.unit)
		_, least := label.ParseSize("1 x 1 mm", u.unit)
		in := finished()
		in.Back = back
		o := options(label.Large)
		o.Units = u.unit
		_, onBack := label.Draw(&bytes.Buffer{}, []label.Input{in}, o)
		o.Sheet = &label.Sheet{Page: label.A4, Place: place, Rows: 1, Cols: 1}
		_, inPlace := label.Draw(&bytes.Buffer{}, []label.Input{in}, o)
		for want, err := range map[string]error{u.like: unread, u.small: least, "a label of " + u.tall + " does not fit on a back of " + back.In(u.unit): onBack,
			u.tall + " does not fit in a place of the sheet of " + place.In(u.unit): inPlace} {
			if err == nil || !strings.Contains(err.Error(), want) {
				t.Errorf("%s: %v, want %q", u.unit, err, want)
			}
			for _, m := range figureAndUnit.FindAllStringSubmatch(fmt.Sprint(err), -1) {
				if m[1] != string(u.unit) {
					t.Errorf("%s: %v", u.unit, err)
				}
			}
		}
	}
	_, err := label.SheetOf(record.LabelSheet{Page: size("8 1/2 x 11 in"), Label: size("1 x 2 5/8 in"), Rows: 10, Cols: 3})
	if err == nil || !strings.Contains(err.Error(), "10 × 3 labels of 1 × 2 5/8 in do not lie on a page of 8 1/2 × 11 in") {
		t.Errorf("%v", err)
	}
}
