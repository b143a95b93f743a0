package balance_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"strconv"
	"testing"

	"backleaf/record"
	"backleaf/record/balance"
)

const builds = 10000

var somePurposes = []record.Purpose{record.Sizing, record.Sealer, record.Adhesive, record.Ground, record.Barrier, ""}

func pick[T any](r *rand.Rand, from []T) T { return from[r.IntN(len(from))] }

func someSheet(r *rand.Rand) balance.Sheet {
	s := balance.Sheet{Kind: record.BoardKind(pick(r, record.Words("BoardKind"))), ThicknessMicrons: 1000 + math.Floor(r.Float64()*r.Float64()*39000)}
	if s.Kind == record.Plywood {
		s.Plies, s.Species = pick(r, []int{0, 3, 5, 7, 9}), pick(r, []record.Species{"", "birch", "poplar"})
		if r.IntN(3) == 0 {
			s.CoreMicrons = 300 + 1500*r.Float64()
		}
	}
	if s.Kind == record.AluminiumComp && r.IntN(2) == 0 {
		s.SkinMicrons = 100 + 300*r.Float64()
	}
	return s
}

func someLayer(r *rand.Rand) balance.Layer {
	air, how := balance.Air(r.IntN(2)), balance.Certainty(r.IntN(2))
	if r.IntN(6) == 0 {
		return balance.ClothLayer(pick(r, []record.ThreadRun{"along-grain", "across-grain", "bias", ""}), rng{Low: 50, High: 50 + 300*r.Float64()}, balance.UsualCloth, air)
	}
	kind := balance.Kind(pick(r, record.Words("Binder")))
	if r.IntN(6) == 0 {
		kind = balance.GlueGround
	}
	dry := balance.Exactly(5 + 90*r.Float64())
	if r.IntN(8) == 0 {
		dry, how = balance.UsualCoat(pick(r, somePurposes), kind), balance.Assumed
	}
	return balance.Film(kind, r.IntN(2) == 0, dry, how, air)
}

func someFace(r *rand.Rand) []balance.Layer {
	var out []balance.Layer
	for range r.IntN(5) {
		out = append(out, someLayer(r))
	}
	for range r.IntN(3) { // the picture lies on the work
		out = append(out, painted(someLayer(r)))
	}
	return out
}

func somePanel(r *rand.Rand) *balance.Panel {
	return &balance.Panel{HeightMicrons: 100e3 + 1900e3*r.Float64(), WidthMicrons: 100e3 + 1900e3*r.Float64(),
		Grain: pick(r, []record.Grain{"height", "width", ""}), Board: balance.BoardOf(someSheet(r)), Front: someFace(r), Back: someFace(r)}
}

func everyPanel(t *testing.T, try func(t *testing.T, r *rand.Rand, p *balance.Panel)) {
	t.Helper()
	r := rand.New(rand.NewPCG(1, 2))
	judged := 0
	for i := range builds {
		p := somePanel(r)
		if balance.Judge(p).Outcome == balance.CannotJudge {
			continue
		}
		judged++
		if try(t, r, p); t.Failed() {
			t.Fatalf("build %d: %+v", i, p)
		}
	}
	if judged < builds/2 {
		t.Errorf("only %d of %d panels could be judged", judged, builds)
	}
}

// finite walks every figure of a result.
func finite(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Float64:
		return !math.IsNaN(v.Float()) && !math.IsInf(v.Float(), 0)
	case reflect.Struct:
		for i := range v.NumField() {
			if !finite(v.Field(i)) {
				return false
			}
		}
	case reflect.Array:
		for i := range v.Len() {
			if !finite(v.Index(i)) {
				return false
			}
		}
	}
	return true
}

