package worksheet

import (
	"math"
	"slices"
	"strconv"
	"time"

	"backleaf/record"
	"backleaf/record/plan"
	"backleaf/record/tell"
)

// more are wet materials, cost and hours.
func (j Job) more() []Section {
	w := j.Words.Plan
	var out []Section
	if j.Wet != nil {
		out = append(out, Section{string(w.T("titles-wet")), j.wet()})
	}
	if len(j.Costs) > 0 {
		out = append(out, Section{string(w.T("titles-cost")), j.costs()})
	}
	if j.Table != nil {
		out = append(out, Section{string(w.T("titles-timetable")), j.hours()})
	}
	return out
}

func (j Job) wet() []string {
	w := j.Words.Plan
	var out []string
	for _, c := range j.Wet.Coats {
		act := j.Acts[c.Act].Name
		if c.Why != "" {
			out = append(out, w.WetMissing[string(c.Why)].With("act", act))
			continue
		}
		out = append(out, w.T("wet-coat").With("act", act, "laid", j.amount(c.Laid), "area", j.area(int64(c.Area*1e6))))
	}
	loss := j.Words.Measure(strconv.FormatFloat(float64(j.Wet.Loss)/1000, 'f', -1, 64), "%")
	for _, n := range j.Wet.Products {
		if n.Laid == (plan.Amount{}) {
			continue
		}
		text := j.fill(w.T("wet-all"), tell.Told("product", j.Products[n.Product].Name), tell.Told("open", string(n.Why)), tell.Told("taken", j.amount(n.Taken)), tell.Told("laid", j.amount(n.Laid)), tell.Told("loss", loss))
		var from []string
		for _, t := range n.From {
			from = append(from, w.T("wet-from").With("taken", j.amount(t.Taken), "tin", j.Tins[t.Tin].Name, "left", j.amount(t.Left)))
		}
		for _, t := range n.Expired {
			from = append(from, w.T("wet-expired").With("tin", j.Tins[t].Name))
		}
		if len(from) > 0 {
			text += " " + j.Words.Clauses(from) + "."
		}
		switch {
		case n.Buy != (plan.Amount{}):
			text += " " + w.T("wet-buy").With("buy", j.amount(n.Buy))
		case n.Why == "":
			text += " " + string(w.T("wet-enough"))
		}
		out = append(out, text)
	}
	return out
}

func (j Job) amount(a plan.Amount) string { return Amount(j.Words, a) }

// Amount writes a volume and a mass, as far as they are known, to three figures.
func Amount(c *tell.Catalogue, a plan.Amount) string {
	one := func(v float64, small, large string) string {
		if v >= 1e6 {
			v, small = v/1000, large
		}
		v /= 1000
		digits := 0
		if v > 0 && v < 100 {
			digits = max(0, 2-int(math.Floor(math.Log10(v))))
		}
		return c.Measure(strconv.FormatFloat(v, 'f', min(digits, 2), 64), small)
	}
	switch {
	case a.Milligrams == 0:
		return one(a.Microliters, "mL", "L")
	case a.Microliters == 0:
		return one(a.Milligrams, "g", "kg")
	}
	return c.Join.Bracket.With("text", one(a.Microliters, "mL", "L"), "aside", one(a.Milligrams, "g", "kg"))
}

func (j Job) price(p plan.Price) string {
	minor := p.Minor % 100
	return j.Words.Number.Number(strconv.FormatInt(p.Minor/100, 10)+"."+string(rune('0'+minor/10))+string(rune('0'+minor%10))) + j.Words.Number.Unit + p.Currency
}

func (j Job) costs() []string {
	w := j.Words.Plan
	var out []string
	// What a coat would take may not be known; then it has no line.
	open := j.Wet != nil && slices.ContainsFunc(j.Wet.Coats, func(c plan.CoatNeed) bool { return c.Why != "" })
	for _, l := range j.Costs {
		what, known := w.CostWhat[l.What]
		if !known {
			what = tell.Message(l.What)
		}
		lot := l.Lot
		if lot == "" {
			lot = string(w.T("no-lot"))
		}
		if !l.Priced {
			open = true
			out = append(out, w.T("cost-open").With("what", string(what), "lot", lot))
			continue
		}
		out = append(out, w.T("cost").With("what", string(what), "lot", lot, "price", j.price(l.Price)))
	}
	var sums []string
	for _, s := range j.Sums {
		sums = append(sums, j.price(s))
	}
	switch {
	case len(sums) == 0:
	case open:
		out = append(out, w.T("cost-least").With("sum", j.Words.List(sums)))
	default:
		out = append(out, w.T("cost-sum").With("sum", j.Words.List(sums)))
	}
	if len(sums) > 0 {
		out = append(out, string(w.T("cost-bare")))
	}
	return out
}

func (j Job) at(t time.Time) string {
	return j.fill("{at:moment}", record.With("at", record.Moment(t.Truncate(time.Minute))))
}

// on is a moment beside one of a day under its heading.
func (j Job) on(day, t time.Time) string {
	if t.Format(time.DateOnly) == day.Format(time.DateOnly) {
		return t.Format(j.Words.Dates.Clock)
	}
	return j.at(t)
}

// BatchName names a batch by its panels.
func (j Job) BatchName(batch int) string {
	first := 1
	for _, b := range j.Batches[:batch] {
		first += b.Panels
	}
	n := j.Batches[batch].Panels
	return j.fill(j.Words.Plan.T("batch"), record.With("n", n), tell.Told("first", j.name(first)), tell.Told("last", j.name(first+n-1)))
}

func (j Job) hours() []string {
	w := j.Words.Plan
	var out []string
	day := ""
	for _, s := range j.Table.Slots {
		if of := j.fill("{day}", record.With("day", record.Moment(s.Start))); of != day {
			out, day = append(out, of), of
		}
		batch := ""
		if len(j.Batches) > 1 {
			batch = j.BatchName(s.Batch)
		}
		text := j.fill(w.T("slot"), tell.Told("from", s.Start.Format(j.Words.Dates.Clock)), tell.Told("to", s.End.Format(j.Words.Dates.Clock)), tell.Told("act", j.Batches[s.Batch].Acts[s.Act].Name), tell.Told("batch", batch))
		switch {
		case s.Late:
			text = w.T("slot-late").With("slot", text, "until", j.on(s.Start, s.Until))
		case !s.Until.IsZero():
			text = w.T("slot-until").With("slot", text, "until", j.on(s.Start, s.Until))
		case s.Safe.After(s.From):
			text = w.T("slot-safe").With("slot", text, "from", j.on(s.Start, s.From), "safe", j.on(s.Start, s.Safe))
		}
		out = append(out, text)
	}
	for i, at := range j.Table.Ready {
		if n := j.Table.Untimed[i]; n >= 0 {
			out = append(out, w.T("untimed").With("batch", j.BatchName(i), "act", j.Batches[i].Acts[n].Name))
		} else if !at.IsZero() {
			out = append(out, w.T("ready").With("batch", j.BatchName(i), "at", j.at(at)))
		}
	}
	return append(out, j.texts(w.TimeNotes)...)
}
