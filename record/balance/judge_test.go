package balance_test

import (
	"math"
	"testing"

	"backleaf/record"
	"backleaf/record/balance"
)

// Sealer on both faces, ground on the front, no amounts: with low,
// typical and high coats 6.4 mm plywood and 6 mm MDF hold; 3 mm plywood holds
// with low ones and is open with the others. Most bow in mm, computed by an
// independent program.
func TestAmountsNotRecorded(t *testing.T) {
	coat := func(p record.Purpose) balance.Layer {
		return balance.Film("acrylic-dispersion", false, balance.UsualCoat(p, "acrylic-dispersion"), balance.Assumed, balance.Room)
	}
	front, back := face(coat(record.Sealer), coat(record.Ground)), face(coat(record.Sealer))
	for name, c := range map[string]struct {
		board         balance.Board
		height, width [3]float64
		would         [3]balance.Outcome
	}{
		"plywood 6.4 mm": {ply64, [3]float64{0.012, 0.023, 0.039}, [3]float64{0.008, 0.015, 0.026}, [3]balance.Outcome{balance.Holds, balance.Holds, balance.Holds}},
		"mdf 6 mm":       {mdf6, [3]float64{0.022, 0.042, 0.071}, [3]float64{0.040, 0.074, 0.127}, [3]balance.Outcome{balance.Holds, balance.Holds, balance.Holds}},
		"plywood 3 mm":   {ply3, [3]float64{0.411, 0.774, 1.335}, [3]float64{0.030, 0.057, 0.098}, [3]balance.Outcome{balance.Holds, balance.Open, balance.Open}},
	} {
		j := balance.Judge(panel(c.board, 300, 400, "width", front, back))
		if j.Outcome != balance.NotRecorded || !j.Lacks.Amounts || j.Would != c.would {
			t.Errorf("%s: %s, would %v, lacks %+v", name, j.Outcome, j.Would, j.Lacks)
		}
		within(t, name+": typical", j.Work.Height.BowMicrons.Most()/1000, c.height[1], 6e-4)
		within(t, name+": typical", j.Work.Width.BowMicrons.Most()/1000, c.width[1], 6e-4)
		for i := range c.height { // each amount by itself, known
			set := func(ls []balance.Layer) (out []balance.Layer) {
				for _, l := range ls {
					s := l.DryMicrons
					l.DryMicrons = balance.Exactly([3]float64{s.Low, s.Typical, s.High}[i])
					out = append(out, l)
				}
				return out
			}
			w := balance.Judge(panel(c.board, 300, 400, "width", set(front), set(back))).Work
			within(t, name, w.Height.BowMicrons.Most()/1000, c.height[i], 6e-4)
			within(t, name, w.Width.BowMicrons.Most()/1000, c.width[i], 6e-4)
		}
	}
}

func TestBinderNotRecorded(t *testing.T) {
	mystery := func(k balance.Kind) balance.Layer { return film(k, 50) }
	for _, c := range []struct {
		front, back balance.Kind
		would       balance.Outcome
	}{
		{"", "acrylic-dispersion", balance.Open},
		{"", "", balance.Open}, // half a fifth of 20 MPa is still much for 3 mm
		{"gesso of one tin", "gesso of another", balance.Open},
	} {
		j := balance.Judge(panel(ply3, 300, 400, "width", face(mystery(c.front)), face(mystery(c.back))))
		if j.Outcome != balance.NotRecorded || !j.Lacks.Binders || j.Would[1] != c.would {
			t.Errorf("%+v: %s, would %v", c, j.Outcome, j.Would)
		}
	}
	most := func(front, back balance.Kind) float64 {
		return balance.Judge(panel(ply3, 300, 400, "width", face(mystery(front)), face(mystery(back)))).Work.Height.BowMicrons.Most()
	}
	if one, two := most("tin", "tin"), most("tin", "other tin"); !(one < two/4) {
		t.Errorf("the same unknown on both faces %g µm, two unknowns %g", one, two)
	}
}

