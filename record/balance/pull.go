package balance

import "backleaf/record"

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

// reckon bends the panel by the pull of one part of its layers, for one run of
// the grain and one choice of the amounts that nobody recorded.
func (p *Panel) reckon(which part, grain record.Grain, a amount) Pull {
	s := stack{board: &p.Board, which: which, half: p.Board.ThicknessMicrons * 1e-6 / 2}
	s.lay(p.Front, front, a)
	s.lay(p.Back, back, a)
	return Pull{s.bow(OverHeight, p.HeightMicrons, grain), s.bow(OverWidth, p.WidthMicrons, grain)}
}

func (s *stack) bow(side Over, spanMicrons float64, grain record.Grain) Bow {
	d := runs(side, grain)
	soft, stiff := s.sections(d)
	atSoft, atStiff := s.moment(d, soft.neutral()), s.moment(d, stiff.neutral())
	b := Bow{
		Over: side, Direction: d, SpanMicrons: spanMicrons, Front: s.pull(front, d), Back: s.pull(back, d),
		MomentNewtons: atSoft, NeutralMicrons: soft.neutral() * 1e6, StiffnessNewtonMetres: Range{soft.stiffness(), stiff.stiffness()},
		CurvaturePerMetre: atSoft.times(1 / soft.stiffness()).with(atStiff.times(1 / stiff.stiffness())),
	}
	b.BowMicrons = Range{sagitta(b.CurvaturePerMetre.Low, spanMicrons), sagitta(b.CurvaturePerMetre.High, spanMicrons)}
	b.LeastGrade, b.MostGrade = GradeOf(b.BowMicrons.Least(), spanMicrons), GradeOf(b.BowMicrons.Most(), spanMicrons)
	return b
}
