package ask

import (
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/tell"
)

// cured says when the last coat was laid and what its product is said to need:
// nobody sees a film cure, so no moment of it is ever recorded.
func (r *reader) cured() Answer {
	as := r.applications(isCoat)
	if len(as) == 0 {
		return r.none()
	}
	last := as[len(as)-1]
	var stated []string
	for _, a := range as {
		for _, p := range a.Coating.Mix {
			m, _ := r.w.Material(p.Material, p.As)
			if !known(m.CureFrom.String()) || !known(m.CureTo.String()) {
				continue
			}
			s := r.AsProduct(r.say("ask-cures", record.With("product", m.Name), record.With("from", m.CureFrom), record.With("to", m.CureTo)), m)
			if !slices.Contains(stated, s) {
				stated = append(stated, s)
			}
		}
	}
	if stated == nil {
		stated = []string{r.say("ask-no-cure")}
	}
	return open([]int64{last.Seq}, r.say("ask-not-as-such", r.layer(last.Layer), record.With("at", last.At)), r.list(stated))
}

// ofCoats answers with one property of each coating.
func (r *reader) ofCoats(say func(application) string) Answer {
	var out []string
	var es []int64
	for _, a := range r.applications(func(l record.Layer) bool { return l.Coating != nil }) {
		if s := say(a); s != "" {
			out, es = append(out, r.say("ask-of-layer", r.layer(a.Layer), tell.Told("what", s))), append(es, a.Seq)
		}
	}
	return r.all(out, es)
}

func (r *reader) thinned() Answer {
	return r.ofCoats(func(a application) string {
		if a.Coating.Thinned.IsZero() {
			return ""
		}
		return r.say("ask-thinned", record.With("share", a.Coating.Thinned), tell.Told("thinner", r.Catalogue().Beside(a.Coating.Thinner, a.Coating.ThinnerIs)))
	})
}

func (r *reader) tools() Answer {
	return r.ofCoats(func(a application) string {
		if a.Coating.Tool == "" && a.Coating.ToolIs == "" {
			return ""
		}
		return r.Catalogue().Beside(a.Coating.Tool, a.Coating.ToolIs)
	})
}

func (r *reader) air() Answer {
	var out []string
	var es []int64
	read := func(what string, t record.Temperature, h record.Percent, seq int64) {
		if t.IsZero() && h.IsZero() {
			return
		}
		both := ""
		if !t.IsZero() && !h.IsZero() {
			both = what
		}
		air := r.say("ask-air-read", record.With("temperature", t), record.With("both", both), record.With("humidity", h))
		out, es = append(out, r.say("ask-of-layer", tell.Told("layer", what), tell.Told("what", air))), append(es, seq)
	}
	for _, a := range r.applications(func(l record.Layer) bool { return l.Coating != nil }) {
		read(r.Layer(a.Layer), a.Coating.Temperature, a.Coating.Humidity, a.Seq)
	}
	for _, e := range record.Each[record.Climate](r.p) {
		read(r.say("ask-air", record.With("date", e.At)), e.Body.Temperature, e.Body.Humidity, e.Seq)
	}
	return r.all(out, es)
}

// steps tells the work on the board itself, step by step.
func (r *reader) steps() Answer {
	var out []string
	var es []int64
	for _, e := range r.p.Events {
		if !e.Body.Kind().Traits().Bench {
			continue
		}
		step := r.Word(e.Body.Kind())
		for _, a := range r.applications(func(l record.Layer) bool { return l.Cloth == nil && l.Seq == e.Seq }) {
			step = r.Layer(a.Layer)
		}
		out, es = append(out, r.say("ask-step", tell.Told("step", step), record.With("date", e.At))), append(es, e.Seq)
	}
	if out == nil {
		return r.none()
	}
	return recorded(es, r.Catalogue().Clauses(out))
}

func (r *reader) lots() Answer {
	var out []string
	var es []int64
	add := func(m record.Key, as []int64, lot record.Key, seq int64) {
		if !known(string(m)) {
			return
		}
		if s := r.Product(m, as, lot); !slices.Contains(out, s) {
			out = append(out, s)
		}
		if !slices.Contains(es, seq) {
			es = append(es, seq)
		}
	}
	c, seq := r.cut()
	add(c.Board, c.BoardAs, c.Lot, seq)
	for _, a := range r.applications(func(record.Layer) bool { return true }) {
		if a.Cloth != nil {
			add(a.Cloth.Cloth, a.Cloth.ClothAs, a.Cloth.ClothLot, a.Seq)
			continue
		}
		for _, p := range a.Coating.Mix {
			add(p.Material, p.As, p.Lot, a.Seq)
		}
	}
	if out == nil {
		return r.none()
	}
	return recorded(es, r.Catalogue().Clauses(out))
}

func (r *reader) products() Answer { return r.lots() }

func (r *reader) binders() Answer {
	var out []string
	var es []int64
	for _, a := range r.applications(func(l record.Layer) bool { return l.Coating != nil }) {
		if b := r.Binder(a.Coating); b != "" && !slices.Contains(out, b) {
			out, es = append(out, b), append(es, a.Seq)
		}
	}
	return r.all(out, es, r.say("ask-sensitive"))
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

// meant reports a coating of those that the question names, by what it is or by
// its face; all, where it names none.
func (r *reader) meant(l record.Layer) bool {
	what, where := string(l.Purpose), string(l.Face)
	switch {
	case isVarnish(l):
		what = "varnish"
	case isPaint(l):
		what = "paint"
	case what == string(record.Adhesive):
		what = "glue"
	}
	return l.Coating != nil && (r.asks(what) || !r.asks("sealer", "glue", "size", "ground", "varnish", "paint")) &&
		(r.asks(strings.TrimSuffix(where, "s")) || !r.asks("back", "front", "edge"))
}

// amounts tells how much of each coating that is meant went on.
func (r *reader) amounts() Answer {
	var out []string
	var es []int64
	var without []string
	for _, g := range alike(r.standing(r.meant), r.words) {
		a := g[0]
		if s := r.amount(a); s != "" {
			out = append(out, r.say("ask-amount", r.layer(a.Layer), record.With("faces", a.faces), tell.Told("amount", s), record.With("n", len(g))))
			es = append(es, seqs(g)...)
		} else {
			without = append(without, r.Layer(a.Layer))
		}
	}
	if out == nil {
		return r.none()
	}
	a := recorded(es, r.Catalogue().Clauses(out))
	if without != nil {
		a.Lines = append(a.Lines, r.say("ask-amount-open", tell.Told("layers", r.List(slices.Compact(without)))))
	}
	return a
}

// data is all that is stated of the products used, and of their lots.
func (r *reader) data() Answer {
	var out []string
	for _, u := range r.p.Used() {
		m, ok := r.w.Material(u.Material, u.As)
		if !ok {
			continue
		}
		parts := []string{r.stated(m.Name, r.Catalogue().OtherClauses(m, "key", "name"))}
		for _, k := range u.Lots {
			l, _ := r.w.Lot(k)
			parts = append(parts, r.stated(string(k), r.Catalogue().OtherClauses(l, "key", "material")))
		}
		out = append(out, r.Catalogue().Clauses(parts))
	}
	if out == nil {
		return r.none()
	}
	return recorded(r.lots().Entries, out...)
}

func (r *reader) stated(name, what string) string {
	if what == "" {
		return name
	}
	return r.say("ask-of-layer", tell.Told("layer", name), tell.Told("what", what))
}
