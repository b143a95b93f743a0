package tell

import (
	"slices"
	"strings"

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
	return t.c.Capital(t.c.Clauses(parts))
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

// careTopics sorts the advice for an owner, each topic by what matters most.
var careTopics = []struct {
	topic string
	codes []string
}{
	{"air", []string{"room-of-comfort", "never-beyond", "gesso-even-air", "mould", "cloth-from-damp", "never-wet"}},
	{"light", []string{"no-sun", "less-light-not-glass", "varnish-is-no-shield", "oil-dries-on", "sun-bows-it"}},
	{"wall", []string{"inner-wall"}},
	{"dust", []string{"dust-with-brush", "air-only", "no-water", "touch-marks", "acrylic-holds-dust", "tempera-scratches", "tempera-bloom", "wax-bloom"}},
	{"heat", []string{"wax-heat", "acrylic-heat", "cloth-from-heat", "acrylic-cold", "oil-cold", "cold-two-layers"}},
	{"board", []string{"carry-flat", "dents", "curve-is-normal", "look-for-checks", "never-press-blisters"}},
	{"damage", []string{"damage"}},
}

// CareByTopic returns the advice for an owner in a few paragraphs, each with
// the name of its topic.
func (t *Teller) CareByTopic() []Row {
	var out []Row
	for _, topic := range careTopics {
		var said []string
		for _, code := range topic.codes {
			said = append(said, t.CareOn(code)...)
		}
		if said != nil {
			out = append(out, Row{topic.topic, t.c.Word(record.Code("care-" + topic.topic)), strings.Join(said, " ")})
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
	all := trade.CareOf(m.Board.Kind, trade.Layers(t.w, t.p))
	if !slices.ContainsFunc(all, func(a trade.Advice) bool { return a.Code == "acrylic-cold" }) {
		return all
	}
	// What spares acrylic the cold spares oil the frost.
	return slices.DeleteFunc(all, func(a trade.Advice) bool { return a.Code == "oil-cold" || a.Code == "cold-two-layers" })
}

// inBothScales tells each temperature in °C and °F, the studio's scale first: a
// panel travels further than its studio.
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
	return s
}
