package ask

import (
	"reflect"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/tell"
	"backleaf/record/trade"
)

// described answers with a field of the description and the entries that set it.
func (r *reader) described(field func(record.Described) string) Answer {
	var es []int64
	for _, e := range record.Each[record.Described](r.p) {
		if field(e.Body) != "" {
			es = append(es, e.Seq)
		}
	}
	return r.said(field(r.p.Description()), es...)
}

func (r *reader) title() Answer {
	return r.described(func(d record.Described) string { return d.Title })
}
func (r *reader) subject() Answer {
	return r.described(func(d record.Described) string { return d.Subject })
}

// features are those of the work and those at one place of the board.
func (r *reader) features() Answer {
	return r.first(r.described(func(d record.Described) string { return d.Features }), events[record.Feature](r, nil))
}

// first joins answers on one topic: what is recorded of them.
func (r *reader) first(as ...Answer) Answer {
	var out Answer
	for _, a := range as {
		if a.Recorded {
			out = Answer{Lines: append(out.Lines, r.Catalogue().Clauses(a.Lines)), Entries: append(out.Entries, a.Entries...), Recorded: true}
		}
	}
	if !out.Recorded {
		return as[0]
	}
	return out
}

func (r *reader) edition() Answer {
	return r.described(func(d record.Described) string { return d.Edition })
}
func (r *reader) summary() Answer {
	return r.described(func(d record.Described) string { return d.Summary })
}

func (r *reader) framed() Answer {
	a := r.described(func(d record.Described) string { return string(d.Framed) })
	if f := r.p.Description().Framed; a.Recorded && f != record.Unknown {
		a.Lines = []string{r.say("ask-framed", record.With("framed", f))}
	}
	return a
}

// whole tells what else the maker wrote of the work itself.
func (r *reader) whole() Answer { return events[record.Described](r, nil) }

func (r *reader) removed() Answer   { return events[record.Removed](r, nil) }
func (r *reader) usedAgain() Answer { return events[record.UsedAgain](r, nil) }
func (r *reader) page() Answer      { return events[record.Published](r, nil) }
func (r *reader) cutting() Answer   { return events[record.Cut](r, nil) }
func (r *reader) leftBare() Answer  { return events[record.LeftBare](r, nil) }
func (r *reader) intended() Answer  { return events[record.Intended](r, nil) }
func (r *reader) laying() Answer    { return events[record.ClothLaid](r, nil) }
func (r *reader) certificates() Answer {
	return r.first(events[record.Issued](r, nil), events[record.Revoked](r, nil))
}

func (r *reader) signed() Answer {
	s := r.described(func(d record.Described) string { return d.Signed })
	i := r.described(func(d record.Described) string { return d.Inscription })
	if !s.Recorded && !i.Recorded {
		return r.none()
	}
	return recorded(append(s.Entries, i.Entries...), r.say("ask-signed", tell.Told("signed", s.Lines[0])), r.say("ask-inscription", tell.Told("inscription", i.Lines[0])))
}

func (r *reader) dimensions() Answer {
	_, seq := r.cut()
	a := recorded([]int64{seq}, r.Dimensions())
	a.Recorded = known(r.p.Size().Height.String())
	if changed := events[record.Resized](r, nil); changed.Recorded {
		return r.first(a, changed)
	}
	return a
}

func (r *reader) maker() Answer {
	if r.Maker() == "" {
		return r.none()
	}
	contact := ""
	if c := r.w.Studio.Contact; c != "" {
		contact = r.say("ask-contact", record.With("contact", c))
	}
	return recorded(nil, r.say("made-by", record.With("maker", r.Maker()), record.With("place", r.MakerPlace())), contact)
}

func (r *reader) place() Answer {
	a := r.said(r.MakerPlace())
	if a.Recorded {
		a.Lines[0] = r.say("ask-place", tell.Told("place", a.Lines[0]))
	}
	return a
}

func (r *reader) number() Answer {
	_, seq := r.cut()
	return recorded([]int64{seq}, r.say("ask-number", record.With("number", r.p.Number), record.With("own", r.p.Description().Owner)))
}

func (r *reader) batch() Answer {
	c, seq := r.cut()
	cut, _ := record.Latest[record.Cut](r.p)
	return recorded([]int64{seq}, r.say("ask-batch", record.With("batch", c.Batch), record.With("panels", len(cut.Panels))))
}

func (r *reader) private() Answer { return open(nil, r.say("ask-private"), r.say("ask-where-instead")) }

func (r *reader) where() Answer {
	if gone := events[record.Discarded](r, nil); gone.Recorded {
		return gone
	}
	h, ok := record.Latest[record.HandedOver](r.p)
	if !ok {
		return open(nil, r.say("ask-never-left"))
	}
	return recorded([]int64{h.Seq}, r.say("ask-left", record.With("how", h.Body.How), record.With("date", h.At)), h.Body.Note)
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

// data tells what is stated for each product that was used, and of its lots.
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
	return recorded(r.lots().Entries, r.Catalogue().Clauses(out))
}

func (r *reader) stated(name, what string) string {
	if what == "" {
		return name
	}
	return r.say("ask-of-layer", tell.Told("layer", name), tell.Told("what", what))
}

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

// care is what an owner can keep, and beside it what a museum holds to.
func (r *reader) care() Answer {
	return recorded(nil, r.CareLine(), strings.Join(r.Care(trade.Museum), " "))
}

func (r *reader) condition() Answer {
	if a := events[record.Condition](r, nil); a.Recorded {
		return a
	}
	return r.sound()
}

func (r *reader) treatment() Answer { return events[record.Treatment](r, nil) }

func (r *reader) certificate() Answer {
	all := record.Each[record.Issued](r.p)
	if len(all) == 0 {
		return open(nil, r.say("ask-no-certificate"))
	}
	var es []int64
	for _, c := range all {
		es = append(es, c.Seq)
	}
	c, ok := r.p.Certificate()
	if !ok {
		return recorded(es, r.say("ask-taken-back"))
	}
	return recorded(es, r.say("ask-in-force", record.With("date", c.At)), r.say("ask-no-proof"))
}

func (r *reader) label() Answer       { return events[record.LabelPrinted](r, nil) }
func (r *reader) photographs() Answer { return events[record.Photograph](r, nil) }

// notes are those on the panel, and what was noted beside each act.
func (r *reader) notes() Answer {
	var out []string
	var es []int64
	for _, e := range r.p.Events {
		k := e.Body.Kind()
		record.Walk(e.Body, func(place string, f record.Field, v reflect.Value) {
			if k == "note" || place == "note" {
				out, es = append(out, r.say("ask-of-layer", tell.Told("layer", r.Word(k)), tell.Told("what", v.String()))), append(es, e.Seq)
			}
		})
	}
	if out == nil {
		return r.none()
	}
	return recorded(es, r.Catalogue().Clauses(out))
}

func (r *reader) corrections() Answer {
	lines := r.Corrections()
	if len(lines) == 0 {
		return recorded(nil, r.say("ask-no-corrections"))
	}
	var es []int64
	for _, c := range r.p.Corrections {
		es = append(es, c.Seq)
	}
	return recorded(es, r.few(lines))
}

func (r *reader) gaps() Answer {
	gaps := r.Gaps()
	if len(gaps) == 0 {
		return recorded(nil, r.say("ask-no-gaps"))
	}
	return recorded(nil, r.Catalogue().Clauses(gaps))
}
