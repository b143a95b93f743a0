package ask

import (
	"backleaf/record"
	"backleaf/record/tell"
	"backleaf/record/trade"
	"slices"
)

// metals answers from the same table as label and dossier: what is known to
// harm, what may, and which layers leave it open. It denies nothing that the
// record does not settle.
func (r *reader) metals() Answer {
	d := trade.DangersOf(trade.Layers(r.w, r.p))
	var sure, may, texts []string
	var es []int64
	for _, x := range d.Found {
		name := tell.Told("pigment", r.pigment(x.Pigment, r.coatOf(x.Seq)))
		line := r.say("ask-holds", name, record.With("metal", record.Code(x.Risk)))
		switch {
		case x.Risk == trade.Stated:
			line = r.say("ask-stated-harmful", record.With("product", x.Product))
		case x.Risk == trade.HazardText:
			texts = once(texts, r.say("ask-hazard", record.With("product", x.Product), record.With("hazard", x.Text)))
			continue
		case x.Pigment == record.Pigment{}:
			continue
		case !x.Sure:
			may = once(may, r.say("ask-may-hold", name, record.With("metal", record.Code(x.Risk))))
			continue
		}
		sure, es = once(sure, line), once(es, x.Seq)
	}
	switch {
	case sure != nil:
		a := recorded(es, append([]string{r.list(append(sure, may...)), r.say("ask-do-not-sand")}, texts...)...)
		if d.Open != nil {
			a.Lines = append(a.Lines, r.say("ask-rest-open"))
		}
		return a
	case d.Harmful == record.No:
		return recorded(nil, append([]string{r.say("ask-none-harmful"), r.say("ask-only-analysis")}, texts...)...)
	case len(r.p.Layers()) == 0:
		return r.none()
	}
	var why []string
	for _, a := range r.standing(func(l record.Layer) bool { return l.Cloth == nil && slices.Contains(d.Open, l.Seq) }) {
		why = once(why, r.unsettled(a.Layer))
	}
	return open(d.Open, append([]string{r.say("ask-not-ruled-out", tell.Told("layers", r.list(why))), r.list(may)}, texts...)...)
}

// unsettled names a layer and what of it leaves open whether it harms: colours
// without their Colour Index names, or products that do not say.
func (r *reader) unsettled(l record.Layer) string {
	var colours, products []string
	m := trade.Of(r.w, l)
	for _, p := range m.Pigments() {
		if !trade.Told(p) || trade.HarmfulDust(p) == record.Unknown {
			colours = once(colours, p.Name)
		}
	}
	for _, x := range m.Materials {
		if x.Toxic == "" || x.Toxic == record.Unknown {
			products = once(products, x.Name)
		}
	}
	return r.say("ask-unsettled", r.layer(l), tell.Told("colours", r.List(colours)), tell.Told("products", r.List(products)))
}

func (r *reader) hazards() Answer {
	a := r.metals()
	if m := r.material(); m.Hazard != "" {
		a = a.and(recorded(nil, r.say("ask-hazard", record.With("product", m.Name), record.With("hazard", m.Hazard))))
	}
	a.Lines = append(a.Lines, r.say("ask-local-rules"))
	return a
}

// sanded tells what was sanded; and, since it may be asked by one who wants to
// sand now, what harms.
func (r *reader) sanded() Answer {
	a := events[record.Sanded](r)
	if !a.Recorded {
		a.Lines = []string{r.say("ask-no-sanding")}
	}
	m := r.metals()
	a.Lines, a.Entries = append(a.Lines, m.Lines...), once(a.Entries, m.Entries...)
	return a
}

func (r *reader) zinc() Answer {
	var f found
	told := true
	without := r.eachPigment(func(p record.Pigment, l record.Layer) {
		switch trade.HoldsZinc(p) {
		case record.Yes:
			s := r.pigment(p, l)
			if trade.HoldsZinc(p, trade.ZincOxide) == record.No {
				s = r.say("ask-other-zinc", tell.Told("pigment", s))
			}
			f.add(s, l.Seq)
		case record.No:
		default:
			told = false
		}
	})
	switch {
	case f.lines != nil:
		return r.all(f)
	case without != nil || !told || len(r.p.Layers()) == 0:
		return open(without, r.say("ask-zinc-open"))
	}
	return recorded(nil, r.say("ask-no-zinc"))
}

// eachPigment calls f for every pigment of paint and of the products used in
// what is there today.
func (r *reader) eachPigment(f func(p record.Pigment, l record.Layer)) (without []int64) {
	for _, a := range r.standing(func(l record.Layer) bool { return l.Cloth == nil }) {
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

func (r *reader) pigments() Answer {
	return r.pigmentsOf(func(record.Layer) bool { return true })
}

func (r *reader) pigmentsOf(which func(record.Layer) bool) Answer {
	var f found
	without := r.eachPigment(func(p record.Pigment, l record.Layer) {
		if which(l) {
			f.add(r.pigment(p, l), l.Seq)
		}
	})
	if f.lines == nil {
		return r.none(without...)
	}
	a := r.all(f)
	if without != nil {
		a.Lines = append(a.Lines, r.say("ask-pigments-open"))
	}
	return a
}
