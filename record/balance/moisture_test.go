package balance_test

import (
	"math"
	"testing"

	"backleaf/record"
	"backleaf/record/balance"
)

// Panels and their moisture: vapour resistances in 1e9 m²·s·Pa/kg, lead, bow in
// mm over height and width. Computed by an independent program in another
// language; "sum" is its diffusion sum at middle values.
func TestMoistureOfPanels(t *testing.T) {
	laid := face(acrylic(sealed), acrylic(glued), cloth)
	oneCoat, twoCoats := face(acrylic(sealed)), face(acrylic(sealed), acrylic(second))
	gesso := face(film("glue-ground", 500), painted(film("drying-oil", 60)), painted(film("natural-resin", 20)))
	for _, c := range []struct {
		name                string
		board               balance.Board
		height, width       float64
		grain               record.Grain
		front, back         []balance.Layer
		step                float64
		z                   [3]rng // front, back, board
		lead                rng
		typical, sum        float64
		bowHeight, bowWidth rng
		grade               balance.MoistureGrade
		leads               record.Face
	}{
		{"cloth, one back coat", ply3, 300, 400, "width", laid, oneCoat, 10, [3]rng{{3.632, 8.661}, {1.288, 3.036}, {1.350, 3.300}},
			rng{0.0222, 0.3793}, 0.1733, 0.1768, rng{0.05001, 3.798}, rng{0.02459, 0.4727}, balance.Uneven, record.Back},
		{"cloth, two back coats", ply3, 300, 400, "width", laid, twoCoats, 10, [3]rng{{3.632, 8.661}, {3.165, 7.541}, {1.350, 3.300}},
			rng{-0.1204, 0.1658}, 0.0171, 0, rng{-1.206, 1.661}, rng{-0.1500, 0.2067}, balance.Even, record.Back},
		{"front only, mdf", mdf6, 400, 500, "height", face(acrylic(100)), nil, 40, [3]rng{{2.540, 6.040}, {0.040, 0.040}, {0.600, 0.900}},
			rng{0.7725, 0.8452}, 0.8186, 0.8023, rng{5.150, 11.27}, rng{8.046, 17.61}, balance.FaceOpen, record.Back},
		{"both faces alike, mdf", mdf6, 400, 500, "height", face(acrylic(100)), face(acrylic(100)), 40, [3]rng{{2.540, 6.040}, {2.540, 6.040}, {0.600, 0.900}},
			rng{-0.0702, 0.0702}, 0, 0, rng{-0.9358, 0.9358}, rng{-1.462, 1.462}, balance.Even, ""},
		{"gesso and oil, wood", wood25, 600, 400, "height", gesso, nil, 10, [3]rng{{3.065, 20.54}, {0.040, 0.040}, {6.250, 25}},
			rng{0.2235, 0.8724}, 0.6384, 0, rng{0.04023, 0.3140}, rng{0.7331, 4.120}, balance.FaceOpen, record.Back},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := balance.MoistureOf(panel(c.board, c.height, c.width, c.grain, c.front, c.back), c.step)
			for i, got := range [3]rng{m.FrontSdMetres, m.BackSdMetres, m.BoardSdMetres} {
				sameRange(t, "resistance", resistance(got), c.z[i])
			}
			within(t, "lead, low", m.Lead.Low, c.lead.Low, 6e-5)
			within(t, "lead, high", m.Lead.High, c.lead.High, 6e-5)
			within(t, "lead", m.Lead.Typical, c.typical, 6e-5)
			if c.sum > 0 && math.Abs(m.Lead.Typical-c.sum) > 0.035 {
				t.Errorf("lead %.4f, by the diffusion sum %.4f", m.Lead.Typical, c.sum)
			}
			sameRange(t, "height", rng{Low: m.Height.Low / 1000, High: m.Height.High / 1000}, c.bowHeight)
			sameRange(t, "width", rng{Low: m.Width.Low / 1000, High: m.Width.High / 1000}, c.bowWidth)
			if m.Grade != c.grade || m.Leads != c.leads {
				t.Errorf("grade %d, leads %q, want %d, %q", m.Grade, m.Leads, c.grade, c.leads)
			}
			if m.Leads == record.Back && m.Height.Typical <= 0 {
				t.Errorf("the back takes up first in rising air: hollow at the front, not %g", m.Height.Typical)
			}
		})
	}
}

func within(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if !(math.Abs(got-want) <= by) {
		t.Errorf("%s: %.5g, want %.4g", what, got, want)
	}
}