func TestFiguresAreFinite(t *testing.T) {
	everyPanel(t, func(t *testing.T, r *rand.Rand, p *balance.Panel) {
		m := balance.Measured{BowMicrons: 5000 * r.Float64(), SpanMicrons: pick(r, []float64{0, p.HeightMicrons, p.WidthMicrons}),
			Toward: pick(r, []record.Toward{"", "front", "back", "flat"}), Over: pick(r, []balance.Over{"", balance.OverHeight, balance.OverDiagonal})}
		j, d, w, c, e := balance.Judge(p), balance.MoistureOf(p, 10), balance.WallOf(p, 10), balance.Compare(p, m, &m), balance.Weigh(p, somePanel(r))
		for _, x := range []any{j, d, w, c, e} {
			if !finite(reflect.ValueOf(x)) {
				t.Errorf("%+v", x)
			}
		}
		for _, b := range []balance.Bow{j.Work.Height, j.Work.Width, j.Picture.Height, j.Picture.Width} {
			for _, x := range []rng{b.Front, b.Back, b.MomentNewtons, b.StiffnessNewtonMetres, b.CurvaturePerMetre, b.BowMicrons} {
				if x.Low > x.High {
					t.Errorf("%+v", b)
				}
			}
			if b.LeastGrade > b.MostGrade {
				t.Errorf("%+v", b)
			}
		}
		for _, s := range []balance.Spread{d.Lead, d.Height, d.Width, w.Share, w.Height, w.Width} {
			if s.Low > s.Typical || s.Typical > s.High {
				t.Errorf("%+v, %+v", d, w)
			}
		}
	})
}

func opposite(t *testing.T, what string, a, b rng) {
	t.Helper()
	by := 1e-9 * (1 + a.Most())
	if math.Abs(a.Low+b.High) > by || math.Abs(a.High+b.Low) > by {
		t.Errorf("%s: %+v, mirrored %+v", what, a, b)
	}
}

// Front and back exchanged: pull and moisture change sign, and nothing else.
func TestMirror(t *testing.T) {
	everyPanel(t, func(t *testing.T, r *rand.Rand, p *balance.Panel) {
		q := *p
		q.Front, q.Back = p.Back, p.Front
		a, b := balance.Judge(p), balance.Judge(&q)
		for _, c := range [][2]balance.Bow{{a.Work.Height, b.Work.Height}, {a.Work.Width, b.Work.Width}, {a.Picture.Height, b.Picture.Height}, {a.Picture.Width, b.Picture.Width}} {
			opposite(t, "moment", c[0].MomentNewtons, c[1].MomentNewtons)
			opposite(t, "bow", c[0].BowMicrons, c[1].BowMicrons)
			opposite(t, "pull", c[0].Front, rng{Low: -c[1].Back.High, High: -c[1].Back.Low})
			if c[0].MostGrade != c[1].MostGrade || c[0].LeastGrade != c[1].LeastGrade {
				t.Errorf("%+v, mirrored %+v", c[0], c[1])
			}
		}
		if a.Outcome != b.Outcome || a.Would != b.Would || a.Lacks != b.Lacks || a.Work.Worst().Over != b.Work.Worst().Over {
			t.Errorf("%+v, mirrored %+v", a, b)
		}
		d, e := balance.MoistureOf(p, 10), balance.MoistureOf(&q, 10)
		opposite(t, "lead", d.Lead.Range(), e.Lead.Range())
		opposite(t, "height", d.Height.Range(), e.Height.Range())
		opposite(t, "width", d.Width.Range(), e.Width.Range())
		if d.Grade != e.Grade || d.Cannot != e.Cannot || d.Leads != "" && d.Leads == e.Leads {
			t.Errorf("%+v, mirrored %+v", d, e)
		}
		bow := 5000 * r.Float64()
		f := balance.Compare(p, balance.Measured{BowMicrons: bow, SpanMicrons: p.WidthMicrons, Toward: "front"}, nil)
		g := balance.Compare(&q, balance.Measured{BowMicrons: bow, SpanMicrons: p.WidthMicrons, Toward: "back"}, nil)
		if f.Outcome != g.Outcome || f.Explained != g.Explained || f.Over != g.Over {
			t.Errorf("%+v, mirrored %+v", f, g)
		}
	})
}

