package balance_test

import (
	"math"
	"testing"

	"backleaf/record/balance"
)

// 1.5 mm over the 400 mm along the grain of a panel with cloth in sealer and a
// ground on its front: more than pull and 10 % RH explain, the rest would
// take 8.50 to 9.57 % RH between the faces. The same bow over the 300 mm across
// the grain lies well within. Figures of an independent program.
func TestMeasuredBow(t *testing.T) {
	p := panel(ply3, 300, 400, "width", face(acrylic(sealed), acrylic(glued), cloth, ground(grounds)), face(acrylic(sealed)))
	c := balance.Compare(p, balance.Measured{BowMicrons: 1500, SpanMicrons: 400e3, Toward: "front"}, nil)
	if c.Outcome != balance.FallsShort || c.Grade != balance.Matters || c.Explained != balance.Beyond || c.Over != balance.OverWidth {
		t.Errorf("%+v", c)
	}
	same(t, "pull", c.PullMicrons.High, 440.4)
	same(t, "moisture", c.MoistureMicrons, 486.3)
	within(t, "rest, low", c.RestPercentRH.Low, 8.50, 0.006)
	within(t, "rest, high", c.RestPercentRH.High, 9.57, 0.006)

	c = balance.Compare(p, balance.Measured{BowMicrons: 1500, SpanMicrons: 300e3, Toward: "front"}, nil)
	if c.Outcome != balance.FallsShort || c.Explained != balance.Within || c.Over != balance.OverHeight || c.RestPercentRH != (rng{}) {
		t.Errorf("across: %+v", c)
	}
	same(t, "pull across", c.PullMicrons.High, 6009)
}

// A panel of 19 mm MDF, 72 in square, with three coats on its front only, told
// in a trade forum (2005): 2 in of bow, of which pull explains 1.908 mm and the
// rest would take 23 to 46 % RH between the faces.
func TestMeasuredInTheTrade(t *testing.T) {
	front := face(film("polyurethane", 110))
	p := panel(mdf19, 1829, 1829, "", front, nil)
	j := balance.Judge(p)
	same(t, "pull", j.Work.Height.BowMicrons.High/1000, 1.908)
	c := balance.Compare(p, balance.Measured{BowMicrons: 50.8e3, SpanMicrons: 1829e3}, nil)
	if c.Outcome != balance.FallsShort || c.Grade != balance.Strong || c.Explained != balance.Beyond {
		t.Errorf("%+v", c)
	}
	k := 8 * 0.0508 / (1.829 * 1.829)
	bend := mdf19.BendPerMetre[balance.Along]
	within(t, "all by moisture, low", k/bend.High, 23.08, 0.006)
	within(t, "all by moisture, high", k/bend.Low, 46.16, 0.006)
	if r := c.RestPercentRH; !(r.Low > 20 && r.Low < 23.08 && r.High > 40 && r.High < 46.16) {
		t.Errorf("rest %+v", r)
	}
}

// A panel lying hollow side up touches in the middle: its corners stand above
// it by both bows together, which is the bow over the diagonal. Curvatures of
// 0.30 over 300 mm and 0.02 over 400: 3.375 + 0.400 mm (geometry).
func TestDiagonalTakesBoth(t *testing.T) {
	p := panel(ply3, 300, 400, "width", face(acrylic(50), acrylic(90), cloth), face(acrylic(50)))
	j := balance.Judge(p)
	c := balance.Compare(p, balance.Measured{BowMicrons: 1000, SpanMicrons: 500e3}, nil)
	if c.Over != balance.OverDiagonal {
		t.Fatalf("compared over %q", c.Over)
	}
	h, w := j.Work.Height, j.Work.Width
	within(t, "low", c.PullMicrons.Low, h.BowMicrons.Low+w.BowMicrons.Low, 1e-9)
	within(t, "high", c.PullMicrons.High, h.BowMicrons.High+w.BowMicrons.High, 1e-9)
	corner := (h.CurvaturePerMetre.High*0.15*0.15 + w.CurvaturePerMetre.High*0.2*0.2) / 2 * 1e6
	within(t, "corner", c.PullMicrons.High, corner, 1e-6)
	same(t, "figures", (0.30*0.15*0.15+0.02*0.2*0.2)/2*1000, 3.775)
}