// Hours: by the diffusion sum the peak of the panel with cloth comes after
// 18.7 h, that of the coated MDF after 4.25 h; the first settles in steps of
// 94.6 h.
func TestHoursOfMoisture(t *testing.T) {
	m := balance.MoistureOf(panel(ply3, 300, 400, "width", face(acrylic(sealed), acrylic(glued), cloth), face(acrylic(sealed))), 10)
	if !(m.PeakHours.Low < 18.7 && 18.7 < m.PeakHours.High) {
		t.Errorf("peak after %+v h, by the sum 18.7", m.PeakHours)
	}
	within(t, "settles", m.SettleHours, 94.6, 0.06)
	m = balance.MoistureOf(panel(mdf6, 400, 500, "height", face(acrylic(100)), nil), 40)
	if !(m.PeakHours.Low < 4.25 && 4.25 < m.PeakHours.High) {
		t.Errorf("peak after %+v h, by the sum 4.25", m.PeakHours)
	}
	if m := balance.MoistureOf(panel(acm3, 400, 500, "height", face(acrylic(100)), nil), 40); m.Height != (balance.Spread{}) || m.SettleHours != 0 || m.Grade != balance.Even {
		t.Errorf("composite takes up nothing: %+v", m)
	}
}

// A barrier on the back, 3 mm plywood of equal veneers, at middle values: in
// one air it helps only a front as tight, before a damper wall always.
func TestBarrierOnTheBack(t *testing.T) {
	board := balance.BoardOf(balance.Sheet{Kind: record.Plywood, ThicknessMicrons: 3000, Plies: 3, CoreMicrons: 1000, Species: "birch"})
	front := face(acrylic(90), ground(45))
	oil := append(face(front...), painted(film("drying-oil", 60)), painted(film("hydrocarbon-resin", 20)))
	back, alkyd := face(acrylic(90)), face(acrylic(90), film("alkyd", 60))
	for _, c := range []struct {
		name                                 string
		front, back                          []balance.Layer
		zFront, zBack, lead, mm, share, wall float64
	}{
		{"acrylic, acrylic", front, back, 4.484, 3.865, 0.0227, 0.1496, 0.2178, 1.433},
		{"acrylic, alkyd", front, alkyd, 4.484, 23.52, -0.1381, -0.9083, 0.0767, 0.5043},
		{"oil, acrylic", oil, back, 14.93, 3.865, 0.1395, 0.9175, 0.1101, 0.7239},
		{"oil, alkyd", oil, alkyd, 14.93, 23.52, -0.0214, -0.1404, 0.0570, 0.3750},
		{"oil, bare", oil, nil, 14.93, 0.040, 0.8994, 5.916, 0.1344, 0.8840},
	} {
		p := panel(board, 300, 400, "width", c.front, c.back)
		m, w := balance.MoistureOf(p, 10), balance.WallOf(p, 10)
		mid := func(r rng) float64 { return (r.Low + r.High) / 2 / 0.2 }
		same(t, c.name+": front", mid(m.FrontSdMetres), c.zFront)
		same(t, c.name+": back", mid(m.BackSdMetres), c.zBack)
		within(t, c.name+": lead", m.Lead.Typical, c.lead, 6e-5)
		same(t, c.name+": step", m.Height.Typical/1000, c.mm)
		within(t, c.name+": share", w.Share.Typical, c.share, 6e-5)
		same(t, c.name+": wall", w.Height.Typical/1000, c.wall)
		if w.Share.Low > w.Share.Typical || w.Share.Typical > w.Share.High || w.Height.Low > w.Height.Typical || w.Height.Typical > w.Height.High {
			t.Errorf("%s: %+v", c.name, w)
		}
	}
}

func TestMoistureUnknown(t *testing.T) {
	p := panel(ply3, 300, 400, "width", face(film("", 50)), nil)
	if m, w := balance.MoistureOf(p, 10), balance.WallOf(p, 10); m.Cannot != balance.NoBinder || w.Cannot != balance.NoBinder {
		t.Errorf("%q, %q", m.Cannot, w.Cannot)
	}
	p.Front = face(acrylic(50))
	if m := balance.MoistureOf(p, 51); m.Cannot != balance.OutOfRange {
		t.Errorf("%q", m.Cannot)
	}
	p.HeightMicrons = 0
	if m := balance.MoistureOf(p, 10); m.Cannot != balance.NoSize {
		t.Errorf("%q", m.Cannot)
	}
}
