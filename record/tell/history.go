package tell

import (
	"slices"

	"strconv"

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
		out = append(out, t.c.Capital(Say(t.c, g.Say())))
	}
	return out
}

// GapsTogether says what [Teller.Gaps] says in fewer lines: topic by topic,
// each thing once, for a page that has no room for a list.
func (t *Teller) GapsTogether() []string {
	type line struct {
		code  string
		topic record.Topic
	}
	var lines []line
	things := map[line][]string{}
	for _, g := range t.w.Gaps(t.p) {
		l := line{g.Say().Code, g.Topic}
		if things[l] == nil {
			lines = append(lines, l)
		}
		if thing := Say(t.c, g.Said); !slices.Contains(things[l], thing) {
			things[l] = append(things[l], thing)
		}
	}
	var out []string
	for _, l := range lines {
		out = append(out, t.c.Capital(Say(t.c, record.Say(l.code, record.With("topic", l.topic), Told("what", t.List(things[l]))))))
	}
	return out
}

// Corrections says what was amended or withdrawn, when and why, in the order
// in which it was written.
func (t *Teller) Corrections() []string {
	var out []string
	for _, c := range t.p.Corrections {
		line, changes := t.c.Lines.Amended, []string{}
		switch {
		case c.Amends && len(c.Changes) == 0:
			line = t.c.Lines.Unfit
		case c.Withdrawal():
			line = t.c.Lines.Withdrawn
		}
		for _, ch := range c.Changes {
			changes = append(changes, t.c.Lines.Change.With("field", t.c.FieldName(c.Kind, ch.Field), "was", t.c.field(c.Kind, ch.Field, ch.Was), "now", t.c.field(c.Kind, ch.Field, ch.Now)))
		}
		out = append(out, line.With("entry", t.Entry(c.Seq), "of", t.Entry(c.Of), "date", t.Day(c.Written),
			"changes", t.c.Clauses(changes), "because", c.Because))
	}
	return out
}
