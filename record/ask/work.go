package ask

import (
	"slices"

	"backleaf/record"
	"backleaf/record/tell"
)

// events answers with all entries of one kind, or those of them that are asked
// for.
func events[B record.Body](r *reader, asked func(B) bool) Answer {
	var out []string
	var es []int64
	for _, e := range record.Each[B](r.p) {
		if asked != nil && !asked(e.Body) {
			continue
		}
		what := r.Catalogue().WholeEvent(record.Event{Seq: e.Seq, At: e.At, Written: e.Written, Body: e.Body, Panels: e.Panels})
		out = append(out, r.say("ask-at", tell.Told("what", what), record.With("date", e.At)))
		es = append(es, e.Seq)
	}
	return r.all(out, es)
}

func (r *reader) trimmed() Answer { return events[record.Trimmed](r, nil) }
func (r *reader) sanded() Answer  { return events[record.Sanded](r, nil) }
func (r *reader) warm() Answer    { return events[record.WarmAir](r, nil) }

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
	return open([]int64{last.Seq}, r.say("ask-not-as-such", r.layer(last.Layer), record.With("at", last.At)), r.few(stated))
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

func (r *reader) amounts() Answer {
	return r.ofCoats(func(a application) string {
		film := ""
		if !a.Coating.WetFilm.IsZero() {
			film = r.say("ask-wet-film", record.With("film", a.Coating.WetFilm))
		}
		if a.Coating.WetTotal.IsZero() && a.Coating.WetEach.IsZero() {
			return film
		}
		panels := 1
		for _, e := range r.p.Events {
			if e.Seq == a.Seq {
				panels = len(e.Panels)
			}
		}
		amount := r.Amount(a.Coating, panels)
		if film != "" {
			amount = r.Catalogue().Clauses([]string{amount, film})
		}
		return amount
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

func (r *reader) when() Answer {
	d := r.p.Description()
	var es []int64
	for _, e := range record.Each[record.Described](r.p) {
		if !e.Body.Made.IsZero() {
			es = append(es, e.Seq)
		}
	}
	a := recorded(es, r.DateOfWork(), r.say("ask-worked-on", tell.Told("dates", r.MadeBetween())))
	a.Recorded = d.Made.Known()
	return a
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

func (r *reader) bow() Answer {
	return events(r, func(i record.Inspection) bool { return !i.Bow.IsZero() })
}

func (r *reader) sound() Answer {
	return events(r, func(i record.Inspection) bool { return i.Edges != "" || i.Adhesion != "" || i.Remarks != "" })
}

func (r *reader) buildUp() Answer {
	as := r.applications(func(record.Layer) bool { return true })
	_, seq := r.cut()
	return recorded(append([]int64{seq}, seqs(as)...), r.BuildUpSentence())
}
