package tell

import (
	"strconv"
	"strings"

	"backleaf/record"
)

// Entry names an entry of the journal: "E12".
func (t *Teller) Entry(seq int64) string {
	return t.c.Lines.Entry.With("n", strconv.FormatInt(seq, 10))
}

// Gaps says what a reader would miss, in the order in which a conservator asks.
func (t *Teller) Gaps() []string {
	var out []string
	for _, g := range t.w.Gaps(t.p) {
		line := t.c.Lines.Gap
		if g.Unknown {
			line = t.c.Lines.GapUnknown
		}
		out = append(out, t.c.Capital(line.With("topic", look(t.c.Lines.GapTopics, g.Topic), "what", t.gapThing(g.What))))
	}
	return out
}

func (t *Teller) gapThing(what string) string {
	if m, ok := t.c.Lines.GapThings[what]; ok {
		return string(m)
	}
	if key, ok := strings.CutPrefix(what, "lot of "); ok {
		name := key
		if m, found := t.w.Material(record.Key(key)); found {
			name = m.Name
		}
		return t.c.Lines.GapLot.With("material", name)
	}
	return what
}

func look(m map[string]Message, key string) string {
	if w, ok := m[key]; ok {
		return string(w)
	}
	return key
}

// Corrections says what was amended or withdrawn, when and why, in the order
// in which it was written.
func (t *Teller) Corrections() []string {
	var out []string
	for _, c := range t.p.Corrections {
		line, changes := t.c.Lines.Amended, []string{}
		switch {
		case c.Unfit != "":
			line = t.c.Lines.Unfit
		case c.Withdrawal():
			line = t.c.Lines.Withdrawn
		}
		kind := t.kindOf(c.Of)
		for _, ch := range c.Changes {
			changes = append(changes, t.c.Lines.Change.With("field", t.c.FieldName(kind, ch.Field), "was", t.field(kind, ch.Field, ch.Was), "now", t.field(kind, ch.Field, ch.Now)))
		}
		out = append(out, line.With("entry", t.Entry(c.Seq), "of", t.Entry(c.Of), "date", t.Day(c.Written),
			"changes", t.c.Clauses(changes), "because", c.Because))
	}
	return out
}

// kindOf is the kind of an entry about the panel; "" if it was withdrawn.
func (t *Teller) kindOf(seq int64) record.Kind {
	for _, e := range t.p.Events {
		if e.Seq == seq {
			return e.Body.Kind()
		}
	}
	return ""
}
