package label_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"backleaf/label"
	"backleaf/record/paper"
)

// areas are labels by themselves and places on sheets of every proportion.
// The sheets are common cuts of A4 and Letter.
func areas() map[label.Size][]label.Area {
	return map[label.Size][]label.Area{
		label.Small:  {{WidthMM: 42, HeightMM: 42}, {WidthMM: 70, HeightMM: 37}, {WidthMM: 48.5, HeightMM: 29}},
		label.Medium: {{WidthMM: 62, HeightMM: 62}, {WidthMM: 63.5, HeightMM: 38.1}, {WidthMM: 99.1, HeightMM: 38.1}, {WidthMM: 101.6, HeightMM: 50.8}},
		label.Large:  {{WidthMM: 95, HeightMM: 85}, {WidthMM: 99.1, HeightMM: 67.7}, {WidthMM: 101.6, HeightMM: 84.7}, {WidthMM: 105, HeightMM: 148}, {WidthMM: 199.6, HeightMM: 143.5}},
	}
}

// in1 is a sheet with one place of an area.
func in1(a label.Area) *label.Sheet {
	return &label.Sheet{Page: label.Area{WidthMM: a.WidthMM + 20, HeightMM: a.HeightMM + 20}, Place: a, Rows: 1, Cols: 1, Top: 10, Left: 10, Down: a.HeightMM, Across: a.WidthMM}
}

// Nothing overlaps, nothing leaves the label, and nothing that must stand on
// it is missing: for every kind of label, every size and every place.
func TestGeometry(t *testing.T) {
	for size, list := range areas() {
		for _, a := range list {
			for name, in := range kinds() {
				in.Back = label.Area{WidthMM: 2000, HeightMM: 3000}
				t.Run(fmt.Sprintf("%v/%v/%s", size, a, name), func(t *testing.T) {
					o := options(size)
					o.Sheet = in1(a)
					ls, err := label.Arrange([]label.Input{in}, o)
					if errors.Is(err, paper.ErrTooLong) && a.HeightMM < 30 {
						t.Skip("a place smaller than the smallest label: ", err)
					}
					if err != nil {
						t.Fatal(err)
					}
					if ls[0].Area != a {
						t.Errorf("drawn on %v", ls[0].Area)
					}
					checkBoxes(t, ls[0], in)
				})
			}
		}
	}
}

func checkBoxes(t *testing.T, l label.Layout, in label.Input) {
	t.Helper()
	const slack = 1e-6
	has := map[label.Field]bool{}
	for i, b := range l.Boxes {
		has[b.Field] = true
		margin := 2.0 // of white, but for the quiet zone of the symbol
		if b.Field == label.QR {
			margin = 0
		}
		if b.X < margin-slack || b.Y < margin-slack || b.X+b.W > l.Area.WidthMM-margin+slack || b.Y+b.H > l.Area.HeightMM-margin+slack {
			t.Errorf("%s leaves the label: %.2f, %.2f, %.2f × %.2f", b.Field, b.X, b.Y, b.W, b.H)
		}
		for _, c := range l.Boxes[:i] {
			if b.X < c.X+c.W-slack && c.X < b.X+b.W-slack && b.Y < c.Y+c.H-slack && c.Y < b.Y+b.H-slack {
				t.Errorf("%s (%.2f, %.2f, %.2f × %.2f) overlaps %s (%.2f, %.2f, %.2f × %.2f)", b.Field, b.X, b.Y, b.W, b.H, c.Field, c.X, c.Y, c.W, c.H)
			}
		}
	}
	must := []label.Field{label.Number, label.Top, label.Maker, label.Where}
	if in.Notice != "" {
		must = append(must, label.Notice)
	}
	if !slices.Contains(l.LeftOut, label.QR) {
		must = append(must, label.QR)
	}
	for _, f := range must {
		if !has[f] {
			t.Errorf("%s is missing", f)
		}
	}
	for _, f := range l.LeftOut {
		if has[f] {
			t.Errorf("%s is left out and there", f)
		}
	}
	if !strings.Contains(in.Where, in.Link) {
		t.Errorf("the link is not in letters")
	}
}

// A module is 0.4 mm at least on the smallest label and 0.5 mm on the others,
// whole dots at 300 dpi, and the quiet zone of four modules is in the box.
func TestModules(t *testing.T) {
	const dot = 25.4 / 300
	for size, least := range map[label.Size]float64{label.Small: 0.4, label.Medium: 0.5, label.Large: 0.5} {
		for name, in := range kinds() {
			ls, err := label.Arrange([]label.Input{in}, options(size))
			if err != nil {
				t.Fatalf("%v, %s: %v", size, name, err)
			}
			for _, b := range ls[0].Boxes {
				if b.Field != label.QR {
					continue
				}
				text := in.Link
				if text == "" {
					text = "\uFEFF" + in.Plain
				}
				s, err := paper.NewSymbol(text, paper.LevelQ)
				if err != nil {
					t.Fatal(err)
				}
				module := b.W / float64(s.Modules()+8)
				dots := module / dot
				if module < least || dots-float64(int(dots+0.5)) > 1e-6 || b.W != b.H {
					t.Errorf("%v, %s: modules of %.3f mm, %.3f dots", size, name, module, dots)
				}
			}
		}
	}
}

// What is left out, on smaller and smaller labels.
func TestLeavingOut(t *testing.T) {
	for _, c := range []struct {
		size   label.Size
		in     label.Input
		w, h   float64
		expect string
	}{
		{label.Large, finished(), 95, 85, ""},
		{label.Large, finished(), 95, 62, "care, build-up in full"},
		{label.Large, finished(), 88, 54, "care, build-up in full"},
		{label.Medium, finished(), 62, 62, "care"},
		{label.Medium, blank(), 62, 62, ""},
		{label.Medium, finished(), 62, 45, "remarks, care, signature, build-up in full"},
		{label.Small, finished(), 42, 42, "remarks, signature, care, build-up, fingerprint"},
		{label.Small, finished(), 42, 34, "remarks, signature, care, build-up, fingerprint, place, sealed faces, varnish, dimensions"},
		{label.Small, finished(), 40, 30, "remarks, signature, care, build-up, fingerprint, sealed faces, varnish, dimensions"},
	} {
		o := options(c.size)
		o.Sheet = in1(label.Area{WidthMM: c.w, HeightMM: c.h})
		ls, err := label.Arrange([]label.Input{c.in}, o)
		if err != nil {
			t.Errorf("%v %v × %v: %v", c.size, c.w, c.h, err)
			continue
		}
		var got []string
		for _, f := range ls[0].LeftOut {
			got = append(got, string(f))
		}
		if s := strings.Join(got, ", "); s != c.expect {
			t.Errorf("%v %v × %v: left out %s, want %s", c.size, c.w, c.h, s, c.expect)
		}
	}
}

// A text that no symbol holds (1663 bytes at level Q, ISO/IEC 18004 from
// memory) leaves the symbol out and says so; where the record is stays.
func TestTooMuchForASymbol(t *testing.T) {
	for _, in := range []label.Input{finished(), longest()} {
		in.Link, in.Plain = "", strings.Repeat("ω", 900)
		for _, size := range []label.Size{label.Small, label.Medium, label.Large} {
			ls, err := label.Arrange([]label.Input{in}, options(size))
			if err != nil {
				t.Fatal(err)
			}
			if !slices.Contains(ls[0].LeftOut, label.QR) {
				t.Errorf("%v: left out %v", size, ls[0].LeftOut)
			}
			checkBoxes(t, ls[0], in)
		}
	}
}