func TestGrainNotRecorded(t *testing.T) {
	front, back := face(acrylic(50), acrylic(90), cloth), face(acrylic(50))
	j := balance.Judge(panel(ply3, 300, 400, "", front, back))
	worse := balance.Judge(panel(ply3, 300, 400, "height", front, back))
	if !j.Lacks.Grain || j.Work != worse.Work || j.Outcome != balance.Open {
		t.Errorf("%s, %+v", j.Outcome, j.Work.Worst())
	}
	if j := balance.Judge(panel(mdf6, 300, 400, "", front, back)); j.Lacks.Grain || j.Outcome != balance.Holds {
		t.Errorf("MDF has no grain: %s, %+v", j.Outcome, j.Lacks)
	}
	// One run of the grain holds, the other does not: nothing is decided.
	glue := face(film("animal-glue", 40))
	if a, b, j := balance.Judge(panel(ply3, 2000, 100, "height", glue, nil)), balance.Judge(panel(ply3, 2000, 100, "width", glue, nil)), balance.Judge(panel(ply3, 2000, 100, "", glue, nil)); a.Outcome == b.Outcome || j.Outcome != balance.Open {
		t.Errorf("%s, %s, and without the grain %s", a.Outcome, b.Outcome, j.Outcome)
	}
}

// The one way to fall short: even the low figure matters.
func TestFallsShort(t *testing.T) {
	j := balance.Judge(panel(ply3, 300, 400, "width", face(film("animal-glue", 100)), nil))
	if w := j.Work.Worst(); j.Outcome != balance.FallsShort || w.LeastGrade < balance.Matters || w.BowMicrons.Low <= 0 {
		t.Errorf("%s: %+v", j.Outcome, w)
	}
}

// Limits as in the table of the grades, mm: slight, matters and strong begin at
// these bows over these spans.
func TestGrades(t *testing.T) {
	for span, begins := range map[float64][3]float64{300: {0.5, 0.6, 1.5}, 400: {0.5, 0.8, 2}, 600: {0.6, 1.2, 3}, 1000: {1, 2, 5}} {
		for i, mm := range begins {
			at, under, over := balance.GradeOf(mm*1000, span*1000), balance.GradeOf(-mm*1000+0.01, span*1000), balance.GradeOf(mm*1000+0.01, span*1000)
			if g := balance.Grade(i + 1); under != g-1 || over != g || i < 2 && at != g || i == 2 && at != balance.Matters {
				t.Errorf("%g mm over %g: %d, %d, %d", mm, span, under, at, over)
			}
		}
	}
}

func TestCannotJudge(t *testing.T) {
	sound := func() *balance.Panel { return panel(mdf6, 300, 400, "", face(acrylic(50)), nil) }
	for want, spoil := range map[balance.Cannot][]func(*balance.Panel){
		balance.NoSize:  {func(p *balance.Panel) { p.HeightMicrons = 0 }, func(p *balance.Panel) { p.WidthMicrons = 0 }},
		balance.NoBoard: {func(p *balance.Panel) { p.Board = balance.Board{} }},
		balance.OutOfRange: {
			func(p *balance.Panel) { p.HeightMicrons = math.NaN() }, func(p *balance.Panel) { p.WidthMicrons = -400e3 },
			func(p *balance.Panel) { p.Front[0].DryMicrons.Low = 0 }, func(p *balance.Panel) { p.Front[0].DryMicrons.High = 2001 },
			func(p *balance.Panel) { p.Front[0].DryMicrons.Typical = math.NaN() }, func(p *balance.Panel) { p.Front[0].Pull[1].High = math.Inf(1) },
			func(p *balance.Panel) { p.Front[0].Pull[0].Low = 2 }, func(p *balance.Panel) { p.Front[0].ModulusMPa.Low = math.NaN() },
			func(p *balance.Panel) { p.Front[0].Vapour.High = -1 }, func(p *balance.Panel) { p.Front[0].Certainty = 3 },
		},
		balance.CoatsTooThick: {func(p *balance.Panel) { p.Front = append(p.Front, acrylic(1200)) }},
	} {
		for i, f := range spoil {
			p := sound()
			f(p)
			if j := balance.Judge(p); j.Cannot != want || j.Outcome != balance.CannotJudge {
				t.Errorf("%s, %d: %q %q", want, i, j.Outcome, j.Cannot)
			}
		}
	}
	// A thick picture does not keep the work from being judged.
	p := sound()
	p.Front = append(p.Front, painted(acrylic(1200)))
	if j := balance.Judge(p); j.Outcome != balance.Holds || j.PictureCannot != balance.CoatsTooThick {
		t.Errorf("%s, picture %q", j.Outcome, j.PictureCannot)
	}
}

