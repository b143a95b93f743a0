package balance

import (
	"backleaf/record"
	"backleaf/record/measure"
)

// build is a build of plywood: veneers of one thickness between two outer ones,
// the grain crossing at each glue line.
type build struct {
	plies        int
	outer, inner float64 // any one unit
}

// faceShare is the share of the bending of the whole that veneers with the
// grain of the face carry, were all of one modulus: the sum of 4(z2³ - z1³)
// over them, z from the middle as a fraction of the thickness.
func (v build) faceShare() float64 {
	h := 2*v.outer + float64(v.plies-2)*v.inner
	sum, z1 := 0.0, -0.5
	for i := range v.plies {
		t := v.inner
		if i == 0 || i == v.plies-1 {
			t = v.outer
		}
		z2 := z1 + t/h
		if i%2 == 0 {
			sum += 4 * (z2*z2*z2 - z1*z1*z1)
		}
		z1 = z2
	}
	return sum
}

// veneer holds the figures of a veneer.
type veneer struct {
	alongMPa             float64 // modulus along its own grain
	acrossMPa            float64 // and across it
	growAlong, growCross float64 // free growth per 1 % RH
}

// moduli are those of the board in bending, along and across the face grain.
func (v veneer) moduli(faceShare float64) (along, across float64) {
	return v.alongMPa*faceShare + v.acrossMPa*(1-faceShare), v.acrossMPa*faceShare + v.alongMPa*(1-faceShare)
}

// bend is the curvature, times the thickness, per 1 % RH of a linear difference
// between the faces: ΣEαI/ΣEI, since the outer veneers lead.
func (v veneer) bend(faceShare float64) (along, across float64) {
	eaL, eaT := v.alongMPa*v.growAlong, v.acrossMPa*v.growCross
	a, c := v.moduli(faceShare)
	return (eaL*faceShare + eaT*(1-faceShare)) / a, (eaT*faceShare + eaL*(1-faceShare)) / c
}

// Figures of veneers. Birch of 17 500 N/mm² along and nothing across its grain
// reproduces the mean values of the handbook of Finnish plywood (from memory)
// to the unit; 750 across is clear yellow birch (from memory). For moisture 338
// across meets the published swelling of three-ply, Forest Products Research
// Laboratory, 22 species; lathe checks and creep explain the difference. Growth
// across the grain of birch and of other woods: Wood Handbook table 13-5.
const (
	birchMPa         = 17500
	crossMPa         = 750
	growAlong        = 1.0e-4 * woodWaterPerRH
	birchGrowCross   = 0.0030 * woodWaterPerRH
	lowWoodGrowCross = 0.0025 * woodWaterPerRH
	topWoodGrowCross = 0.0036 * woodWaterPerRH
)

// dampCrossMPa is the modulus across the grain of a veneer that takes up water:
// low, fitted, high.
var dampCrossMPa = Spread{200, 338, 750}

// otherWoodMPa is common practice, of low confidence; the Wood Handbook has
// 6960 to 8550 for sheathing as a whole.
var otherWoodMPa = Range{8000, 13000}

// stock is the data sheet of birch plywood of 1.4 mm veneers, both faces sanded
// by 0.3 mm: thickness as delivered, µm.
var stock = []struct {
	plies    int
	min, max float64
}{
	{3, 3500, 4100}, {5, 6100, 6900}, {7, 8800, 9500}, {9, 11500, 12500}, {11, 14300, 15300}, {13, 17100, 18100},
}

// Veneers as peeled and what sanding takes off a face, µm.
const (
	peeled = 1400
	sanded = 300
)

// plies are the fewest and the most that a birch board of a thickness may have.
// Thin boards are three-ply; between two thicknesses of the data sheet it may be
// either.
func plies(thickness float64) (fewest, most int) {
	if thickness < stock[0].min {
		return 3, 3
	}
	for _, s := range stock {
		if thickness >= s.min && thickness <= s.max {
			return s.plies, s.plies
		}
	}
	n := int((thickness + 2*sanded) / peeled)
	n = max(3, n-(n+1)%2)
	return n, n + 2
}

