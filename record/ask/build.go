package ask

import (
	"slices"

	"backleaf/record"
	"backleaf/record/tell"
	"backleaf/record/trade"
)

func (r *reader) varnish() Answer {
	a := layersOf(isVarnish)(r)
	if a.Recorded {
		a.Lines = []string{r.VarnishLine(), a.Lines[0]}
	}
	return a
}

func (r *reader) removal() Answer {
	as := r.applications(isVarnish)
	if len(as) == 0 {
		return open(nil, r.say("ask-no-varnish"))
	}
	last := as[len(as)-1]
	a := recorded(seqs(as), r.VarnishLine(), r.say("ask-test-first"))
	a.Recorded = last.Varnish.Removable != "" || slices.ContainsFunc(last.Coating.Mix, func(p record.Part) bool { m, _ := r.w.Material(p.Material, p.As); return m.Removable != "" })
	return a
}

// eachPigment calls f for every pigment of paint and of the products used.
func (r *reader) eachPigment(f func(p record.Pigment, l record.Layer)) (without []int64) {
	for _, a := range r.applications(func(l record.Layer) bool { return l.Cloth == nil }) {
		some := a.Paint == nil
		if a.Paint != nil {
			for _, p := range a.Paint.Pigments {
				f(p, a.Layer)
				some = true
			}
		}
		for _, part := range a.Coating.Mix {
			m, _ := r.w.Material(part.Material, part.As)
			for _, p := range m.Pigments {
				f(p, a.Layer)
				some = true
			}
		}
		if !some {
			without = append(without, a.Seq)
		}
	}
	return without
}

// pigment names a pigment and the layer it is in.
func (r *reader) pigment(p record.Pigment, l record.Layer) string {
	name := tell.Told("pigment", r.say("ask-pigment", record.With("name", p.Name), record.With("index", p.Index)))
	if l.Seq == 0 {
		return name.Text()
	}
	return r.say("ask-pigment-in", name, r.layer(l))
}

// coatOf is the coat or paint of an entry.
func (r *reader) coatOf(seq int64) record.Layer {
	for _, a := range r.applications(func(l record.Layer) bool { return l.Cloth == nil && l.Seq == seq }) {
		return a.Layer
	}
	return record.Layer{}
}

func (r *reader) metals() Answer {
	d := trade.DangersOf(trade.Layers(r.w, r.p))
	var sure, may []string
	var es []int64
	for _, x := range d.Found {
		name := tell.Told("pigment", r.pigment(x.Pigment, r.coatOf(x.Seq)))
		line := r.say("ask-holds", name, record.With("metal", record.Code(x.Risk)))
		switch {
		case x.Risk == trade.Stated:
			line = r.say("ask-stated-harmful", record.With("product", x.Product))
		case x.Pigment == record.Pigment{}:
			continue
		case !x.Sure:
			may = append(may, r.say("ask-may-hold", name, record.With("metal", record.Code(x.Risk))))
			continue
		}
		if es = append(es, x.Seq); !slices.Contains(sure, line) {
			sure = append(sure, line)
		}
	}
	switch {
	case sure != nil:
		return recorded(es, r.few(append(sure, may...)), r.say("ask-do-not-sand"))
	case d.Harmful == record.No:
		return recorded(nil, r.say("ask-none-harmful"), r.say("ask-only-analysis"))
	case len(r.applications(func(l record.Layer) bool { return l.Cloth == nil })) == 0:
		return r.none()
	}
	return open(d.Open, r.say("ask-not-ruled-out"), r.few(may))
}

func (r *reader) zinc() Answer {
	var found []string
	var es []int64
	told := true
	without := r.eachPigment(func(p record.Pigment, l record.Layer) {
		switch trade.HoldsZinc(p) {
		case record.Yes:
			s := r.pigment(p, l)
			if trade.HoldsZinc(p, trade.ZincOxide) == record.No {
				s = r.say("ask-other-zinc", tell.Told("pigment", s))
			}
			found, es = append(found, s), append(es, l.Seq)
		case record.No:
		default:
			told = false
		}
	})
	switch {
	case found != nil:
		return recorded(es, r.few(found))
	case without != nil || !told || len(r.p.Layers()) == 0:
		return open(without, r.say("ask-zinc-open"))
	}
	return recorded(nil, r.say("ask-no-zinc"))
}

