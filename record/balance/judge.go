package balance

import "math"

// Outcome is what a judgement comes to.
type Outcome string

// The outcomes.
const (
	Holds       Outcome = "holds"            // even the high figure is negligible or slight
	FallsShort  Outcome = "falls-short"      // even the low figure matters
	Open        Outcome = "open"             // the figures straddle the limit: lay a straightedge
	NotRecorded Outcome = "not-recorded"     // an amount or a binder is missing
	CannotJudge Outcome = "cannot-be-judged" // see Cannot
)

// Judgement is what the pull of the layers comes to, no bow having been
// measured; a measured one outranks it, see [Compare].
type Judgement struct {
	Outcome Outcome
	Cannot  Cannot // with CannotJudge
	Lacks   Lacks

	// Would is what it would come to, were the amounts and binders that nobody
	// recorded low, typical or high; three equal ones where nothing is missing.
	Would [3]Outcome

	Work          Pull // of everything but the picture, at typical amounts
	Picture       Pull // what the picture may add as it ages; never a verdict
	PictureCannot Cannot
}

// Lacks tells what of the work was not recorded. Without the grain both runs
// were reckoned and the worse is told.
type Lacks struct{ Amounts, Binders, Grain bool }

// Judge reckons the pull of a panel's layers.
func Judge(p *Panel) Judgement {
	if why := p.cannot(work); why != "" {
		return Judgement{Outcome: CannotJudge, Cannot: why, Would: [3]Outcome{CannotJudge, CannotJudge, CannotJudge}}
	}
	j := Judgement{Lacks: p.lacks(work)}
	j.Work, j.Outcome = p.pull(work, typical)
	if j.PictureCannot = p.cannot(picture); j.PictureCannot == "" {
		j.Picture, _ = p.pull(picture, typical)
	}
	j.Would = [3]Outcome{j.Outcome, j.Outcome, j.Outcome}
	if j.Lacks.Amounts {
		_, j.Would[low] = p.pull(work, low)
		_, j.Would[high] = p.pull(work, high)
	}
	if j.Lacks.Amounts || j.Lacks.Binders {
		j.Outcome = NotRecorded
	}
	return j
}

// pull reckons every run of the grain that the record leaves possible and gives
// the worse. Where they disagree nothing is decided.
func (p *Panel) pull(which part, a amount) (Pull, Outcome) {
	grains := p.grains()
	worst := p.reckon(which, grains[0], a)
	outcome := worst.outcome()
	for _, g := range grains[1:] {
		other := p.reckon(which, g, a)
		if other.outcome() != outcome {
			outcome = Open
		}
		if other.worseThan(&worst) {
			worst = other
		}
	}
	return worst, outcome
}

// worseThan compares the worst directions, and where these are alike the others.
func (p *Pull) worseThan(q *Pull) bool {
	const alike = 1e-9
	a, b := p.Worst().MostPercent(), q.Worst().MostPercent()
	if math.Abs(a-b) > alike*b {
		return a > b
	}
	return p.Height.MostPercent()+p.Width.MostPercent() > (q.Height.MostPercent()+q.Width.MostPercent())*(1+alike)
}

// outcome never lets an uncertain high figure make a fault.
func (p *Pull) outcome() Outcome {
	switch {
	case max(p.Height.MostGrade, p.Width.MostGrade) <= Slight:
		return Holds
	case max(p.Height.LeastGrade, p.Width.LeastGrade) >= Matters:
		return FallsShort
	}
	return Open
}

// lacks tells what was not recorded of the layers of a part.
func (p *Panel) lacks(which part) Lacks {
	lacks := Lacks{Grain: len(p.grains()) > 1}
	for _, face := range [2][]Layer{p.Front, p.Back} {
		for i := range face {
			if l := &face[i]; which.pulls(l) {
				lacks.Amounts = lacks.Amounts || l.Certainty == Assumed
				lacks.Binders = lacks.Binders || l.Kind != Cloth && !l.Kind.Known()
			}
		}
	}
	return lacks
}
