package ask

import (
	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/tell"
)

// certificate says which certificate stands, as far as this record goes.
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
	return recorded(es, r.say("ask-in-force", record.With("date", c.At), record.With("n", len(all))), r.say("ask-no-proof"))
}

// changes are what was put right in the record, and what was done to the
// panel after the work was done.
func (r *reader) changes() Answer {
	a := Answer{Recorded: true}
	lines := r.Corrections()
	for _, c := range r.p.Corrections {
		a.Entries = append(a.Entries, c.Seq)
	}
	if lines == nil {
		lines = []string{r.say("ask-no-corrections")}
	}
	a.Lines = append(a.Lines, lines...)
	for _, c := range r.p.Corrections {
		a = a.andRecorded(r.standsNow(c.Of))
	}
	return a.andRecorded(r.happened(func(e record.Event) bool {
		switch e.Body.(type) {
		case record.Treatment, record.Removed, record.Resized, record.UsedAgain, record.Revoked, record.Discarded:
			return true
		}
		return false
	}))
}

// written says when the record was written down.
func (r *reader) written() Answer {
	var first, last record.When
	for _, e := range r.p.Events {
		if first.IsZero() || e.Written.Before(first) {
			first = e.Written
		}
		if last.IsZero() || last.Before(e.Written) {
			last = e.Written
		}
	}
	code := "ask-written-afterwards"
	if r.p.AsMade() {
		code = "ask-written-as-made"
	}
	_, seq := r.cut()
	return recorded([]int64{seq}, r.say("ask-written", record.With("first", first), tell.Told("span", r.Catalogue().Span(first, last))), r.say(code))
}

// rules count what the rules of thumb say; nothing is called archival.
func (r *reader) rules() Answer {
	short, open, holds := []string{}, 0, 0
	var es []int64
	for _, f := range check.Shown(r.w, r.p, r.now, func(check.Finding) bool { return false }) {
		switch f.Outcome {
		case check.FallsShort:
			short = append(short, string(r.Catalogue().Rule(f.Rule).Title))
			es = once(es, f.Entries...)
		case check.NotRecorded:
			open++
		case check.Holds:
			holds++
		}
	}
	a := recorded(es, r.say("ask-rules", record.With("holds", holds), record.With("short", len(short)), record.With("open", open)))
	if len(short) > 0 {
		a.Lines = append(a.Lines, r.say("ask-rules-short", tell.Told("rules", r.list(short))))
	}
	a.Lines = append(a.Lines, r.say("ask-rules-show"))
	return a
}

func (r *reader) gaps() Answer {
	gaps := r.GapsTogether()
	if len(gaps) == 0 {
		return recorded(nil, r.say("ask-no-gaps"))
	}
	return recorded(nil, append([]string{r.say("ask-gaps")}, gaps...)...)
}

// standsNow is a corrected entry as it is to be read.
func (r *reader) standsNow(seq int64) Answer {
	var a Answer
	for _, x := range r.applications(func(l record.Layer) bool { return l.Seq == seq }) {
		a = a.and(recorded([]int64{seq}, r.say("ask-corrected", tell.Told("what", r.words(x)), record.With("date", x.At))))
	}
	if a.Recorded {
		return a
	}
	for _, e := range r.p.Events {
		if e.Seq == seq {
			return recorded([]int64{seq}, r.say("ask-corrected", tell.Told("what", r.Catalogue().WholeEvent(e)), record.With("date", e.At)))
		}
	}
	return a
}
