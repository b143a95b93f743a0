package ask

import (
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/tell"
	"backleaf/record/trade"
)

// described answers with a field of the description.
func described(field func(record.Described) string) func(*reader) Answer {
	return func(r *reader) Answer { return r.described(field) }
}

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

// features are those of the work and those at one place of the board.
func (r *reader) features() Answer {
	a := r.described(func(d record.Described) string { return d.Features })
	f := events[record.Feature](r)
	if !a.Recorded {
		return f
	}
	return a.andRecorded(f)
}

func (r *reader) edition() Answer {
	a := r.described(func(d record.Described) string { return d.Edition })
	if r.p.Description().Edition == "" {
		a.Lines = []string{r.say("ask-no-edition")}
	}
	return a
}

func (r *reader) certificates() Answer {
	return r.happened(func(e record.Event) bool {
		switch e.Body.(type) {
		case record.Issued, record.Revoked:
			return true
		}
		return false
	})
}

func (r *reader) signed() Answer {
	s := r.described(func(d record.Described) string { return d.Signed })
	i := r.described(func(d record.Described) string { return d.Inscription })
	if !s.Recorded && !i.Recorded {
		return r.none()
	}
	return recorded(append(s.Entries, i.Entries...), r.say("ask-signed", tell.Told("signed", s.Lines[0])), r.say("ask-inscription", tell.Told("inscription", i.Lines[0])))
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

// care is what an owner can keep, and beside it what a museum holds to.
func (r *reader) care() Answer {
	return recorded(nil, r.CareLine(), strings.Join(r.Care(trade.Museum), " "))
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

// amount is how much of a coating one panel got, and how thick it lay wet.
func (r *reader) amount(a application) string {
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
	return r.Catalogue().Clauses(slices.DeleteFunc([]string{r.Amount(a.Coating, panels), film}, func(s string) bool { return s == "" }))
}

// maker says who made the panel and who painted on it, as far as that is on
// record: of a panel that may have been bought nobody knows who made it.
func (r *reader) maker() Answer {
	var a Answer
	c, seq := r.cut()
	switch {
	case c.Bought == record.Yes:
		a = recorded([]int64{seq}, r.say("ask-bought"))
	case c.Bought == record.Unknown:
		a = open([]int64{seq}, r.say("ask-maker-open"))
	case r.Maker() == "":
		a = r.none()
	default:
		a = recorded(nil, r.say("ask-made-by", record.With("maker", r.Maker()), record.With("place", r.MakerPlace())))
	}
	if painter := r.Painter(); painter != "" {
		a = a.and(recorded(nil, r.say("ask-painted-by", record.With("painter", painter))))
	}
	if c := r.w.Studio.Contact; c != "" {
		a = a.and(recorded(nil, r.say("ask-contact", record.With("contact", c))))
	}
	return a
}

func (r *reader) private() Answer {
	said := "ask-private"
	if !slices.ContainsFunc(record.Each[record.HandedOver](r.p), func(h record.Done[record.HandedOver]) bool { return h.Body.How == "sale" }) {
		said = "ask-no-sale"
	}
	a := open(nil, r.say(said, record.With("panel", r.p.Number)))
	if r.asks("cost", "expensive") {
		a.Lines = append(a.Lines, r.say("ask-materials-cost", record.With("panel", r.p.Number)))
	}
	return a.and(r.where())
}

// where says where the panel is, and how it came there.
func (r *reader) where() Answer {
	var a Answer
	if d, gone := r.p.Discarded(); gone {
		a = recorded([]int64{d.Seq}, r.say("ask-discarded", record.With("date", d.At), record.With("because", d.Body.Because)))
	}
	hs := record.Each[record.HandedOver](r.p)
	for _, h := range slices.Backward(hs) {
		a = a.and(recorded([]int64{h.Seq}, r.say("ask-left", record.With("how", h.Body.How), record.With("date", h.At), record.With("note", h.Body.Note))))
	}
	if !a.Recorded {
		return open(nil, r.say("ask-never-left"))
	}
	if hs == nil {
		a.Lines = append(a.Lines, r.say("ask-never-sold"))
	}
	if _, gone := r.p.Discarded(); !gone && r.asks("discarded", "thrown", "scrapped", "destroyed") {
		a.Lines = append(a.Lines, r.say("ask-never-discarded"))
	}
	return a
}

// first is what is said before any answer.
func (r *reader) first() string {
	_, gone := r.p.Discarded()
	if h, away := r.p.Away(); gone || away && (h.Body.How == "theft" || h.Body.How == "loss") {
		return r.where().Lines[0]
	}
	return ""
}

func (r *reader) finished() Answer {
	a := r.when()
	if !r.Painted() {
		a = open(nil, r.say("ask-not-painted", record.With("stage", r.p.Stage())))
	}
	if _, gone := r.p.Discarded(); gone || !r.Painted() {
		return a.andRecorded(r.where())
	}
	return a
}

func (r *reader) framed() Answer {
	a := r.happened(func(e record.Event) bool {
		d, ok := e.Body.(record.Described)
		return ok && d.Framed != ""
	})
	switch r.p.Description().Framed {
	case record.Yes:
		a.Lines = append([]string{r.say("ask-framed")}, a.Lines...)
	case record.No:
		a.Lines = append([]string{r.say("ask-not-framed")}, a.Lines...)
	}
	return a.andRecorded(r.remarks("frame", "framed"))
}

func (r *reader) weight() Answer { return r.remarks("weight", "weigh") }

// bow answers with what was measured, on the bare board and later.
func (r *reader) bow() Answer {
	a := r.happened(func(e record.Event) bool {
		i, ok := e.Body.(record.Inspection)
		return ok && (!i.Bow.IsZero() || i.Toward != "")
	})
	if c, seq := r.cut(); !c.Bow.IsZero() {
		b := recorded([]int64{seq}, r.say("ask-bow-before", record.With("bow", c.Bow), record.With("span", c.BowSpan)))
		if !a.Recorded {
			return b
		}
		return b.and(a)
	}
	return a
}

func (r *reader) sound() Answer {
	return r.happened(func(e record.Event) bool {
		i, ok := e.Body.(record.Inspection)
		return ok && (i.Edges != "" || i.Adhesion != "" || i.Remarks != "")
	})
}

// condition is all that was seen of the panel, the last first, with what was
// done about it.
func (r *reader) condition() Answer {
	var a Answer
	if d, gone := r.p.Discarded(); gone {
		a = recorded([]int64{d.Seq}, r.say("ask-discarded", record.With("date", d.At), record.With("because", d.Body.Because)))
	}
	seen := r.happened(func(e record.Event) bool {
		switch e.Body.(type) {
		case record.Inspection, record.Condition, record.Treatment, record.Feature:
			return true
		}
		return false
	})
	if !seen.Recorded && a.Recorded {
		return a
	}
	return a.and(seen)
}

func (r *reader) treatment() Answer {
	return r.happened(func(e record.Event) bool {
		switch e.Body.(type) {
		case record.Treatment, record.Removed, record.Resized:
			return true
		}
		return false
	})
}

// sisters says how many panels were worked together, and what went wrong with
// the others.
func (r *reader) sisters() Answer {
	_, seq := r.cut()
	all := r.w.Batch(r.p.Batch)
	a := recorded([]int64{seq}, r.say("ask-batch", record.With("batch", r.p.Batch), record.With("panels", len(all))))
	if len(all) < 2 {
		a.Lines = append(a.Lines, r.say("ask-no-sister"))
		return a
	}
	well := true
	for _, p := range all {
		if p.Number == r.p.Number {
			continue
		}
		for _, e := range p.Events {
			if !isTrouble(e.Body) {
				continue
			}
			well = false
			a = a.and(recorded([]int64{e.Seq}, r.say("ask-sister", record.With("number", p.Number), tell.Told("own", p.Description().Owner), tell.Told("what", r.event(e)))))
		}
	}
	if well {
		a.Lines = append(a.Lines, r.say("ask-sisters-well"))
	}
	return a
}

// isTrouble reports what may be of concern for the panels made together.
func isTrouble(b record.Body) bool {
	switch x := b.(type) {
	case record.Discarded, record.Treatment, record.Removed, record.Condition:
		return true
	case record.Inspection:
		return x.Edges != "" && x.Edges != "sound" || x.Adhesion != "" && x.Adhesion != "sound" || x.Remarks != ""
	}
	return false
}
