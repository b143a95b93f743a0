package label_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"backleaf/label"
	"backleaf/record/paper"
	"backleaf/record/toolcheck"
)

// areas are labels and places on sheets of every proportion, from the least
// that a label must serve. The sheets are common cuts of A4 and Letter.
var areas = []label.Area{
	{WidthMM: 60, HeightMM: 40}, {WidthMM: 40, HeightMM: 60}, {WidthMM: 42, HeightMM: 42}, {WidthMM: 70, HeightMM: 37}, {WidthMM: 62, HeightMM: 62},
	{WidthMM: 63.5, HeightMM: 38.1}, {WidthMM: 99.1, HeightMM: 38.1}, {WidthMM: 101.6, HeightMM: 50.8}, {WidthMM: 95, HeightMM: 85},
	{WidthMM: 99.1, HeightMM: 67.7}, {WidthMM: 101.6, HeightMM: 84.7}, {WidthMM: 105, HeightMM: 148}, {WidthMM: 150, HeightMM: 100}, {WidthMM: 199.6, HeightMM: 143.5},
}

// in1 is a sheet with one place of an area.
func in1(a label.Area) *label.Sheet {
	return &label.Sheet{Page: label.Area{WidthMM: a.WidthMM + 20, HeightMM: a.HeightMM + 20}, Place: a, Rows: 1, Cols: 1, Top: 10, Left: 10, Down: a.HeightMM, Across: a.WidthMM}
}

var wall = label.Area{WidthMM: 2000, HeightMM: 3000}

func arrangeOn(in label.Input, a label.Area) (label.Layout, error) {
	o := options(label.Auto)
	in.Back, o.Sheet = wall, in1(a)
	ls, err := label.Arrange([]label.Input{in}, o)
	if err != nil {
		return label.Layout{}, err
	}
	return ls[0], nil
}

// Nothing overlaps, nothing leaves the label, and nothing that must stand on
// it is missing: for every kind of label and every place.
func TestGeometry(t *testing.T) {
	for _, a := range areas {
		for name, in := range kinds() {
			t.Run(fmt.Sprintf("%v/%s", a, name), func(t *testing.T) {
				l, err := arrangeOn(in, a)
				if err != nil {
					t.Fatal(err)
				}
				if l.Area != a {
					t.Errorf("drawn on %v", l.Area)
				}
				checkBoxes(t, l, in)
				checkModules(t, l, in)
			})
		}
	}
}

func checkBoxes(t *testing.T, l label.Layout, in label.Input) {
	t.Helper()
	must := []label.Field{label.Number, label.Top, label.Maker, label.Where}
	if in.Notice != "" {
		must = append(must, label.Notice)
	}
	if len(in.Hazards) > 0 && len(l.More) == 0 {
		must = append(must, label.Hazards)
	}
	if !slices.Contains(l.LeftOut, label.QR) {
		must = append(must, label.QR)
	}
	has := boxesApart(t, l)
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
	for _, more := range l.More {
		has := boxesApart(t, more)
		for _, f := range []label.Field{label.Number, label.Part, label.Top, label.Maker, label.Hazards} {
			if !has[f] {
				t.Errorf("%s is missing on the label that carries on", f)
			}
		}
	}
	if !strings.Contains(strings.ToLower(in.Where), strings.ToLower(in.Link)) {
		t.Errorf("the link is not in letters")
	}
}

// boxesApart holds the boxes against each other and the edge.
func boxesApart(t *testing.T, l label.Layout) map[label.Field]bool {
	t.Helper()
	const slack = 1e-6
	has := map[label.Field]bool{}
	for i, b := range l.Boxes {
		has[b.Field] = true
		margin := 2.0 // of white, but for the quiet zone of a symbol
		if b.Field == label.QR || b.Field == label.Facts {
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
	return has
}

// A module is 0.42 mm at least, whole dots at 300 dpi, and the quiet zone of
// four modules is in the box.
func checkModules(t *testing.T, l label.Layout, in label.Input) {
	t.Helper()
	for _, b := range l.Boxes {
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
		dots := module / (25.4 / 300)
		if module < 0.42 || dots-float64(int(dots+0.5)) > 1e-6 || b.W != b.H || math.Abs(module-l.ModuleMM) > 1e-9 {
			t.Errorf("modules of %.3f mm, %.3f dots", module, dots)
		}
	}
}

// What gives way on smaller and smaller labels.
func TestLeavingOut(t *testing.T) {
	for _, c := range []struct {
		in     label.Input
		w, h   float64
		expect string
	}{
		{finished(), 150, 100, ""},
		{finished(), 95, 85, ""},
		{finished(), 101.6, 50.8, "remarks"},
		{finished(), 62, 62, "remarks, signature, fingerprint"}, // on a panel of 10 × 10 cm
		{finished(), 99.1, 38.1, "remarks, signature, fingerprint, care"},
		{finished(), 60, 40, "remarks, signature, fingerprint, care, build-up in full, dimensions in other units, place, which record"},
		{finished(), 42, 42, "remarks, signature, fingerprint, care, build-up in full, dimensions in other units, place, which record, varnish"},
	} {
		l, err := arrangeOn(c.in, label.Area{WidthMM: c.w, HeightMM: c.h})
		if err != nil {
			t.Errorf("%v × %v: %v", c.w, c.h, err)
			continue
		}
		var got []string
		for _, f := range l.LeftOut {
			got = append(got, string(f))
		}
		if s := strings.Join(got, ", "); s != c.expect {
			t.Errorf("%v × %v: left out %s, want %s", c.w, c.h, s, c.expect)
		}
	}
}

// A larger place never drops what a smaller one holds.
func TestLargerHoldsMore(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 40))
	for range toolcheck.Rounds(60, 10) {
		in := someInput(r)
		small := label.Area{WidthMM: 40 + 60*r.Float64(), HeightMM: 40 + 50*r.Float64()}
		large := label.Area{WidthMM: small.WidthMM + 40*r.Float64(), HeightMM: small.HeightMM + 40*r.Float64()}
		a, err := arrangeOn(in, small)
		if err != nil {
			t.Fatal(err)
		}
		b, err := arrangeOn(in, large)
		if err != nil {
			t.Fatalf("%v holds the label, %v does not: %v", small, large, err)
		}
		if len(b.More) > len(a.More) {
			t.Errorf("%v needs %d labels, %v needs %d", small, 1+len(a.More), large, 1+len(b.More))
		}
		for _, f := range b.LeftOut {
			if !slices.Contains(a.LeftOut, f) {
				t.Errorf("%v holds %s, %v does not; left out %v and %v\n%+v", small, f, large, a.LeftOut, b.LeftOut, in)
			}
		}
	}
}

