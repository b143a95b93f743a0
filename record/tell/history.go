package tell

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/go-json-experiment/json"

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
		out = append(out, capital(line.With("topic", look(t.c.Lines.GapTopics, g.Topic), "what", t.gapThing(g.What))))
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
		for _, ch := range c.Changes {
			changes = append(changes, t.c.Lines.Change.With("field", look(t.c.Words.Fields, ch.Field), "was", t.jsonText(ch.Was), "now", t.jsonText(ch.Now)))
		}
		out = append(out, line.With("entry", t.Entry(c.Seq), "of", t.Entry(c.Of), "date", t.Day(c.Written),
			"changes", strings.Join(changes, "; "), "because", c.Because))
	}
	return out
}

// jsonText turns a field of an entry into words.
func (t *Teller) jsonText(s string) string {
	if s == "" {
		return string(t.c.Lines.NotRecorded)
	}
	var v any
	if json.Unmarshal([]byte(s), &v) != nil {
		return s
	}
	return t.value(v)
}

func (t *Teller) value(v any) string {
	switch v := v.(type) {
	case string:
		if w, err := record.ParseWhen(v); err == nil && w.Known() {
			return t.dated(w) // to the second: it may be all that was changed
		}
		if l, err := record.ParseSize(v); err == nil && !l.IsZero() {
			return strings.ReplaceAll(v, " x ", times)
		}
		return t.word(v)
	case float64:
		return strconv.FormatFloat(v, 'f', -1, 64)
	case []any:
		var parts []string
		for _, x := range v {
			parts = append(parts, t.value(x))
		}
		return t.List(parts)
	case map[string]any:
		var parts []string
		for _, k := range sortedKeys(v) {
			parts = append(parts, look(t.c.Words.Fields, k)+" "+t.value(v[k]))
		}
		return strings.Join(parts, ", ")
	}
	return ""
}

func sortedKeys(m map[string]any) []string { return slices.Sorted(maps.Keys(m)) }
