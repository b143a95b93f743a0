package balance

// Effect is what a change of the build-up would do, such as a coat more on the
// back. Only what helps is worth offering.
type Effect struct {
	Cannot                              Cannot
	PullPercentBefore, PullPercentAfter float64 // most that the pull of the work does, as a share of the span
	LeadBefore, LeadAfter               float64 // of moisture, at typical figures

	LowersPull    bool // the high pull in the worst direction by a quarter or more
	EvensMoisture bool // the size of the lead by a half or more, from one that is not even
}

// Weigh reckons a panel as it stands and as it would be after a remedy, laid on
// in the typical amount.
func Weigh(before, after *Panel) Effect {
	var e Effect
	if e.Cannot = before.cannot(work); e.Cannot == "" {
		e.Cannot = after.cannot(work)
	}
	if e.Cannot != "" {
		return e
	}
	was, _ := before.pull(work, typical)
	is, _ := after.pull(work, typical)
	e.PullPercentBefore, e.PullPercentAfter = was.Worst().MostPercent(), is.Worst().MostPercent()
	e.LowersPull = e.PullPercentBefore > 0 && e.PullPercentAfter <= 0.75*e.PullPercentBefore
	dampBefore, dampAfter := MoistureOf(before, 0), MoistureOf(after, 0)
	if dampBefore.Cannot == "" && dampAfter.Cannot == "" {
		e.LeadBefore, e.LeadAfter = dampBefore.Lead.Typical, dampAfter.Lead.Typical
		e.EvensMoisture = dampBefore.Grade > Even && 2*size(e.LeadAfter) <= size(e.LeadBefore)
	}
	return e
}

func size(x float64) float64 { return max(x, -x) }
