package check

import (
	"backleaf/record"
	"backleaf/record/trade"
)

func spanFigure(x trade.Span) record.Figure {
	switch {
	case x.Months > 0:
		return figure(float64(x.Months), "months")
	case x.Days > 0:
		return figure(float64(x.Days), "d")
	}
	return figure(float64(x.Hours), "h")
}

// dried judges whether the lower layer of a pair had dried for as long as is
// usual before the upper: shorter is advice, shorter than the least a warning.
// What the record leaves open holds or falls short only if it does by every
// reading.
func (s *subject) dried(p pair, applies record.Answer) verdict {
	waits, known := trade.WaitsFor(s.made(p.above).StrataOf(), s.made(p.below).StrataOf(), thick(p.below))
	good, least := record.Answer(record.Unknown), record.Answer(record.Unknown)
	var better trade.Span
	if known == record.Yes {
		usual := func(w trade.Wait) record.Answer { return trade.Passed(p.below.Layer.At, p.above.Layer.At, w.Usual) }
		atLeast := func(w trade.Wait) record.Answer { return trade.Passed(p.below.Layer.At, p.above.Layer.At, w.Least) }
		good, least = sameAll(waits, usual), sameAll(waits, atLeast)
		better = waits[len(waits)-1].Usual
	}
	o := outcome(all(applies, known), good)
	values := p.names()
	switch waited, _ := between(p.below.Layer.At, p.above.Layer.At); o {
	case Holds:
		values = append(values, record.With("time", lasting(waited.least)))
	case FallsShort:
		values = append(values, record.With("time", lasting(waited.most)), record.With("better", spanFigure(better)))
	}
	code := "dried" + suffix[o]
	if o == NotRecorded && filmDecides(waits, p) && all(applies, known) == record.Yes {
		code = "dried-film-open"
	}
	v := say(o, nil, code, values...)
	if o == FallsShort && least == record.No {
		v.severity = Warning
	}
	return v
}

// thick answers whether a paint is recorded as thick; of coats nothing is.
func thick(f Film) record.Answer {
	if isPaint(f) {
		return word(f.Layer.Paint.Film, "thick")
	}
	return record.Unknown
}

// filmDecides reports that the dates tell, and that only the thickness of the
// lower layer is wanting.
func filmDecides(ws []trade.Wait, p pair) bool {
	seen := map[record.Answer]bool{}
	for _, w := range ws {
		seen[trade.Passed(p.below.Layer.At, p.above.Layer.At, w.Usual)] = true
	}
	return seen[record.Yes] && seen[record.No] && !seen[record.Unknown]
}

// sameAll is what one question gets of all waits; unknown where they differ.
func sameAll(ws []trade.Wait, ask func(trade.Wait) record.Answer) record.Answer {
	out := ask(ws[0])
	for _, w := range ws[1:] {
		if ask(w) != out {
			return record.Unknown
		}
	}
	return out
}
