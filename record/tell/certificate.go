package tell

import "slices"

// GapsTogether says what [Teller.Gaps] says in fewer lines: topic by topic,
// each thing once, for a page that has no room for a list.
func (t *Teller) GapsTogether() []string {
	type topic struct {
		name    string
		unknown bool
		things  []string
	}
	var topics []topic
	for _, g := range t.w.Gaps(t.p) {
		i := slices.IndexFunc(topics, func(x topic) bool { return x.name == g.Topic && x.unknown == g.Unknown })
		if i < 0 {
			i = len(topics)
			topics = append(topics, topic{name: g.Topic, unknown: g.Unknown})
		}
		if thing := t.gapThing(g.What); !slices.Contains(topics[i].things, thing) {
			topics[i].things = append(topics[i].things, thing)
		}
	}
	var out []string
	for _, x := range topics {
		line := t.c.Lines.Gap
		if x.unknown {
			line = t.c.Lines.GapUnknown
		}
		out = append(out, t.c.Capital(line.With("topic", look(t.c.Lines.GapTopics, x.name), "what", t.List(x.things))))
	}
	return out
}
