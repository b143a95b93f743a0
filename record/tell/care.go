package tell

import "backleaf/record"

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

func (t *Teller) hasAcrylic() bool {
	for _, l := range t.p.Layers() {
		if l.Paint != nil && l.Paint.Medium == record.AcrylicPaint {
			return true
		}
		if l.Coating == nil {
			continue
		}
		for _, part := range l.Coating.Mix {
			if m, _ := t.w.Material(part.Material); m.Binder == record.Acrylic {
				return true
			}
		}
	}
	return false
}