func TestMeasuredWithoutAll(t *testing.T) {
	type m = balance.Measured
	p := panel(ply3, 300, 400, "width", face(acrylic(50), acrylic(90), cloth), face(acrylic(50)))
	for _, c := range []struct {
		name      string
		measured  m
		outcome   balance.Outcome
		explained balance.Explained
	}{
		{"flat", m{Toward: "flat"}, balance.Holds, balance.NotCompared},
		{"flat over the height", m{Toward: "flat", Over: balance.OverHeight}, balance.Holds, balance.Within},
		{"no span, slight even over the longest line", m{BowMicrons: 700}, balance.NotRecorded, balance.NotCompared},
		{"no span, too much even over the longest line", m{BowMicrons: 1000}, balance.FallsShort, balance.NotCompared},
		{"no span but the side", m{BowMicrons: 700, Over: balance.OverHeight}, balance.FallsShort, balance.Within},
		{"a span that fits no line", m{BowMicrons: 200, SpanMicrons: 200e3}, balance.Holds, balance.NotCompared},
		{"a shorter straightedge over a side", m{BowMicrons: 200, SpanMicrons: 200e3, Over: balance.OverHeight}, balance.Holds, balance.Within},
		{"the other way than anything pulls", m{BowMicrons: 5000, SpanMicrons: 300e3, Toward: "back"}, balance.FallsShort, balance.Beyond},
		{"as far, and no telling which way", m{BowMicrons: 5000, SpanMicrons: 300e3}, balance.FallsShort, balance.Within},
	} {
		if got := balance.Compare(p, c.measured, nil); got.Outcome != c.outcome || got.Explained != c.explained || got.Cannot != "" {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
	if c := balance.Compare(p, m{BowMicrons: math.NaN(), SpanMicrons: 300e3}, nil); c.Outcome != balance.CannotJudge {
		t.Errorf("%+v", c)
	}
	// A measured bow decides where nothing can be reckoned.
	bare := &balance.Panel{}
	if c := balance.Compare(bare, m{BowMicrons: 1500, SpanMicrons: 400e3}, nil); c.Outcome != balance.FallsShort || c.Cannot != balance.NoBoard {
		t.Errorf("%+v", c)
	}
	if c := balance.Compare(bare, m{BowMicrons: 1500}, nil); c.Outcome != balance.NotRecorded {
		t.Errorf("%+v", c)
	}
	// What moisture does is not known with a binder missing: no fault of it.
	p.Front = face(film("", 5))
	if c := balance.Compare(p, m{BowMicrons: 20e3, SpanMicrons: 400e3}, nil); c.Explained != balance.NotCompared || c.Cannot != balance.NoBinder {
		t.Errorf("%+v", c)
	}
	if c := balance.Compare(p, m{BowMicrons: 50, SpanMicrons: 400e3}, nil); c.Explained != balance.Within {
		t.Errorf("%+v", c)
	}
}

// What the bare board had already is not asked of the coats.
func TestBowAsCut(t *testing.T) {
	type m = balance.Measured
	p := panel(ply3, 300, 400, "width", face(acrylic(50)), face(acrylic(50)))
	measured := m{BowMicrons: 2500, SpanMicrons: 400e3, Toward: "front"}
	for _, c := range []struct {
		name string
		cut  *m
		want balance.Explained
		had  float64
	}{
		{"not measured", nil, balance.Beyond, 0},
		{"as much", &m{BowMicrons: 2400, SpanMicrons: 400e3, Toward: "front"}, balance.Within, 2400},
		{"over a shorter straightedge", &m{BowMicrons: 600, SpanMicrons: 200e3, Toward: "front", Over: balance.OverWidth}, balance.Within, 2400},
		{"the other way", &m{BowMicrons: 2400, SpanMicrons: 400e3, Toward: "back"}, balance.Beyond, 2400},
		{"no telling which way", &m{BowMicrons: 2400, SpanMicrons: 400e3}, balance.Within, 2400},
		{"over the other side", &m{BowMicrons: 2400, SpanMicrons: 300e3, Toward: "front"}, balance.Beyond, 0},
	} {
		got := balance.Compare(p, measured, c.cut)
		if got.Explained != c.want || math.Abs(got.CutMicrons-c.had) > 1e-9 || got.Outcome != balance.FallsShort {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}

// Remedies for cloth in sealer on the front, one coat on the back, over the 300 mm across the grain: bow by pull low and high,
// mm, and lead. Figures of an independent program.
func TestRemedies(t *testing.T) {
	front := face(acrylic(sealed), acrylic(glued), cloth)
	before := panel(ply3, 300, 400, "width", front, face(acrylic(sealed)))
	for _, c := range []struct {
		name          string
		back          []balance.Layer
		bow           rng
		lead          float64
		lowers, evens bool
	}{
		{"as it stands", before.Back, rng{0.1454, 5.364}, 0.1733, false, false},
		{"a second coat", face(acrylic(sealed), acrylic(second)), rng{0.1001, 4.618}, 0.0171, false, true},
		{"cloth in sealer", face(acrylic(sealed), acrylic(glued), cloth), rng{-1.027, 1.027}, 0, true, true},
		{"alkyd", face(acrylic(sealed), film("alkyd", 60)), rng{-1.627, 5.144}, -0.0936, false, false},
	} {
		after := panel(ply3, 300, 400, "width", front, c.back)
		bow := balance.Judge(after).Work.Height.BowMicrons
		sameRange(t, c.name, rng{Low: bow.Low / 1000, High: bow.High / 1000}, c.bow)
		e := balance.Weigh(before, after)
		within(t, c.name+": lead", e.LeadAfter, c.lead, 6e-5)
		if e.LowersPull != c.lowers || e.EvensMoisture != c.evens || e.Cannot != "" {
			t.Errorf("%s: %+v", c.name, e)
		}
	}
	if e := balance.Weigh(before, &balance.Panel{}); e.Cannot != balance.NoBoard {
		t.Errorf("%+v", e)
	}
}

// Grain five degrees off on a panel of 300 × 400 mm: pull that is equal
// in all directions bends about the grain, so the curvatures turn with it.
func TestObliqueGrain(t *testing.T) {
	w := balance.Judge(panel(ply3, 300, 400, "width", face(acrylic(50), acrylic(90), cloth), face(acrylic(50)))).Work
	along, across := w.Width.CurvaturePerMetre.High, w.Height.CurvaturePerMetre.High
	s, c := math.Sincos(5 * math.Pi / 180)
	same(t, "over the width", along*c*c+across*s*s, 0.02289)
	same(t, "over the height", along*s*s+across*c*c, 0.4684)
	same(t, "twist", (across-along)*s*c, 0.03928)
	same(t, "corner, mm", (across-along)*s*c*0.3*0.4*1000, 4.713)
}
