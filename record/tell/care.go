package tell

import (
	"slices"

	"backleaf/record/trade"
)

// CareLine returns the care in one line, for a label.
func (t *Teller) CareLine() string { return string(t.c.Care.Line) }

// CareAdvice returns climate, light and handling, each advice with the mark of
// its source in [Teller.CareSources].
func (t *Teller) CareAdvice() []string {
	c := t.c.Care
	out := []string{string(c.Climate), string(c.Extremes), string(c.Light), string(c.Place), string(c.Dust)}
	if t.hasAcrylic() {
		out = append(out, string(c.Cold))
	}
	return out
}

// CareSources returns the sources of the care advice, as foot-notes.
func (t *Teller) CareSources() []string {
	var out []string
	for _, s := range t.c.Care.Sources {
		out = append(out, string(s))
	}
	if t.hasAcrylic() {
		out = append(out, string(t.c.Care.ColdSource))
	}
	return out
}

// Care returns the advice for one reader, by what the panel is.
func (t *Teller) Care(reader trade.Audience) []string {
	var out []string
	for _, a := range t.care() {
		if a.For == reader {
			out = append(out, Say(t.c, a.Said()))
		}
	}
	return out
}

func (t *Teller) care() []trade.Advice {
	m, _ := t.w.Material(t.p.Cut().Board, t.p.Cut().BoardAs)
	return trade.CareOf(m.Board.Kind, trade.Layers(t.w, t.p))
}

func (t *Teller) hasAcrylic() bool {
	return slices.ContainsFunc(t.care(), func(a trade.Advice) bool { return a.Code == "acrylic-cold" })
}
