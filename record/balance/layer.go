package balance

import "backleaf/record"

// Certainty is how well the amount of a layer is known.
type Certainty int

// The certainties.
const (
	Gauged    Certainty = iota // a gauge was read
	Estimated                  // from the amount laid and the area
	Assumed                    // nothing is recorded: what is usual
)

// unlike is how far amounts of one kind that look equal on both faces may
// differ after all (common practice).
func (c Certainty) unlike() float64 { return [...]float64{0.10, 0.20, 0.50}[c] }

// Air is the air whose figures are taken.
type Air int

// The airs. Glue and glue grounds are dry as soon as the room can fall under
// 35 % RH (common practice).
const (
	Room Air = iota // 45 to 55 % RH, 18 to 23 °C
	Dry             // 20 % RH and less
)

// Layer is one layer of a face. [Film] and [ClothLayer] fill it from the
// tables; whoever knows better figures of a product writes them over, with a
// Kind of its own, since layers of one Kind are taken to pull alike.
type Layer struct {
	Kind       Kind
	DryMicrons Spread // thickness, for a cloth too; three equal figures unless Assumed
	Certainty  Certainty
	Picture    bool // paint, isolation coat or varnish: reckoned apart from the work

	Pull       [2]Range // by Direction: stress of a film in MPa, tension of a cloth in N/m
	ModulusMPa Range    // counted in the stiffness of the whole
	Vapour     Range    // µ, vapour resistance factor; nothing for a cloth
}

// Film is a film with the figures of the tables; matt tells grounds and other
// much pigmented films from clear and glossy ones. Thickness above 0 to 2000
// µm. In an air of [Dry] the stress is that of dry air.
func Film(kind Kind, matt bool, dryMicrons Spread, how Certainty, air Air) Layer {
	f := filmOf(kind)
	l := Layer{Kind: kind, DryMicrons: dryMicrons, Certainty: how, Pull: [2]Range{f.room, f.room}, ModulusMPa: f.modulusMPa, Vapour: f.vapour}
	if air == Dry {
		l.Pull = [2]Range{f.dry, f.dry}
	}
	if matt && f.matt.High > 0 {
		l.Vapour = f.matt
	}
	return l
}

// UsualCloth is what one cloth may pull in each direction of its threads, in
// N/m. No figure for cloth glued to a board is published that could be found:
// the upper end is canvas on a stretcher, from memory, the lower a stiffness of
// 5 kN/m shrinking by 1 % after the adhesive has set.
var UsualCloth = Range{50, 300}

// Canvas gains tension as the air dries (Hedley, Studies in Conservation 33,
// 1988, abstract); by how much is common practice.
const dryCloth = 1.5

// usualClothMicrons is the thickness of a cloth (common practice).
const usualClothMicrons = 250

// ClothLayer is one cloth with its tension by direction of the threads, in N/m,
// and the run of its warp against the face grain. On the bias the larger
// tension counts in both directions; where the run is not recorded either may
// lie in either.
func ClothLayer(run record.ThreadRun, warp, weft Range, air Air) Layer {
	l := Layer{Kind: Cloth, DryMicrons: Exactly(usualClothMicrons), Certainty: Estimated}
	switch run {
	case "along-grain":
		l.Pull = [2]Range{warp, weft}
	case "across-grain":
		l.Pull = [2]Range{weft, warp}
	case "bias":
		more := Range{max(warp.Low, weft.Low), max(warp.High, weft.High)}
		l.Pull = [2]Range{more, more}
	default:
		l.Pull = [2]Range{warp.with(weft), warp.with(weft)}
	}
	if air == Dry {
		l.Pull = [2]Range{l.Pull[Along].times(dryCloth), l.Pull[Across].times(dryCloth)}
	}
	return l
}

// NewtonsPerMetre is what the layer pulls in one direction at its typical
// thickness.
func (l *Layer) NewtonsPerMetre(d Direction) Range { return l.Pull[d].times(l.units(typical)) }

// units is the amount that the pull is counted by: micrometres, or one cloth.
func (l *Layer) units(a amount) float64 {
	if l.Kind == Cloth {
		return 1
	}
	return l.DryMicrons.at(a)
}

// sdMetres is the vapour resistance of the layer, in metres of still air.
func (l *Layer) sdMetres() (lowest, mid, highest float64) {
	t := l.DryMicrons
	return l.Vapour.Low * t.Low * 1e-6, l.Vapour.mid() * t.Typical * 1e-6, l.Vapour.High * t.High * 1e-6
}