func (r *reader) pigments() Answer {
	var out []string
	var es []int64
	without := r.eachPigment(func(p record.Pigment, l record.Layer) {
		if s := r.pigment(p, l); !slices.Contains(out, s) {
			out = append(out, s)
		}
		if !slices.Contains(es, l.Seq) {
			es = append(es, l.Seq)
		}
	})
	if out == nil {
		return r.none(without...)
	}
	a := recorded(es, r.few(out))
	if without != nil {
		a.Lines = append(a.Lines, r.say("ask-pigments-open"))
	}
	return a
}

func (r *reader) hazards() Answer {
	var out []string
	var es []int64
	for _, u := range r.p.Used() {
		if m, _ := r.w.Material(u.Material, u.As); m.Hazard != "" {
			out = append(out, r.say("ask-hazard", record.With("product", m.Name), record.With("hazard", m.Hazard)))
		}
	}
	if m := r.metals(); m.Recorded && m.Entries != nil {
		out, es = append([]string{m.Lines[0]}, out...), m.Entries
	}
	return r.all(out, es, r.say("ask-local-rules"))
}

func (r *reader) size() Answer {
	d, s := r.dimensions(), r.sizing()
	return Answer{Lines: []string{r.say("ask-dimensions", tell.Told("size", d.Lines[0])), r.say("ask-size-coat", tell.Told("coat", s.Lines[0]))},
		Entries: append(d.Entries, s.Entries...), Recorded: d.Recorded || s.Recorded}
}

// sizing answers with the coats of size; a sealer or adhesive below the cloth
// does the work of one and is named as what it is.
func (r *reader) sizing() Answer {
	if a := layersOf(isSize)(r); a.Recorded {
		return a
	}
	if a := layersOf(func(l record.Layer) bool { return isSealer(l) || isAdhesive(l) })(r); a.Recorded {
		a.Lines = []string{r.say("ask-no-size-coat", tell.Told("coat", a.Lines[0]))}
		return a
	}
	return r.none()
}

func (r *reader) paint() Answer {
	as := r.applications(isPaint)
	var what, how []string
	for _, a := range as {
		what = append(what, r.say("ask-painted", r.layer(a.Layer), record.With("date", a.At)))
		if more := r.Catalogue().OtherClauses(*a.Paint, "medium", "technique", "pigments", "underdrawing", "oil_content", "mix"); more != "" {
			how = append(how, more)
		}
		if a.Paint.Technique != "" {
			how = append(how, a.Paint.Technique)
		}
	}
	return r.all(what, seqs(as), r.few(how))
}

func (r *reader) underdrawing() Answer {
	var out []string
	var es []int64
	for _, a := range r.applications(isPaint) {
		if a.Paint.Underdrawing != "" {
			out, es = append(out, r.Said(a.Paint.Underdrawing)), append(es, a.Seq)
		}
	}
	return r.all(out, es)
}

func (r *reader) fat() Answer {
	var out []string
	var es []int64
	for i, a := range r.applications(isPaint) {
		if a.Paint.Oil == "" {
			continue
		}
		code := "ask-oil"
		if i == 0 {
			code = "ask-oil-first" // no paint lies below the first
		}
		out = append(out, r.say("ask-of-layer", r.layer(a.Layer), tell.Told("what", r.say(code, record.With("oil", a.Paint.Oil)))))
		es = append(es, a.Seq)
	}
	return r.all(out, es)
}

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
	return recorded([]int64{seq}, r.say("ask-as-cut", record.With("thickness", c.Size.Depth)))
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

func (r *reader) braced() Answer { return events[record.Braced](r, nil) }

func (r *reader) cloth() Answer {
	as := r.applications(isCloth)
	if intended := events[record.Intended](r, nil); intended.Recorded && len(as) == 0 {
		return intended
	}
	if len(as) == 0 && r.p.AsMade() {
		_, seq := r.cut()
		return recorded([]int64{seq}, r.say("ask-no-cloth-laid"))
	}
	var what, of []string
	for _, a := range as {
		what = append(what, r.say("ask-layer", r.layer(a.Layer), record.With("faces", a.faces), record.With("date", a.At)))
		of = append(of, r.Product(a.Cloth.Cloth, a.Cloth.ClothAs, a.Cloth.ClothLot))
	}
	return r.all(what, seqs(as), r.few(of))
}

// ofCloth answers with one property of each cloth.
func (r *reader) ofCloth(say func(*record.ClothLaid, record.Material) string) Answer {
	var out []string
	var es []int64
	for _, a := range r.applications(isCloth) {
		m, _ := r.w.Material(a.Cloth.Cloth, a.Cloth.ClothAs)
		if s := say(a.Cloth, m); s != "" {
			out, es = append(out, s), append(es, a.Seq)
		}
	}
	return r.all(out, es)
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
