package balance

import "math"

// Range is a low and a high figure, Low <= High, with sign.
type Range struct{ Low, High float64 }

// Most is the greatest size in the range, without sign.
func (r Range) Most() float64 { return max(math.Abs(r.Low), math.Abs(r.High)) }

// Least is the smallest size in the range, without sign: 0 where the range
// reaches both ways.
func (r Range) Least() float64 {
	if r.Low <= 0 && r.High >= 0 {
		return 0
	}
	return min(math.Abs(r.Low), math.Abs(r.High))
}

func (r Range) times(f float64) Range {
	a, b := r.Low*f, r.High*f
	return Range{min(a, b), max(a, b)}
}

func (r Range) plus(o Range) Range { return Range{r.Low + o.Low, r.High + o.High} }

// with widens the range until it holds o too.
func (r Range) with(o Range) Range { return Range{min(r.Low, o.Low), max(r.High, o.High)} }

func (r Range) mid() float64 { return (r.Low + r.High) / 2 }

// Spread is a low, a typical and a high figure, Low <= Typical <= High.
type Spread struct{ Low, Typical, High float64 }

// Exactly is a figure with nothing to choose from.
func Exactly(x float64) Spread { return Spread{x, x, x} }

// Range is the spread without its middle.
func (s Spread) Range() Range { return Range{s.Low, s.High} }

// amount chooses one of the three figures of a spread.
type amount int

const (
	low amount = iota
	typical
	high
)

func (s Spread) at(a amount) float64 { return [...]float64{s.Low, s.Typical, s.High}[a] }

// Direction is a direction in the board against the grain of its face.
type Direction int

// The two directions, which index the figures of a [Board] and a [Layer].
const (
	Along Direction = iota
	Across
)

// Over is a line over the panel that a bow is reckoned or measured over.
type Over string

// The lines.
const (
	OverHeight   Over = "height"
	OverWidth    Over = "width"
	OverDiagonal Over = "diagonal"
)

// Cannot is why nothing can be reckoned; empty where something can.
type Cannot string

// The reasons.
const (
	NoSize        Cannot = "no-size"         // height or width is not recorded
	NoThickness   Cannot = "no-thickness"    // of the board
	NoBoard       Cannot = "no-board"        // kind of board not recorded
	NoFigure      Cannot = "no-figure"       // no figures are known for such a board
	NoBinder      Cannot = "no-binder"       // of a layer that slows vapour
	OutOfRange    Cannot = "out-of-range"    // a figure no panel has
	CoatsTooThick Cannot = "coats-too-thick" // over a fifth of the board on one face
)

// within is false for a NaN too.
func within(x, lo, hi float64) bool { return x >= lo && x <= hi }
