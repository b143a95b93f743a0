package balance

import (
	"backleaf/record"
	"backleaf/record/measure"
)

// stillAirMetres is the vapour resistance of the still air of a room at a face,
// in metres of air: 0.04e9 m²·s·Pa/kg, from memory of building physics.
const stillAirMetres = 0.008

// airPermeability of still air, kg/(m·s·Pa), from memory of EN ISO 12572.
const airPermeability = 2.0e-10

// sealing says how much of the lead a face's resistance takes away. Fitted to a
// diffusion sum: within 0.035 where no face has less than a tenth of the
// board's resistance, 0.08 at worst.
const sealing = 2.4

// MoistureGrade says how unevenly a panel takes up moisture.
type MoistureGrade int

// The grades, by the size of the typical lead (common practice).
const (
	Even     MoistureGrade = iota // under 0.05
	Uneven                        // 0.05 to 0.2
	OneSided                      // over 0.2 to 0.5
	FaceOpen                      // over 0.5: one face is as good as open
)

func moistureGrade(lead float64) MoistureGrade {
	switch lead = max(lead, -lead); {
	case lead < 0.05:
		return Even
	case lead <= 0.2:
		return Uneven
	case lead <= 0.5:
		return OneSided
	}
	return FaceOpen
}

// Moisture is what a step of humidity on both sides at once does while it works
// its way in. It passes, and is never added to the pull. All layers count, the
// picture too.
type Moisture struct {
	Cannot Cannot
	Lacks  Lacks // amounts were assumed; grain: both runs reckoned, the worse told

	FrontSdMetres, BackSdMetres Range // vapour resistance of the coats and of the air before them
	BoardSdMetres               Range

	// Lead is the greatest linear difference of humidity between the faces, as a
	// share of the step: positive where the back opens first.
	Lead   Spread
	Leads  record.Face // the face that takes up first at typical figures; empty: neither
	Grade  MoistureGrade
	Height Spread // µm for a rising step; the same with the other sign for a falling one
	Width  Spread

	PeakHours   Range   // when the bow is greatest
	SettleHours float64 // it is gone after a few times as long; 0 where nothing passes
}

// MoistureOf reckons a step of the air, in % RH, 0 to 50.
func MoistureOf(p *Panel, stepPercentRH float64) Moisture {
	m := Moisture{Cannot: p.damp(stepPercentRH)}
	if m.Cannot != "" {
		return m
	}
	m.Lacks = p.lacks(whole)
	front, back, board := resistance(p.Front), resistance(p.Back), p.Board.resistance()
	m.FrontSdMetres, m.BackSdMetres, m.BoardSdMetres = front.Range(), back.Range(), board.Range()
	// The lead falls with the resistance of the back, rises with that of the
	// front; by the board it may turn in between, but not far.
	m.Lead.Typical = lead(board.Typical, front.Typical, back.Typical)
	m.Lead.Low = min(lead(board.Low, front.Low, back.High), lead(board.High, front.Low, back.High))
	m.Lead.High = max(lead(board.Low, front.High, back.Low), lead(board.High, front.High, back.Low))
	m.Grade = moistureGrade(m.Lead.Typical)
	switch {
	case m.Lead.Typical > 0:
		m.Leads = record.Back
	case m.Lead.Typical < 0:
		m.Leads = record.Front
	}
	m.Height, m.Width = p.bend(m.Lead, stepPercentRH)
	m.PeakHours, m.SettleHours = p.Board.hours(front.Typical, back.Typical, board.Typical)
	return m
}

// damp says why the moisture of a panel cannot be reckoned.
func (p *Panel) damp(percentRH float64) Cannot {
	if why := p.unsound(); why != "" {
		return why
	}
	if p.lacks(whole).Binders {
		return NoBinder
	}
	if !within(percentRH, 0, 50) {
		return OutOfRange
	}
	return ""
}

// lead is Z/(Z + 2.4 Zb) - Z/(Z + 2.4 Zf).
func lead(board, front, back float64) float64 {
	return board/(board+sealing*back) - board/(board+sealing*front)
}

// resistance of a face, in metres of still air.
func resistance(face []Layer) Spread {
	s := Exactly(stillAirMetres)
	for i := range face {
		lowest, mid, highest := face[i].sdMetres()
		s.Low, s.Typical, s.High = s.Low+lowest, s.Typical+mid, s.High+highest
	}
	return s
}

func (b *Board) resistance() Spread {
	h := b.ThicknessMicrons * 1e-6
	return Spread{b.Vapour.Low * h, b.Vapour.mid() * h, b.Vapour.High * h}
}

// bend is the bow over height and width for a share of a difference of
// humidity; of two possible runs of the grain the one that bends more.
func (p *Panel) bend(share Spread, percentRH float64) (height, width Spread) {
	most := -1.0
	for _, g := range p.grains() {
		h, w := p.bendOver(OverHeight, g, share, percentRH), p.bendOver(OverWidth, g, share, percentRH)
		if x := max(h.Range().Most()/p.HeightMicrons, w.Range().Most()/p.WidthMicrons); x > most {
			height, width, most = h, w, x
		}
	}
	return height, width
}

func (p *Panel) bendOver(side Over, grain record.Grain, share Spread, percentRH float64) Spread {
	c := p.Board.BendPerMetre[runs(side, grain)]
	bow := func(c, share float64) float64 { return sagitta(c*share*percentRH, p.span(side)) }
	r := Range{bow(c.Low, share.Low), bow(c.High, share.Low)}
	q := Range{bow(c.Low, share.High), bow(c.High, share.High)}
	return Spread{min(r.Low, r.High), bow(c.Typical, share.Typical), max(q.Low, q.High)}
}

// hours is how long a step takes: the board's capacity for water per pressure
// times resistance. The peak after 0.07 to 0.4 of that of the board is read off
// the diffusion sum, for faces of a tenth to five times its resistance.
func (b *Board) hours(front, back, board float64) (peak Range, settle float64) {
	saturation, err := measure.SaturationHPa(20)
	if err != nil || b.WaterPerRH == 0 {
		return Range{}, 0
	}
	capacity := b.DensityKgPerM3 * b.ThicknessMicrons * 1e-6 * b.WaterPerRH / (saturation * 100)
	hour := capacity / airPermeability / 3600
	return Range{0.07 * board * hour, 0.4 * board * hour}, (front*back/(front+back) + board/3) * hour
}

// Wall is what air that differs for good does, such as an outside wall behind
// the panel. A barrier on either face helps, and lasts.
type Wall struct {
	Cannot        Cannot
	Share         Spread // of the difference that the board itself gets
	Height, Width Spread // µm, positive where the back is the damper side
}

// WallOf reckons air at the back that is damper by so many % RH, 0 to 50.
func WallOf(p *Panel, damperPercentRH float64) Wall {
	w := Wall{Cannot: p.damp(damperPercentRH)}
	if w.Cannot != "" {
		return w
	}
	front, back, board := resistance(p.Front), resistance(p.Back), p.Board.resistance()
	share := func(z, coats float64) float64 { return z / (z + coats) }
	w.Share = Spread{share(board.Low, front.High+back.High), share(board.Typical, front.Typical+back.Typical), share(board.High, front.Low+back.Low)}
	w.Height, w.Width = p.bend(w.Share, damperPercentRH)
	return w
}
