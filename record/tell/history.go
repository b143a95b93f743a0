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
		out = append(out, t.c.Correction(c))
	}
	return out
}

// Correction says what was amended or withdrawn, when and why.
func (c *Catalogue) Correction(x record.Correction) string {
	line, changes := c.Lines.Amended, []string{}
	switch {
	case x.Amends && len(x.Changes) == 0:
		line = c.Lines.Unfit
	case x.Withdrawal():
		line = c.Lines.Withdrawn
	}
	for _, ch := range x.Changes {
		changes = append(changes, c.Fill(c.Lines.Change, Told("field", c.FieldName(x.Kind, ch.Field)),
			Told("was", c.field(x.Kind, ch.Field, ch.Was)), Told("now", c.field(x.Kind, ch.Field, ch.Now))))
	}
	return c.Fill(line, record.With("entry", record.EntryRef(x.Seq)), record.With("of", record.EntryRef(x.Of)), record.With("date", x.Written),
		Told("changes", c.Clauses(changes)), record.With("because", x.Because))
}
