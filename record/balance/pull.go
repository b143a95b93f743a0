package balance

import (
	"math"

	"backleaf/record"
)

// Bow is what the pull of the layers does over one side of the panel.
type Bow struct {
	Over                  Over
	Direction             Direction // of the side against the face grain
	SpanMicrons           float64
	Front, Back           Range // N/m, pull of each face
	MomentNewtons         Range // about the neutral plane of the soft board
	NeutralMicrons        float64
	StiffnessNewtonMetres Range // soft to stiff
	CurvaturePerMetre     Range
	BowMicrons            Range
	LeastGrade, MostGrade Grade // of the least and the most the range holds
}

// MostPercent is the most the range holds, as a share of the span.
func (b *Bow) MostPercent() float64 { return b.BowMicrons.Most() / b.SpanMicrons * 100 }

// Pull is the bow by pull over both sides.
type Pull struct{ Height, Width Bow }

// Worst is the side with the greater bow for its length.
func (p *Pull) Worst() *Bow {
	if p.Width.MostPercent() > p.Height.MostPercent() {
		return &p.Width
	}
	return &p.Height
}

// over returns the bow over a side.
func (p *Pull) over(side Over) *Bow {
	if side == OverWidth {
		return &p.Width
	}
	return &p.Height
}

// part chooses the layers whose pull is reckoned. The work stands by itself as
// it did before the picture; the picture lies on all that is there.
type part int

const (
	work part = iota
	picture
	whole
)

func (w part) pulls(l *Layer) bool {
	return w == whole || l.Picture == (w == picture)
}

func (w part) stiffens(l *Layer) bool { return w != work || !l.Picture }

// placed is a layer at its place, in metres and newtons per metre.
type placed struct {
	*Layer
	z, thickness, units float64
	sign                int
}

// group gathers the layers of one kind: they pull alike, so what one face has
// the other may answer. By direction, pull and pull times z, low and high.
type group struct {
	kind     Kind
	pull, at [2]Range
	high     [2][2]float64 // pull at the high figure by face and direction
	unlike   [2][2]float64 // the same times how far it may differ after all
}

// room for the layers of an ordinary panel without the heap.
const ordinary = 24

// reckon bends the panel by the pull of one part of its layers, for one run of
// the grain and one choice of the amounts that nobody recorded.
func (p *Panel) reckon(which part, grain record.Grain, a amount) Pull {
	var layerRoom [ordinary]placed
	layers := layerRoom[:0]
	half := p.Board.ThicknessMicrons * 1e-6 / 2
	for i, face := range [2][]Layer{p.Front, p.Back} {
		sign, z := 1-2*i, half
		for j := range face {
			l := &face[j]
			t := l.DryMicrons.at(a) * 1e-6
			layers = append(layers, placed{l, float64(sign) * (z + t/2), t, l.units(a), sign})
			z += t
		}
	}
	var groupRoom [ordinary]group
	groups := gather(groupRoom[:0], layers, which)
	bow := func(side Over) Bow {
		d := runs(side, grain)
		b := Bow{Over: side, Direction: d, SpanMicrons: p.span(side)}
		for _, l := range layers {
			if !which.pulls(l.Layer) {
				continue
			}
			f := &b.Front
			if l.sign < 0 {
				f = &b.Back
			}
			pull := l.Pull[d].times(l.units)
			f.Low, f.High = f.Low+pull.Low, f.High+pull.High
		}
		softPa, stiffPa := p.Board.plate(d)
		soft, stiff := section{}, section{}
		soft.add(2*half, 0, softPa)
		stiff.add(2*half, 0, stiffPa)
		for _, l := range layers {
			if which.stiffens(l.Layer) {
				soft.add(l.thickness, l.z, l.ModulusMPa.Low*1e6)
				stiff.add(l.thickness, l.z, l.ModulusMPa.High*1e6)
			}
		}
		b.MomentNewtons = moment(groups, d, soft.neutral(), half)
		atStiff := moment(groups, d, stiff.neutral(), half)
		b.NeutralMicrons = soft.neutral() * 1e6
		b.StiffnessNewtonMetres = Range{soft.stiffness(), stiff.stiffness()}
		b.CurvaturePerMetre = b.MomentNewtons.times(1 / soft.stiffness()).with(atStiff.times(1 / stiff.stiffness()))
		b.BowMicrons = Range{sagitta(b.CurvaturePerMetre.Low, b.SpanMicrons), sagitta(b.CurvaturePerMetre.High, b.SpanMicrons)}
		b.LeastGrade = GradeOf(b.BowMicrons.Least(), b.SpanMicrons)
		b.MostGrade = GradeOf(b.BowMicrons.Most(), b.SpanMicrons)
		return b
	}
	return Pull{bow(OverHeight), bow(OverWidth)}
}

func gather(groups []group, layers []placed, which part) []group {
	for _, l := range layers {
		if !which.pulls(l.Layer) {
			continue
		}
		i := 0
		for i < len(groups) && groups[i].kind != l.Kind {
			i++
		}
		if i == len(groups) {
			groups = append(groups, group{kind: l.Kind})
		}
		g := &groups[i]
		face := (1 - l.sign) / 2
		for d := range g.pull {
			lo, hi := l.Pull[d].Low*l.units, l.Pull[d].High*l.units
			g.pull[d].Low += lo
			g.pull[d].High += hi
			g.at[d].Low += lo * l.z
			g.at[d].High += hi * l.z
			g.high[face][d] += hi
			g.unlike[face][d] += hi * l.Certainty.unlike()
		}
	}
	return groups
}

// moment is the moment about a plane, in N. Each kind ranges by itself; of what
// a kind has on both faces a share stays open, since amounts that look equal
// may not be: that share is the mean of the face that is known worse, so that a
// speck of a doubtful coat changes it by a speck.
func moment(groups []group, d Direction, neutral, half float64) Range {
	var m Range
	for i := range groups {
		g := &groups[i]
		a, b := g.at[d].Low-neutral*g.pull[d].Low, g.at[d].High-neutral*g.pull[d].High
		front, back := g.high[0][d], g.high[1][d]
		opened := 0.0
		if both := min(front, back); both > 0 {
			opened = both * max(g.unlike[0][d]/front, g.unlike[1][d]/back) * half
		}
		m.Low += min(a, b) - opened
		m.High += max(a, b) + opened
	}
	return m
}

func (p *Panel) diagonal() float64 { return math.Hypot(p.HeightMicrons, p.WidthMicrons) }
