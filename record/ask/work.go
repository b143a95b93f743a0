package ask

import (
	"slices"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/tell"
)

// cured says of which coatings that are meant the time stated for them has passed,
// when the last was laid, what the products are said to need, and when the paint may
// be varnished: nobody sees a film cure, so no moment of it is ever recorded.
func (r *reader) cured() Answer {
	as := r.standing(r.meant)
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
			stated = once(stated, r.AsProduct(r.say("ask-cures", record.With("product", m.Name), record.With("from", m.CureFrom), record.With("to", m.CureTo)), m))
		}
	}
	if stated == nil {
		stated = []string{r.say("ask-no-cure")}
	}
	a := open([]int64{last.Seq}, r.curing(), r.say("ask-not-as-such", r.layer(last.Layer), record.With("at", last.At)), r.list(stated))
	for _, s := range check.Next(r.w, r.p, r.now) {
		if s.Task == check.TaskVarnish {
			a.Lines = append(a.Lines, r.Catalogue().DueWhen(s))
		}
	}
	return a
}

// curing tells of each coating that is meant whether the time to cure has passed.
func (r *reader) curing() string {
	var said, passed, open, why []string
	var since time.Time
	for _, c := range check.Cures(r.w, r.p, r.now) {
		switch what := r.Layer(c.Layer); {
		case !r.meant(c.Layer):
		case c.Why.Code != "":
			open = once(open, r.say("ask-laid", r.layer(c.Layer), record.With("date", c.Layer.At)))
			if c.Why.Code != "material-open" { // which says no more than that no time is stated
				why = once(why, tell.Say(r.Catalogue(), c.Why))
			}
		case c.Surely.After(r.now):
			said = once(said, r.say("ask-cure-waits", r.layer(c.Layer), record.With("until", record.Moment(c.Surely))))
		default:
			passed = once(passed, what)
			if c.Surely.After(since) {
				since = c.Surely
			}
		}
	}
	if open != nil {
		said = append(said, r.say("ask-cure-open", tell.Told("layers", r.List(open)), tell.Told("why", r.List(why))))
	}
	if passed != nil {
		said = append(said, r.say("ask-cure-passed", tell.Told("layers", r.List(passed)), record.With("since", record.Moment(since))))
	}
	return r.list(said)
}

// each answers with one property of each layer of a kind.
func (r *reader) each(which func(record.Layer) bool, say func(application) string, more ...string) Answer {
	var f found
	for _, a := range r.applications(which) {
		f.add(say(a), a.Seq)
	}
	return r.all(f, more...)
}

func hasCoating(l record.Layer) bool { return l.Coating != nil }

// ofCoats answers with one property of each coating, and which it is.
func (r *reader) ofCoats(say func(application) string) Answer {
	return r.each(hasCoating, func(a application) string {
		if s := say(a); s != "" {
			return r.say("ask-of-layer", r.layer(a.Layer), tell.Told("what", s))
		}
		return ""
	})
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
	var f found
	read := func(what string, t record.Temperature, h record.Percent, seq int64) {
		if t.IsZero() && h.IsZero() {
			return
		}
		both := ""
		if !t.IsZero() && !h.IsZero() {
			both = what
		}
		air := r.say("ask-air-read", record.With("temperature", t), record.With("both", both), record.With("humidity", h))
		f.add(r.say("ask-of-layer", tell.Told("layer", what), tell.Told("what", air)), seq)
	}
	for _, a := range r.applications(hasCoating) {
		read(r.Layer(a.Layer), a.Coating.Temperature, a.Coating.Humidity, a.Seq)
	}
	for _, e := range record.Each[record.Climate](r.p) {
		read(r.say("ask-air", record.With("date", e.At)), e.Body.Temperature, e.Body.Humidity, e.Seq)
	}
	return r.all(f)
}

// steps tells the work on the board itself, step by step.
func (r *reader) steps() Answer {
	var f found
	for _, e := range r.p.Events {
		if !e.Body.Kind().Traits().Bench {
			continue
		}
		step := r.Word(e.Body.Kind())
		for _, a := range r.applications(func(l record.Layer) bool { return l.Cloth == nil && l.Seq == e.Seq }) {
			step = r.Layer(a.Layer)
		}
		f.add(r.say("ask-step", tell.Told("step", step), record.With("date", e.At)), e.Seq)
	}
	return r.all(f)
}

func (r *reader) lots() Answer {
	var f found
	add := func(m record.Key, as []int64, lot record.Key, seq int64) {
		if known(string(m)) {
			f.add(r.Product(m, as, lot), seq)
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
	return r.all(f)
}

func (r *reader) binders() Answer {
	return r.each(hasCoating, func(a application) string { return r.Binder(a.Coating) }, r.say("ask-sensitive"))
}

func (r *reader) underdrawing() Answer {
	return r.each(isPaint, func(a application) string {
		if a.Paint.Underdrawing == "" {
			return ""
		}
		return r.Said(a.Paint.Underdrawing)
	})
}

func (r *reader) fat() Answer {
	code := "ask-oil-first" // no paint lies below the first
	return r.each(isPaint, func(a application) (s string) {
		if a.Paint.Oil != "" {
			s = r.say("ask-of-layer", r.layer(a.Layer), tell.Told("what", r.say(code, record.With("oil", a.Paint.Oil))))
		}
		code = "ask-oil"
		return s
	})
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
	var f found
	var without []string
	for _, g := range alike(r.standing(r.meant), r.words) {
		a := g[0]
		if s := r.amount(a); s != "" {
			f.add(r.say("ask-amount", r.layer(a.Layer), record.With("faces", a.faces), tell.Told("amount", s), record.With("n", len(g))), seqs(g)...)
		} else {
			without = append(without, r.Layer(a.Layer))
		}
	}
	a := r.all(f)
	if a.Recorded && without != nil {
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
