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

// veneer holds the figures of a veneer, along and across its own grain: moduli,
// and free growth per 1 % RH.
type veneer struct{ alongMPa, acrossMPa, alongGrows, acrossGrows float64 }

// moduli are those of the board in bending, by [Direction].
func (v veneer) moduli(faceShare float64) [2]float64 {
	return [2]float64{v.alongMPa*faceShare + v.acrossMPa*(1-faceShare), v.acrossMPa*faceShare + v.alongMPa*(1-faceShare)}
}

// bend is the curvature, times the thickness, per 1 % RH of a linear difference
// between the faces, by [Direction]: ΣEαI/ΣEI, since the outer veneers lead.
func (v veneer) bend(faceShare float64) [2]float64 {
	e := v.moduli(faceShare)
	v.alongMPa, v.acrossMPa = v.alongMPa*v.alongGrows, v.acrossMPa*v.acrossGrows
	grown := v.moduli(faceShare)
	return [2]float64{grown[Along] / e[Along], grown[Across] / e[Across]}
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
	case "birch":
	case "", record.Unknown:
		fibre.Low, cross = otherWoodMPa.Low, Range{lowWoodGrowCross, topWoodGrowCross}
		b.Supposed.Species = true
		b.Source = practice("lamination of veneers of 8000 N/mm², for other woods, to 17 500, for birch")
	default:
		fibre, cross = otherWoodMPa, Range{lowWoodGrowCross, topWoodGrowCross}
		b.Source = practice("lamination of veneers of 8000 to 13 000 N/mm², the wood not being birch; low confidence")
	}
	least, most := b.faceShares(s)
	soft, stiff := veneer{alongMPa: fibre.Low}, veneer{alongMPa: fibre.High, acrossMPa: crossMPa}
	b.ModulusMPa[Along] = Range{soft.moduli(least)[Along], stiff.moduli(most)[Along]}
	b.ModulusMPa[Across] = Range{soft.moduli(most)[Across], stiff.moduli(least)[Across]}
	// Veneers across the direction lead, the more so the stiffer they are.
	calm := veneer{fibre.High, dampCrossMPa.Low, growAlong, cross.Low}
	usual := veneer{fibre.mid(), dampCrossMPa.Typical, growAlong, cross.mid()}
	lively := veneer{fibre.Low, dampCrossMPa.High, growAlong, cross.High}
	if b.Supposed.Species { // most thin plywood is birch
		usual.alongMPa, usual.acrossGrows = birchMPa, birchGrowCross
	}
	h, mid := s.ThicknessMicrons*1e-6, (least+most)/2
	b.BendPerMetre[Along] = Spread{calm.bend(most)[Along], usual.bend(mid)[Along], lively.bend(least)[Along]}.over(h)
	b.BendPerMetre[Across] = Spread{calm.bend(least)[Across], usual.bend(mid)[Across], lively.bend(most)[Across]}.over(h)
}

// faceShares are the least and the greatest share of the face grain that the
// board may have.
func (b *Board) faceShares(s Sheet) (least, most float64) {
	least = 1
	for plies := b.Plies[0]; plies <= b.Plies[1]; plies += 2 {
		thin, thick := inners(plies, s.ThicknessMicrons)
		if c := s.CoreMicrons; within(c*float64(plies-2)/s.ThicknessMicrons, leastCore, mostCore) {
			thin, thick = c, c
		} else if thin != thick {
			b.Supposed.Veneers = true
		}
		for _, inner := range [2]float64{thin, thick} {
			share := build{plies, (s.ThicknessMicrons - float64(plies-2)*inner) / 2, inner}.faceShare()
			least, most = min(least, share), max(most, share)
		}
	}
	return least, most
}