// Height and width exchanged together with the grain: the same figures, so
// that nothing jumps where one side passes the other.
func TestTurned(t *testing.T) {
	turn := map[record.Grain]record.Grain{"height": "width", "width": "height", "": ""}
	everyPanel(t, func(t *testing.T, _ *rand.Rand, p *balance.Panel) {
		q := *p
		q.HeightMicrons, q.WidthMicrons, q.Grain = p.WidthMicrons, p.HeightMicrons, turn[p.Grain]
		a, b := balance.Judge(p), balance.Judge(&q)
		d, e := balance.MoistureOf(p, 10), balance.MoistureOf(&q, 10)
		same := a.Work.Height.BowMicrons == b.Work.Width.BowMicrons && a.Work.Width.BowMicrons == b.Work.Height.BowMicrons && d.Height == e.Width && d.Width == e.Height
		if a.Lacks.Grain { // either run may be the one told where both are as bad
			same = math.Abs(a.Work.Worst().MostPercent()-b.Work.Worst().MostPercent()) < 1e-9*a.Work.Worst().MostPercent()+1e-12
		}
		if a.Outcome != b.Outcome || a.Would != b.Would || !same {
			t.Errorf("%+v, turned %+v", a, b)
		}
	})
}

// A bow grows with the square of the span and with nothing else of the size.
func TestSquareOfTheSpan(t *testing.T) {
	everyPanel(t, func(t *testing.T, _ *rand.Rand, p *balance.Panel) {
		q := *p
		q.HeightMicrons *= 1.5
		a, b := balance.Judge(p).Work, balance.Judge(&q).Work
		if p.Grain != "" && (math.Abs(b.Height.BowMicrons.Most()-2.25*a.Height.BowMicrons.Most()) > 1e-9*b.Height.BowMicrons.Most() || a.Width.BowMicrons != b.Width.BowMicrons) {
			t.Errorf("%+v, longer %+v", a, b)
		}
	})
}

// A thicker board of the same modulus never bows more.
func TestThickerNeverBowsMore(t *testing.T) {
	everyPanel(t, func(t *testing.T, _ *rand.Rand, p *balance.Panel) {
		q := *p
		q.Board.ThicknessMicrons *= 1.1
		a, b := balance.Judge(p).Work, balance.Judge(&q).Work
		if b.Worst().MostPercent() > a.Worst().MostPercent()*(1+1e-12) {
			t.Errorf("%g %%, thicker %g %%", a.Worst().MostPercent(), b.Worst().MostPercent())
		}
	})
}

// Less knowledge never makes another verdict, only an open one.
func TestVaguerIsOpen(t *testing.T) {
	everyPanel(t, func(t *testing.T, r *rand.Rand, p *balance.Panel) {
		before := balance.Judge(p)
		q := *p
		q.Front, q.Back = append([]balance.Layer(nil), p.Front...), append([]balance.Layer(nil), p.Back...)
		side := &q.Front
		if r.IntN(2) == 0 {
			side = &q.Back
		}
		what := r.IntN(6)
		if what > 1 && len(*side) == 0 {
			return
		}
		switch what {
		case 0:
			q.Grain = ""
		case 1:
			for d := range q.Board.ModulusMPa {
				q.Board.ModulusMPa[d].Low *= 0.9
				q.Board.ModulusMPa[d].High *= 1.1
			}
		default:
			l := &(*side)[r.IntN(len(*side))]
			kind := l.Kind
			switch what {
			case 2:
				l.Certainty = balance.Assumed
			case 3:
				if l.Kind == balance.Cloth {
					return
				}
				l.Kind = "not recorded"
			case 4:
				l.Certainty = max(l.Certainty, balance.Estimated)
			case 5: // less known of a kind
				for _, face := range [2][]balance.Layer{q.Front, q.Back} {
					for i := range face {
						for d := range face[i].Pull {
							if face[i].Kind == kind {
								face[i].Pull[d] = rng{Low: face[i].Pull[d].Low * 0.8, High: face[i].Pull[d].High * 1.2}
							}
						}
					}
				}
			}
		}
		after := balance.Judge(&q)
		if after.Outcome != before.Outcome && after.Outcome != balance.Open && after.Outcome != balance.NotRecorded {
			t.Errorf("vaguer by %d: %s became %s", what, before.Outcome, after.Outcome)
		}
	})
}