// someInput is a label with texts of any length a painter is likely to write.
func someInput(r *rand.Rand) label.Input {
	in := longest()
	words := strings.Fields("low water at Saltmere evening the long way round lake November linen acrylic dispersion oil ground sealer isolation plywood tempered")
	text := func(most int) string {
		var out []string
		for range r.IntN(most + 1) {
			out = append(out, words[r.IntN(len(words))])
		}
		return strings.Join(out, " ")
	}
	in.Number, in.Maker = "KB26-0142-1", "Maker "+text(3)
	in.Title, in.Place, in.Medium, in.Varnish, in.Changed, in.Care = text(16), text(4), text(10), text(10), text(15), text(20)
	in.Hazards = nil
	for range r.IntN(4) {
		in.Hazards = append(in.Hazards, text(6)+" not.")
	}
	in.BuildUp = nil
	for range 1 + r.IntN(14) {
		in.BuildUp = append(in.BuildUp, text(4)+" layer")
	}
	if r.IntN(3) == 0 {
		in.Link = "HTTPS://EXAMPLE.ORG/P/KB2601421"
		in.Where = "Record: " + in.Link
	}
	return in
}

// Nothing under 6 pt but the figures of a fraction, and one size of type and
// of modules for all labels of one size.
func TestOneSizeOfType(t *testing.T) {
	var labels []label.Input
	for _, in := range kinds() {
		in.Back = wall
		labels = append(labels, in)
	}
	for _, size := range []label.Size{label.Small, label.Medium, label.Large} {
		ls, err := label.Arrange(labels, options(size))
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range ls {
			if l.BodyPt < 6 || l.BodyPt != ls[0].BodyPt || l.ModuleMM != ls[0].ModuleMM {
				t.Errorf("%v: %s has %.1f pt and %.2f mm, the first %.1f pt and %.2f mm", size, l.Number, l.BodyPt, l.ModuleMM, ls[0].BodyPt, ls[0].ModuleMM)
			}
		}
	}
}

// Hazards never give way: what one label cannot hold stands on a further one.
func TestHazardsAreCarriedOn(t *testing.T) {
	in := longest()
	in.Hazards = nil
	for _, metal := range []string{"lead", "cadmium", "mercury", "arsenic", "chromate", "barium", "antimony"} {
		in.Hazards = append(in.Hazards, "Holds "+metal+" in a paint of the fourth layer, and in the second one of the back, as recorded.")
	}
	for _, a := range []label.Area{{WidthMM: 60, HeightMM: 40}, {WidthMM: 42, HeightMM: 42}, {WidthMM: 62, HeightMM: 62}, {WidthMM: 150, HeightMM: 100}} {
		l, err := arrangeOn(in, a)
		if err != nil {
			t.Fatal(err)
		}
		checkBoxes(t, l, in)
		if small := a.HeightMM < 50; small != (len(l.More) > 0) {
			t.Errorf("%v: %d labels", a, 1+len(l.More))
		}
		o := options(label.Auto)
		o.Sheet, in.Back = in1(a), wall
		text := pdfText(t, draw(t, o, in))
		for _, want := range in.Hazards {
			if !strings.Contains(text, want) {
				t.Errorf("%v: %q is on no label", a, want)
			}
		}
		if n := 1 + len(l.More); n > 1 && !strings.Contains(text, fmt.Sprintf("%d of %d", n, n)) {
			t.Errorf("%v: the last label does not say that it is the last", a)
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

// A place that cannot hold the least is refused.
func TestTooSmall(t *testing.T) {
	if _, err := arrangeOn(longest(), label.Area{WidthMM: 26, HeightMM: 26}); !errors.Is(err, paper.ErrTooLong) {
		t.Errorf("26 × 26 mm: %v", err)
	}
}

// A title that smaller type keeps in one line beside the symbol is not broken.
func TestTitleInOneLine(t *testing.T) {
	o := options(label.Auto)
	o.Sheet = in1(label.Area{WidthMM: 60, HeightMM: 40})
	long := finished() // gives both their type
	long.Title = "The long way round the lake in late November, with snow"
	for _, title := range []string{"Low Tide, Evening", "Morning at the harbour wall"} {
		in := finished()
		in.Title = title
		layouts, err := label.Arrange([]label.Input{in, long}, o)
		if err != nil {
			t.Fatal(err)
		}
		for _, b := range layouts[0].Boxes {
			if one := 2 * 1.25 * layouts[0].BodyPt * 25.4 / 72; b.Field == label.Title && b.H >= one {
				t.Errorf("%q is %.1f mm high", title, b.H)
			}
		}
	}
}
