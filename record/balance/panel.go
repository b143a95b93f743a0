package balance

import (
	"math"

	"backleaf/record"
)

// Panel is a board with its layers, ready to be judged. A layer is up to 2000 µm
// thick, the coats of a face together up to a fifth of the board.
type Panel struct {
	HeightMicrons, WidthMicrons float64      // 1000 to 2e7
	Grain                       record.Grain // of the face: height or width; anything else is not recorded
	Board                       Board
	Front, Back                 []Layer // from the board outwards
}

const thickestLayerMicrons = 2000

// unsound says why no figure of the panel can be used.
func (p *Panel) unsound() Cannot {
	switch {
	case p.Board.Cannot != "":
		return p.Board.Cannot
	case p.Board.ModulusMPa[Along].Low == 0:
		return NoBoard
	case p.HeightMicrons == 0 || p.WidthMicrons == 0:
		return NoSize
	case !within(p.HeightMicrons, 1000, 2e7) || !within(p.WidthMicrons, 1000, 2e7):
		return OutOfRange
	}
	for _, face := range [2][]Layer{p.Front, p.Back} {
		for i := range face {
			if !face[i].sound() {
				return OutOfRange
			}
		}
	}
	return ""
}

// cannot says why the pull of a part cannot be reckoned.
func (p *Panel) cannot(which part) Cannot {
	if why := p.unsound(); why != "" {
		return why
	}
	for _, face := range [2][]Layer{p.Front, p.Back} {
		sum := 0.0
		for i := range face {
			if l := &face[i]; l.Kind != Cloth && which.stiffens(l) {
				sum += l.DryMicrons.Typical
			}
		}
		if sum > p.Board.ThicknessMicrons/5 {
			return CoatsTooThick
		}
	}
	return ""
}

// sound refuses figures that no layer has.
func (l *Layer) sound() bool {
	t := l.DryMicrons
	ok := t.Low > 0 && within(t.Typical, t.Low, t.High) && t.High <= thickestLayerMicrons && within(float64(l.Certainty), 0, float64(Assumed))
	for _, r := range [4]Range{l.Pull[Along], l.Pull[Across], l.ModulusMPa, l.Vapour} {
		ok = ok && r.Low >= 0 && within(r.High, r.Low, 1e9)
	}
	return ok
}

// runs is the direction of a side against the grain, were the grain along g.
func runs(side Over, g record.Grain) Direction {
	if string(side) == string(g) {
		return Along
	}
	return Across
}

// grains are the runs of the grain that the record leaves possible.
func (p *Panel) grains() []record.Grain {
	switch {
	case p.Grain == "height" || p.Grain == "width":
		return grainKnown[p.Grain]
	case !p.directed():
		return grainKnown["height"]
	}
	return grainUnknown
}

// directed reports that board or layers have a direction.
func (p *Panel) directed() bool {
	for _, face := range [2][]Layer{p.Front, p.Back} {
		for i := range face {
			if face[i].Pull[Along] != face[i].Pull[Across] {
				return true
			}
		}
	}
	return p.Board.grained()
}

var (
	grainKnown   = map[record.Grain][]record.Grain{"height": {"height"}, "width": {"width"}}
	grainUnknown = []record.Grain{"height", "width"}
)

// span is the length of a line over the panel, in µm.
func (p *Panel) span(o Over) float64 {
	switch o {
	case OverHeight:
		return p.HeightMicrons
	case OverWidth:
		return p.WidthMicrons
	}
	return math.Hypot(p.HeightMicrons, p.WidthMicrons)
}
