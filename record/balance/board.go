package balance

import (
	"backleaf/record"
	"backleaf/record/measure"
)

// Sheet is what is recorded of a board. Zero means not recorded.
type Sheet struct {
	Kind             record.BoardKind
	ThicknessMicrons float64        // 1000 to 40000
	Plies            int            // of plywood: odd, 3 to 49
	CoreMicrons      float64        // of plywood: one inner veneer, measured at the edge
	Species          record.Species // of plywood
	SkinMicrons      float64        // of aluminium composite: one skin
}

// Board holds the figures of a board. The soft end of a modulus is what the
// board has at least, the stiff end what it has at most.
type Board struct {
	Cannot           Cannot // why there are no figures
	ThicknessMicrons float64
	Poisson          float64
	ModulusMPa       [2]Range  // in bending, by Direction
	BendPerMetre     [2]Spread // by Direction: curvature, 1/m, per 1 % RH of linear difference between the faces
	Vapour           Range     // µ, vapour resistance factor through the thickness
	DensityKgPerM3   float64
	WaterPerRH       float64 // moisture content gained per relative humidity, percent per percent
	Plies            [2]int  // the fewest and the most reckoned with
	Supposed         Supposed
	Source           measure.Source // of the stiffness
}

// Supposed tells which facts of a board were not recorded and were filled by
// what is usual, or by a range.
type Supposed struct{ Plies, Veneers, Species, Skins bool }

// grained reports that the direction matters.
func (b *Board) grained() bool {
	return b.ModulusMPa[Along] != b.ModulusMPa[Across] || b.BendPerMetre[Along] != b.BendPerMetre[Across]
}

// plate is the stiffness of the bare board's material, in Pa, that a plate
// bends with: soft as a cylinder, stiff as a bowl, which enclose what it can do.
func (b *Board) plate(d Direction) (soft, stiff float64) {
	return b.ModulusMPa[d].Low * 1e6 / (1 - b.Poisson*b.Poisson), b.ModulusMPa[d].High * 1e6 / (1 - b.Poisson)
}

// waterPerRH is the slope of moisture content over humidity: of solid wood at
// 40 to 60 % RH and 20 °C by the equation of the Wood Handbook, of hot-pressed
// boards as in a trade table of particleboard and MDF.
const (
	woodWaterPerRH    = 0.164
	pressedWaterPerRH = 0.11
)

// BoardOf finds the figures of a board; Board.Cannot says why where it does
// not.
func BoardOf(s Sheet) Board {
	b := Board{ThicknessMicrons: s.ThicknessMicrons}
	switch {
	case s.Kind == "" || s.Kind == record.Unknown:
		b.Cannot = NoBoard
	case s.ThicknessMicrons == 0:
		b.Cannot = NoThickness
	case !within(s.ThicknessMicrons, 1000, 40000):
		b.Cannot = OutOfRange
	case s.Kind == record.Plywood:
		b.plywood(s)
	case s.Kind == record.AluminiumComp:
		b.composite(s)
	default:
		b.even(s.Kind)
	}
	return b
}

