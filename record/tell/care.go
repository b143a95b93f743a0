package tell

import (
	"slices"

	"backleaf/record"
	"backleaf/record/measure"
	"backleaf/record/trade"
)

// CareLine returns, in one line for a label, the advice that a stranger who
// holds the panel needs, by what the panel is.
func (t *Teller) CareLine() string {
	var parts []string
	for _, a := range t.care() {
		if m, ok := t.c.Codes["label-"+a.Said().Code]; ok {
			parts = append(parts, t.c.fill(m, t.inBothScales(a.Said())))
		}
	}
	return t.c.Capital(t.c.Clauses(parts)) + "."
}

// Care returns the advice for one reader, by what the panel is.
func (t *Teller) Care(reader trade.Audience) []string {
	var out []string
	for _, a := range t.care() {
		if a.For == reader {
			out = append(out, Say(t.c, t.inBothScales(a.Said())))
		}
	}
	return out
}

// CareOn returns those advices of some codes that fit the panel.
func (t *Teller) CareOn(codes ...string) []string {
	var out []string
	for _, a := range t.care() {
		if slices.Contains(codes, a.Code) {
			out = append(out, Say(t.c, t.inBothScales(a.Said())))
		}
	}
	return out
}

func (t *Teller) care() []trade.Advice {
	m, _ := t.w.Material(t.p.Cut().Board, t.p.Cut().BoardAs)
	return trade.CareOf(m.Board.Kind, trade.Layers(t.w, t.p))
}

// inBothScales tells each temperature in °C and °F, the studio's scale first: a
// panel travels further than its studio. The ends of a humidity are one value.
func (t *Teller) inBothScales(s record.Said) record.Said {
	s.Values = slices.Clone(s.Values)
	for i, v := range s.Values {
		var at record.Temperature
		if v.Type != "Temperature" || at.UnmarshalText([]byte(v.Text())) != nil {
			continue
		}
		c, _ := at.Millicelsius()
		metric, other := t.c.Measure(at.Number(), at.Unit()), t.c.Measure(measure.Fahrenheit(c), "°F")
		if u := t.w.Studio.Units; u == "in" || u == "ft" {
			metric, other = other, metric
		}
		s.Values[i] = Told(v.Name, t.c.Join.Bracket.With("text", metric, "aside", other))
	}
	if dry, damp := s.Value("dry"), s.Value("damp"); dry.Name != "" && damp.Name != "" {
		s.Values = append(s.Values, Told("humidity", t.c.between(dry.Text(), damp.Text())))
	}
	return s
}