// A small change of one layer moves the figures by no more than it moves that
// layer's own contribution. That is its pull at its arm with the doubt about
// its amount, the arm of what lies over it, and the stiffness that a stiff coat
// lends to the whole; soft coats lend none to the soft board.
func TestContinuity(t *testing.T) {
	const step = 0.01 // µm
	everyPanel(t, func(t *testing.T, r *rand.Rand, p *balance.Panel) {
		side := &p.Front
		if r.IntN(2) == 0 {
			side = &p.Back
		}
		if len(*side) == 0 {
			return
		}
		i := r.IntN(len(*side))
		before := balance.Judge(p).Work
		l := (*side)[i]
		moved := append([]balance.Layer(nil), *side...)
		m := &moved[i].DryMicrons
		m.Low, m.Typical, m.High = m.Low+step, m.Typical+step, m.High+step
		above, aboveStiff := 0.0, 0.0
		for _, o := range moved[i:] {
			above += max(o.NewtonsPerMetre(balance.Along).High, o.NewtonsPerMetre(balance.Across).High)
			aboveStiff += o.ModulusMPa.High * o.DryMicrons.Typical // N/m
		}
		own := max(l.Pull[0].High, l.Pull[1].High)
		if l.Kind == balance.Cloth {
			own = 0 // one cloth, however thick
		}
		*side = moved
		after := balance.Judge(p).Work
		reach := p.Board.ThicknessMicrons * 1e-6 * 0.75 // half the board and its coats, and the shift of the neutral plane
		for _, c := range [][2]balance.Bow{{before.Height, after.Height}, {before.Width, after.Width}} {
			d := c[0].StiffnessNewtonMetres.Low
			pull := (own*step*reach*1.5 + above*step*1e-6*2) / d
			stiffness := c[0].CurvaturePerMetre.Most() * 3 * (l.ModulusMPa.High*step*reach + aboveStiff*step*1e-6) * reach / d
			plane := (l.ModulusMPa.High*step*reach + aboveStiff*step*1e-6) / (p.Board.ModulusMPa[c[0].Direction].Low * p.Board.ThicknessMicrons) * 2 * (c[0].Front.High + c[0].Back.High) / d
			allow := pull + stiffness + plane + 1e-12
			for _, x := range [2]float64{c[1].CurvaturePerMetre.Low - c[0].CurvaturePerMetre.Low, c[1].CurvaturePerMetre.High - c[0].CurvaturePerMetre.High} {
				if math.Abs(x) > allow {
					t.Errorf("layer %d, %s: curvature moved by %g, its own contribution by %g", i, l.Kind, x, allow)
				}
			}
		}
	})
}

// A coat that begins as nothing changes nothing, however doubtful it is.
func TestASpeckChangesASpeck(t *testing.T) {
	everyPanel(t, func(t *testing.T, r *rand.Rand, p *balance.Panel) {
		before := balance.Judge(p).Work
		speck := balance.Film(balance.Kind(pick(r, record.Words("Binder"))), false, balance.Exactly(1e-6), balance.Assumed, balance.Dry)
		p.Back = append(append([]balance.Layer(nil), p.Back...), speck)
		after := balance.Judge(p).Work
		bare := *p
		bare.Front, bare.Back = nil, face(speck)
		own := balance.Judge(&bare).Work
		for _, c := range [][3]balance.Bow{{before.Height, after.Height, own.Height}, {before.Width, after.Width, own.Width}} {
			if by := math.Abs(c[0].BowMicrons.Low-c[1].BowMicrons.Low) + math.Abs(c[0].BowMicrons.High-c[1].BowMicrons.High); by > 4*c[2].BowMicrons.Most()+1e-6*c[0].BowMicrons.Most() {
				t.Errorf("moved by %g µm: %+v, %+v", by, c[0], c[1])
			}
		}
	})
}

// As a coat grows from nothing, holds passes to falls short by way of open, or
// at one of the limits of the grades.
func TestVerdictsPassAtLimits(t *testing.T) {
	for _, kind := range []balance.Kind{"animal-glue", balance.GlueGround, "acrylic-dispersion", "test"} {
		for _, b := range []balance.Board{ply3, mdf3, hb32, acm3} {
			last := balance.Holds
			for um := 0.5; um < 500; um *= 1.002 {
				l := film(kind, um)
				if kind == "test" {
					l.Pull = [2]rng{{3, 3}, {3, 3}}
				}
				j := balance.Judge(panel(b, 300, 400, "width", face(l), nil))
				if kind == "test" {
					j.Outcome = j.Would[1]
				}
				w := j.Work.Worst()
				if last == balance.Holds && j.Outcome == balance.FallsShort && math.Abs(w.BowMicrons.Least()/max(500, w.SpanMicrons*0.002)-1) > 0.01 {
					t.Errorf("%s of %.1f µm: %s to %s at %+v over %g", kind, um, last, j.Outcome, w.BowMicrons, w.SpanMicrons)
				}
				last = j.Outcome
			}
		}
	}
}