// sheets are the boards whose figures do not depend on their build; those of
// MDF hold up to a thickness each.
var sheets = map[record.BoardKind][]struct {
	toMicrons     float64
	along, across Range
	poisson       float64
	vapour        Range
	density       float64
	waterPerRH    float64
	source        measure.Source
}{
	record.MDF: {
		{9000, Range{2700, 3700}, Range{2700, 3700}, 0.3, Range{20, 30}, 750, pressedWaterPerRH, mdf},
		{12000, Range{2500, 3600}, Range{2500, 3600}, 0.3, Range{20, 30}, 750, pressedWaterPerRH, mdf},
		{19000, Range{2200, 3600}, Range{2200, 3600}, 0.3, Range{20, 30}, 750, pressedWaterPerRH, mdf},
		{30000, Range{2100, 3600}, Range{2100, 3600}, 0.3, Range{20, 30}, 750, pressedWaterPerRH, mdf},
		{40000, Range{1900, 3600}, Range{1900, 3600}, 0.3, Range{20, 30}, 750, pressedWaterPerRH, mdf},
	},
	record.Hardboard:         {{40000, Range{3100, 5520}, Range{3100, 5520}, 0.3, Range{30, 70}, 950, pressedWaterPerRH, hardboard}},
	record.TemperedHardboard: {{40000, Range{3100, 5520}, Range{3100, 5520}, 0.3, Range{30, 70}, 950, pressedWaterPerRH, hardboard}},
	record.Particleboard: {{40000, Range{1600, 4140}, Range{1600, 4140}, 0.3, Range{15, 50}, 680, pressedWaterPerRH,
		published("a particleboard data sheet (EN minimum) and Wood Handbook table 12-1")}},
	record.SolidWood: {{40000, Range{9000, 14000}, Range{400, 900}, 0, Range{50, 200}, 550, woodWaterPerRH,
		practice("solid wood of no particular species")}},
}

// Vapour factors of boards are from memory of EN ISO 10456 and EN 13986,
// hardboard common practice; densities middle values of data sheets.
var (
	mdf       = published("an MDF data sheet to EN 622-5 and Wood Handbook table 12-1; up to 6 mm and 3700 N/mm² from memory of EN 622-5 and EN 12369-1")
	hardboard = published("Wood Handbook table 12-1")
)

// Movement of solid wood per 1 % RH, along the grain and across it in a
// tangential cut: common practice along, Wood Handbook table 13-5 across.
var (
	woodAlong  = Spread{1e-5, 1.5e-5, 2e-5}
	woodAcross = Spread{0.0025 * woodWaterPerRH, 0.00305 * woodWaterPerRH, 0.0036 * woodWaterPerRH}
)

func (b *Board) even(kind record.BoardKind) {
	for _, s := range sheets[kind] {
		if b.ThicknessMicrons > s.toMicrons {
			continue
		}
		b.ModulusMPa = [2]Range{s.along, s.across}
		b.Poisson, b.Vapour, b.DensityKgPerM3, b.WaterPerRH, b.Source = s.poisson, s.vapour, s.density, s.waterPerRH, s.source
		along, across := woodAlong, woodAcross
		if kind == record.Particleboard {
			kind = record.MDF // a trade booklet gives one movement for both
		}
		if m, err := measure.MovementOf(kind); err == nil {
			along = Spread{m.Low, m.Likely, m.High}
			across = along
		}
		// A linear difference bends a uniform plate by growth over thickness.
		h := b.ThicknessMicrons * 1e-6
		b.BendPerMetre = [2]Spread{along.over(h), across.over(h)}
		return
	}
	b.Cannot = NoFigure
}

func (s Spread) over(x float64) Spread { return Spread{s.Low / x, s.Typical / x, s.High / x} }

// Skins of aluminium composite, in µm: the thinnest and the thickest usual.
const (
	thinSkin     = 200
	thickSkin    = 500
	aluminiumMPa = 70000
)

// composite counts the skins alone; no vapour passes and nothing swells.
func (b *Board) composite(s Sheet) {
	thin, thick := s.SkinMicrons, s.SkinMicrons
	if s.SkinMicrons == 0 {
		b.Supposed.Skins = true
		thin, thick = thinSkin, min(thickSkin, s.ThicknessMicrons/4)
	}
	if !within(thin, 10, s.ThicknessMicrons/2) {
		b.Cannot = OutOfRange
		return
	}
	modulus := func(skin float64) float64 {
		core := 1 - 2*skin/b.ThicknessMicrons
		return aluminiumMPa * (1 - core*core*core)
	}
	e := Range{modulus(thin), modulus(thick)}
	b.ModulusMPa, b.Poisson = [2]Range{e, e}, 0.33
	b.Vapour = Range{1e9, 1e9}
	b.Source = measure.Source{Basis: measure.Computed, Text: "two skins of aluminium, 70 000 N/mm², which meets a data sheet of such boards within 2 %"}
}
