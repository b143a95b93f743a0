package check

import (
	"backleaf/record"
	"backleaf/record/balance"
)

// measuredBow is what an inspection says of the bow.
type measuredBow struct {
	verdict verdict
	balance.Measured
	balance.Comparison
	known bool // how far it bows, and over what span
}

// measured returns the last bow measured, and whether that was after some
// layers; nil if none was.
func (s *subject) measured(layers []film) (*measuredBow, record.Answer) {
	last, sure := s.lastBow(layers)
	if last == nil {
		return nil, sure
	}
	return s.graded(*last), sure
}

// bows answers whether a bow that matters was measured after all layers.
func (s *subject) bows() record.Answer {
	last, sure := s.lastBow(s.films)
	if last == nil || sure != record.Yes {
		return ""
	}
	bow, _ := last.Body.Bow.Micrometers()
	span, ok := last.Body.Span.Micrometers()
	return map[bool]record.Answer{true: record.Yes}[ok && balance.GradeOf(float64(bow), float64(span)) >= balance.Matters]
}

// lastBow is the last inspection that tells of the bow, and whether it was after
// some layers; nil if none was.
func (s *subject) lastBow(layers []film) (*record.Done[record.Inspection], record.Answer) {
	var last *record.Done[record.Inspection]
	sure := record.Answer(record.Yes)
	for _, look := range each[record.Inspection](s) {
		if look.Body.Bow.IsZero() && look.Body.Toward != "flat" {
			continue
		}
		if last != nil {
			sure = all(sure, before(last.At, look.At))
		}
		last = &look
	}
	if last == nil {
		return nil, record.No
	}
	for _, f := range layers {
		sure = all(sure, before(f.Layer.At, last.At))
	}
	if sure == record.No { // coated since: it says nothing of the panel as it stands
		return nil, record.No
	}
	return last, sure
}

// graded judges a measured bow over its span.
func (s *subject) graded(look record.Done[record.Inspection]) *measuredBow {
	b, at := look.Body, []int64{look.Seq}
	um, _ := b.Bow.Micrometers()
	span, _ := b.Span.Micrometers()
	m := &measuredBow{Measured: balance.Measured{BowMicrons: float64(um), SpanMicrons: float64(span), Toward: b.Toward, Over: balance.Over(known(b.Along))}}
	p := s.reckoned()[0]
	m.Comparison = balance.Compare(&p, m.Measured, s.asCut())
	values := []record.Value{record.With("bow", b.Bow), record.With("span", b.Span), record.With("toward", b.Toward)}
	m.known = true
	switch {
	case b.Bow.IsUnknown():
		m.verdict, m.known = say(NotRecorded, at, "bow-open"), false
	case um == 0:
		m.verdict = say(Holds, at, "measured-flat")
	case m.Outcome == balance.Holds:
		m.verdict = say(Holds, at, "measured-bow", values...)
	case m.Outcome == balance.FallsShort:
		m.verdict = say(FallsShort, at, "measured-bow", values...)
		if m.Grade == balance.Strong {
			m.verdict.severity = Warning
		}
	default:
		m.verdict, m.known = say(NotRecorded, at, "bow-span-open", values...), false
	}
	return m
}

// known is a word, or nothing where it is not known.
func known[W ~string](w W) W {
	if w == record.Unknown {
		return ""
	}
	return w
}

// asCut is the bow of the board before its first coat; nil if nobody measured it.
func (s *subject) asCut() *balance.Measured {
	c := s.cut.Body
	um, ok := c.Bow.Micrometers()
	if !ok {
		return nil
	}
	span, _ := c.BowSpan.Micrometers()
	return &balance.Measured{BowMicrons: float64(um), SpanMicrons: float64(span), Toward: c.BowToward, Over: balance.Over(known(c.BowAlong))}
}
