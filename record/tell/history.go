package tell

import (
	"slices"
	"strconv"

	"backleaf/record"
	"backleaf/record/section"
)

// Entry names an entry of the journal: "E12".
func (t *Teller) Entry(seq int64) string {
	return t.c.Lines.T("entry").With("n", strconv.FormatInt(seq, 10))
}

// Gaps says what a reader would miss, in the order in which a conservator asks.
func (t *Teller) Gaps() []string {
	var out []string
	for _, g := range t.w.Gaps(t.p) {
		out = append(out, t.c.Capital(Say(t.c, g.Say())))
	}
	return out
}

// GapsTogether says what [Teller.Gaps] says in fewer lines, those of
// [Teller.GapRows].
func (t *Teller) GapsTogether() (out []string) {
	for _, r := range t.GapRows() {
		out = append(out, t.c.Capital(Say(t.c, record.Say("gap", record.With("topic", record.Topic(r.Path)), Told("what", r.Value)))))
	}
	return out
}

// GapRows says what [Teller.Gaps] says topic by topic, each thing once, and of
// which layers the thickness is missing.
func (t *Teller) GapRows() []Row {
	var topics []record.Topic
	missing, inVain := map[record.Topic][]string{}, map[record.Topic][]string{}
	for _, g := range t.w.Gaps(t.p) {
		if !slices.Contains(topics, g.Topic) {
			topics = append(topics, g.Topic)
		}
		list := missing
		if g.Unknown {
			list = inVain
		}
		if thing := Say(t.c, g.Said); !slices.Contains(list[g.Topic], thing) {
			list[g.Topic] = append(list[g.Topic], thing)
		}
	}
	var out []Row
	say := func(topic record.Topic, parts ...string) {
		out = append(out, Row{string(topic), t.c.Capital(t.c.Word(topic)), t.c.Clauses(parts)})
	}
	for _, topic := range topics {
		var parts []string
		if missing[topic] != nil {
			parts = append(parts, t.List(missing[topic]))
		}
		if inVain[topic] != nil {
			parts = append(parts, Say(t.c, record.Say("recorded-as-unknown", Told("what", t.List(inVain[topic])))))
		}
		say(topic, parts...)
	}
	if thin := t.withoutThickness(); thin != nil {
		say("thickness", t.List(thin))
	}
	return out
}

// withoutThickness names the layers of front and back whose thickness is
// neither recorded nor to be reckoned, from the outside.
func (t *Teller) withoutThickness() []string {
	var out []string
	for _, f := range []record.Face{record.Front, record.Back} {
		for _, l := range slices.Backward(t.p.BuildUp(f)) {
			topic := record.Topic(l.Name())
			if l.Cloth != nil {
				topic = "cloth"
			}
			if name := t.c.Word(topic); !slices.Contains(out, name) {
				if _, how := t.Thickness(l); how == section.Unknown {
					out = append(out, name)
				}
			}
		}
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
	line, changes := c.Lines.T("amended"), []string{}
	switch {
	case x.Amends && len(x.Changes) == 0:
		line = c.Lines.T("unfit")
	case x.Withdrawal():
		line = c.Lines.T("withdrawn")
	}
	for _, ch := range x.Changes {
		changes = append(changes, c.Fill(c.Lines.T("change"), Told("field", c.FieldName(x.Kind, ch.Field)),
			Told("was", c.field(x.Kind, ch.Field, ch.Was)), Told("now", c.field(x.Kind, ch.Field, ch.Now))))
	}
	return c.Fill(line, record.With("entry", record.EntryRef(x.Seq)), record.With("of", record.EntryRef(x.Of)), record.With("date", x.Written),
		Told("changes", c.Clauses(changes)), record.With("because", x.Because))
}