// inners are the thinnest and the thickest inner veneer of a board whose core
// was not measured: between equal veneers and 1.4 mm under faces sanded down,
// the latter alone where the data sheet has the board. Within half a
// millimetre of such a board the one passes into the other.
func inners(plies int, thickness float64) (a, b float64) {
	equal := thickness / float64(plies)
	sheet := min(peeled, max(equal, (thickness-1000)/float64(plies-2)))
	off := 1.0
	for _, s := range stock {
		if s.plies == plies {
			off = min(1, max(0, s.min-thickness, thickness-s.max)/500)
		}
	}
	return sheet + off*(equal-sheet), sheet
}

// A measured core outside these shares of the thickness is a slip: the board
// counts as not measured.
const (
	leastCore = 0.2
	mostCore  = 0.9
)

func (b *Board) plywood(s Sheet) {
	b.Plies = [2]int{s.Plies, s.Plies}
	if s.Plies == 0 {
		b.Plies[0], b.Plies[1] = plies(s.ThicknessMicrons)
		b.Supposed.Plies = true
	} else if s.Plies < 3 || s.Plies > 49 || s.Plies%2 == 0 {
		b.Cannot = NoFigure
		return
	}
	b.Vapour, b.DensityKgPerM3, b.WaterPerRH = Range{90, 220}, 680, woodWaterPerRH
	b.Source = measure.Source{Basis: measure.Computed, Text: "lamination of birch veneers of 17 500 N/mm²"}
	fibre, cross := Range{birchMPa, birchMPa}, Range{birchGrowCross, birchGrowCross}
	switch s.Species {
	case record.Birch:
	case "", record.Unknown:
		fibre.Low, cross = otherWoodMPa.Low, Range{lowWoodGrowCross, topWoodGrowCross}
		b.Supposed.Species = true
		b.Source = practice("lamination of veneers of 8000 N/mm², for other woods, to 17 500, for birch")
	default:
		fibre, cross = otherWoodMPa, Range{lowWoodGrowCross, topWoodGrowCross}
		b.Source = practice("lamination of veneers of 8000 to 13 000 N/mm², the wood not being birch; low confidence")
	}
	first := true
	var typical [2]float64
	var n float64
	for plies := b.Plies[0]; plies <= b.Plies[1]; plies += 2 {
		thin, thick := inners(plies, s.ThicknessMicrons)
		if c := s.CoreMicrons; within(c*float64(plies-2)/s.ThicknessMicrons, leastCore, mostCore) {
			thin, thick = c, c
		} else if thin != thick {
			b.Supposed.Veneers = true
		}
		for _, inner := range [2]float64{thin, thick} {
			face := build{plies, (s.ThicknessMicrons - float64(plies-2)*inner) / 2, inner}.faceShare()
			b.take(face, fibre, cross, first)
			t := veneer{fibre.mid(), dampCrossMPa.Typical, growAlong, cross.mid()}
			if b.Supposed.Species { // most thin plywood is birch
				t.alongMPa, t.growCross = birchMPa, birchGrowCross
			}
			along, across := t.bend(face)
			typical[Along], typical[Across], n, first = typical[Along]+along, typical[Across]+across, n+1, false
		}
	}
	for d := range b.BendPerMetre {
		c := &b.BendPerMetre[d]
		c.Typical = typical[d] / n
		*c = c.over(s.ThicknessMicrons * 1e-6)
	}
}

// take widens the figures of a board by one build.
func (b *Board) take(faceShare float64, fibre, cross Range, first bool) {
	sa, sc := veneer{fibre.Low, 0, 0, 0}.moduli(faceShare)
	ta, tc := veneer{fibre.High, crossMPa, 0, 0}.moduli(faceShare)
	soft, stiff := [2]float64{sa, sc}, [2]float64{ta, tc}
	for d := range b.ModulusMPa {
		r := Range{soft[d], stiff[d]}
		if first {
			b.ModulusMPa[d] = r
			b.BendPerMetre[d] = Spread{Low: 1}
		}
		b.ModulusMPa[d] = b.ModulusMPa[d].with(r)
	}
	for _, el := range [2]float64{fibre.Low, fibre.High} {
		for _, et := range [3]float64{dampCrossMPa.Low, dampCrossMPa.Typical, dampCrossMPa.High} {
			for _, grow := range [2]float64{cross.Low, cross.High} {
				a, c := veneer{el, et, growAlong, grow}.bend(faceShare)
				for d, x := range [2]float64{a, c} {
					b.BendPerMetre[d].Low = min(b.BendPerMetre[d].Low, x)
					b.BendPerMetre[d].High = max(b.BendPerMetre[d].High, x)
				}
			}
		}
	}
}