// Plywood of a known number of plies changes with its thickness without a jump.
func TestPlywoodIsContinuous(t *testing.T) {
	for _, plies := range []int{3, 5, 7, 9, 13} {
		var last balance.Board
		for um := 1000.0; um <= 25000; um += 5 {
			b := balance.BoardOf(balance.Sheet{Kind: record.Plywood, ThicknessMicrons: um, Plies: plies, Species: "birch"})
			for d := range b.ModulusMPa {
				for _, x := range [][2]float64{{b.ModulusMPa[d].Low, last.ModulusMPa[d].Low}, {b.ModulusMPa[d].High, last.ModulusMPa[d].High},
					{b.BendPerMetre[d].Low, last.BendPerMetre[d].Low}, {b.BendPerMetre[d].High, last.BendPerMetre[d].High}} {
					if um > 1000 && math.Abs(x[0]/x[1]-1) > 0.05 {
						t.Fatalf("%d plies, %g µm: %g after %g", plies, um, x[0], x[1])
					}
				}
			}
			last = b
		}
	}
}

// More kinds than an ordinary panel has count as well: forty pull as the sum of
// them.
func TestManyKinds(t *testing.T) {
	var front []balance.Layer
	for i := range 40 {
		l := thin(10)
		l.Kind = balance.Kind(strconv.Itoa(i))
		front = append(front, l, l)
	}
	j := balance.Judge(panel(ply3, 300, 400, "width", front, nil))
	sameRange(t, "pull", j.Work.Height.Front, rng{Low: 800, High: 800})
	k := balance.Judge(panel(ply3, 300, 400, "width", face(thin(800)), nil))
	sameRange(t, "moment", j.Work.Height.MomentNewtons, k.Work.Height.MomentNewtons)
}

func FuzzJudge(f *testing.F) {
	f.Add(300e3, 400e3, 3000.0, 50.0, 0.0, 300.0, 10.0)
	f.Add(1e3, 2e7, 40000.0, 2000.0, 1e9, 1e9, 50.0)
	f.Fuzz(func(t *testing.T, height, width, thickness, um, lo, hi, rh float64) {
		kinds := record.Words("BoardKind")
		for i, k := range kinds {
			l := film(balance.Kind(record.Words("Binder")[i]), um)
			own := l
			own.Kind, own.Pull = "own figures", [2]rng{{Low: lo, High: hi}, {Low: lo, High: hi}}
			p := balance.Panel{HeightMicrons: height, WidthMicrons: width, Board: balance.BoardOf(balance.Sheet{Kind: record.BoardKind(k), ThicknessMicrons: thickness, CoreMicrons: um, SkinMicrons: lo}), Front: face(l, cloth, own), Back: face(l)}
			for _, x := range []any{balance.Judge(&p), balance.MoistureOf(&p, rh), balance.WallOf(&p, rh), balance.Compare(&p, balance.Measured{BowMicrons: lo, SpanMicrons: hi}, nil), balance.Weigh(&p, &p)} {
				if !finite(reflect.ValueOf(x)) {
					t.Fatalf("%+v: %+v", p, x)
				}
			}
		}
	})
}

func BenchmarkJudge(b *testing.B) {
	p := panel(ply3, 300, 400, "width", face(acrylic(sealed), acrylic(glued), cloth, ground(grounds), painted(film("drying-oil", 60)), painted(film("natural-resin", 20))), face(acrylic(sealed), acrylic(second)))
	m := balance.Measured{BowMicrons: 1500, SpanMicrons: 400e3}
	for _, c := range []struct {
		name string
		run  func()
	}{
		{"board", func() {
			balance.BoardOf(balance.Sheet{Kind: record.Plywood, ThicknessMicrons: 3000, Plies: 3, Species: "birch"})
		}},
		{"pull", func() { balance.Judge(p) }},
		{"moisture", func() { balance.MoistureOf(p, 10) }},
		{"measured", func() { balance.Compare(p, m, nil) }},
		{"remedy", func() { balance.Weigh(p, p) }},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				c.run()
			}
		})
	}
}