func TestKinds(t *testing.T) {
	for _, c := range []struct {
		binder  record.Binder
		purpose record.Purpose
		want    balance.Kind
		known   bool
	}{
		{record.AnimalGlue, record.Ground, balance.GlueGround, true},
		{record.AnimalGlue, record.Sizing, "animal-glue", true},
		{record.Acrylic, record.Ground, "acrylic-dispersion", true},
		{"", record.Ground, "", false},
		{"other", record.Sealer, "other", false},
	} {
		if k := balance.KindOf(c.binder, c.purpose); k != c.want || k.Known() != c.known {
			t.Errorf("%q for %q: %q, known %v", c.binder, c.purpose, k, k.Known())
		}
	}
	for _, c := range []struct {
		parts []balance.Kind
		want  balance.Kind
	}{
		{[]balance.Kind{"acrylic-dispersion", "pva-dispersion"}, "pva-dispersion"},
		{[]balance.Kind{"animal-glue", "drying-oil"}, "animal-glue"},
		{[]balance.Kind{"acrylic-dispersion", "", "animal-glue"}, ""},
		{nil, ""},
	} {
		if got := balance.Strongest(c.parts...); got != c.want {
			t.Errorf("%v: %q, want %q", c.parts, got, c.want)
		}
	}
	for _, word := range record.Words("Binder") {
		k := balance.Kind(word)
		if word != "other" && !k.Known() {
			t.Errorf("no figures for %s", k)
		}
		a, b := balance.Film(k, false, balance.Exactly(50), balance.Gauged, balance.Room), balance.Film(k, true, balance.Exactly(50), balance.Gauged, balance.Dry)
		if a.Pull[0].High > b.Pull[0].High || a.Pull[0].Low > b.Pull[0].Low || a.Pull[0].High < a.Pull[0].Low || a.Vapour.Low == 0 || b.Vapour.Low == 0 {
			t.Errorf("%s: %+v, dry and matt %+v", k, a, b)
		}
	}
}

// Cloth pulls by its threads: warp against weft, both on the bias, either where
// nobody knows.
func TestClothByThreads(t *testing.T) {
	warp, weft := rng{50, 150}, rng{100, 300}
	for run, want := range map[record.ThreadRun][2]rng{
		"along-grain": {warp, weft}, "across-grain": {weft, warp}, "bias": {weft, weft}, "": {{50, 300}, {50, 300}}, record.Unknown: {{50, 300}, {50, 300}},
	} {
		if l := balance.ClothLayer(run, warp, weft, balance.Room); l.Pull != want {
			t.Errorf("%q: %+v", run, l.Pull)
		}
	}
	if l := balance.ClothLayer("along-grain", warp, weft, balance.Dry); l.Pull != [2]rng{{75, 225}, {150, 450}} {
		t.Errorf("dry: %+v", l.Pull)
	}
}

func TestUsualCoats(t *testing.T) {
	for _, c := range []struct {
		got  balance.Spread
		want float64
	}{
		{balance.UsualCoat(record.Ground, "acrylic-dispersion"), 45}, {balance.UsualCoat(record.Ground, balance.GlueGround), 45},
		{balance.UsualCoat(record.Ground, "drying-oil"), 80}, {balance.UsualCoat(record.Ground, "alkyd"), 80},
		{balance.UsualCoat(record.Adhesive, "acrylic-dispersion"), 90}, {balance.UsualCoat("", "acrylic-dispersion"), 40},
		{balance.UsualPaint("thin"), 40}, {balance.UsualPaint("thick"), 300}, {balance.UsualPaint(""), 40}, {balance.UsualVarnish, 20},
	} {
		if c.got.Typical != c.want || !(0 < c.got.Low && c.got.Low < c.want && c.want < c.got.High) {
			t.Errorf("%+v, want %g in the middle", c.got, c.want)
		}
	}
	for _, p := range record.Words("Purpose") {
		if s := balance.UsualCoat(record.Purpose(p), "acrylic-dispersion"); s.Typical == 0 {
			t.Errorf("nothing usual for %s", p)
		}
	}
}
