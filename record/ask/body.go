package ask

import (
	"backleaf/record"
	"backleaf/record/tell"
)

func (r *reader) board() Answer {
	c, seq := r.cut()
	if !known(string(c.Board)) {
		return r.said(string(c.Board), seq)
	}
	about := []string{r.Board()}
	if d := r.p.Size().Depth; known(d.String()) {
		about = append(about, r.Quantity(d))
	}
	if c.Grain != "" {
		about = append(about, r.say("ask-grain", record.With("grain", c.Grain)))
	}
	return recorded([]int64{seq}, r.Catalogue().Series(about), r.Product(c.Board, c.BoardAs, c.Lot))
}

func (r *reader) thick() Answer {
	c, seq := r.cut()
	c.Size.Depth = r.p.Size().Depth
	if c.Size.Depth.IsZero() {
		if t := r.material().Board.Thickness; !t.IsZero() {
			return open([]int64{seq}, r.say("ask-not-measured"), r.say("ask-sold-as", record.With("thickness", t)))
		}
	}
	if c.Size.Depth.IsZero() || c.Size.Depth.IsUnknown() {
		return r.said(c.Size.Depth.String(), seq)
	}
	return recorded([]int64{seq}, r.say("ask-as-cut", record.With("thickness", c.Size.Depth))).andRecorded(r.remarks("thick", "thickness"))
}

func (r *reader) grain() Answer {
	c, seq := r.cut()
	if !known(string(c.Grain)) {
		return r.said(string(c.Grain), seq)
	}
	return recorded([]int64{seq}, r.say("ask-grain-runs", record.With("grain", c.Grain)))
}

func (r *reader) formaldehyde() Answer {
	_, seq := r.cut()
	m := r.material()
	if !known(m.Board.Formaldehyde) {
		return r.said(m.Board.Formaldehyde, seq)
	}
	return recorded([]int64{seq}, r.say("ask-class", record.With("class", m.Board.Formaldehyde)))
}

func (r *reader) braced() Answer { return events[record.Braced](r) }

// ofCloth answers with one property of each cloth.
func (r *reader) ofCloth(say func(*record.ClothLaid, record.Material) string) Answer {
	return r.each(isCloth, func(a application) string {
		m, _ := r.w.Material(a.Cloth.Cloth, a.Cloth.ClothAs)
		return say(a.Cloth, m)
	})
}

func (r *reader) threads() Answer {
	return r.ofCloth(func(_ *record.ClothLaid, m record.Material) string {
		var s []string
		if m.Cloth.Weave != "" {
			s = append(s, r.Word(m.Cloth.Weave))
		}
		if !m.Cloth.Warp.IsZero() || !m.Cloth.Weft.IsZero() {
			s = append(s, r.AsProduct(r.say("ask-threads", record.With("warp", m.Cloth.Warp), record.With("weft", m.Cloth.Weft)), m))
		}
		return r.Catalogue().Series(s)
	})
}

func (r *reader) clothMass() Answer {
	return r.ofCloth(func(_ *record.ClothLaid, m record.Material) string {
		if m.Cloth.Mass.IsZero() {
			return ""
		}
		return r.AsProduct(r.Quantity(m.Cloth.Mass), m)
	})
}

func (r *reader) run() Answer {
	return r.ofCloth(func(c *record.ClothLaid, _ record.Material) string {
		if c.Run == "" {
			return ""
		}
		return r.say("ask-warp-runs", record.With("run", c.Run))
	})
}

func (r *reader) dimensions() Answer {
	_, seq := r.cut()
	a := recorded([]int64{seq}, r.Dimensions())
	a.Recorded = known(r.p.Size().Height.String())
	return a.andRecorded(events[record.Resized](r))
}

func (r *reader) size() Answer {
	d, s := r.dimensions(), r.sizing()
	return Answer{Lines: []string{r.say("ask-dimensions", tell.Told("size", d.Lines[0])), r.say("ask-size-coat", tell.Told("coat", s.Lines[0]))},
		Entries: append(d.Entries, s.Entries...), Recorded: d.Recorded || s.Recorded}
}

// cut is how the panel began, with its entry.
func (r *reader) cut() (record.Cut, int64) {
	c, _ := record.Latest[record.Cut](r.p)
	return c.Body, c.Seq
}

func (r *reader) material() record.Material {
	c, _ := r.cut()
	m, _ := r.w.Material(c.Board, c.BoardAs)
	return m
}

// cloth answers with the cloth, or that none is meant, and with what was seen
// of it.
func (r *reader) cloth() Answer {
	return r.layersOf(record.Use("cloth"), isCloth).and(r.seenOf("cloth"))
}

// seenOf are the remarks of inspections that speak of a layer.
func (r *reader) seenOf(word string) Answer {
	a := r.remarks(word)
	if !a.Recorded {
		return Answer{}
	}
	return a
}
