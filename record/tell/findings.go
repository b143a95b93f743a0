package tell

import (
	"cmp"
	"slices"
	"strconv"

	"backleaf/record"
	"backleaf/record/check"
)

// FindingLines are what joins the words of findings.
type FindingLines struct {
	Found   Message // {what} ({entries}): one thing found, and where
	Run     Message // {from}–{to}: entries without a gap between them
	Besides Message // {found}; {open}: what falls short, and what is not recorded besides
}

// Rule returns the words of a rule by its name; empty ones for a rule that the
// catalogue does not know.
func (c *Catalogue) Rule(name string) RuleWords { return c.Rules[name] }

// Found says what a rule found, each thing with the entries it rests on, and
// what it does not find recorded besides.
func (c *Catalogue) Found(f check.Finding) string {
	var parts []string
	for _, s := range f.Said {
		parts = append(parts, c.FoundHere(s))
	}
	return c.FoundOf(f, parts)
}

// FoundOf is [Catalogue.Found] of things that are said already by
// [Catalogue.FoundHere].
func (c *Catalogue) FoundOf(f check.Finding, parts []string) string {
	if f.Deciding == len(parts) {
		return c.Clauses(parts)
	}
	return c.Findings.Besides.With("found", c.Clauses(parts[:f.Deciding]), "open", c.Clauses(parts[f.Deciding:]))
}

// FoundHere says one thing that was found, with the entries it rests on.
func (c *Catalogue) FoundHere(s record.Said) string {
	return c.RestsOn(Say(c, s), s.Value("entries").Texts)
}

// RestsOn adds to what was said of something the entries it rests on.
func (c *Catalogue) RestsOn(text string, entries []string) string {
	var seqs []int64
	for _, at := range entries {
		if n, err := strconv.ParseInt(at, 10, 64); err == nil {
			seqs = append(seqs, n)
		}
	}
	if seqs == nil {
		return text
	}
	return c.Findings.Found.With("what", text, "entries", c.Entries(seqs))
}

// Remedy says what can still be done, or what to watch; nothing where nothing
// is wrong.
func (c *Catalogue) Remedy(f check.Finding) string {
	if f.Remedy.Code == "" {
		return ""
	}
	return Say(c, f.Remedy)
}

// watching are the codes by which a rule says that a thing is to be left alone,
// and what to watch.
func watching(leave Message, rules map[string]RuleWords) (out table) {
	for name, w := range rules {
		out = append(out, table{{"watch-" + name, leave + w.Watch}}...)
	}
	return out
}

// Entries names entries in order; a run of three or more by its ends.
func (c *Catalogue) Entries(seqs []int64) string {
	seqs = slices.Clone(seqs)
	slices.Sort(seqs)
	seqs = slices.Compact(seqs)
	name := func(n int64) string { return c.one("entry", strconv.FormatInt(n, 10), "") }
	var out []string
	for i := 0; i < len(seqs); {
		n := 1
		for i+n < len(seqs) && seqs[i+n] == seqs[i]+int64(n) {
			n++
		}
		if n < 3 {
			out, i = append(out, name(seqs[i])), i+1
			continue
		}
		out = append(out, c.Findings.Run.With("from", name(seqs[i]), "to", name(seqs[i+n-1])))
		i += n
	}
	if out == nil {
		return ""
	}
	text := out[0]
	for _, s := range out[1:] {
		text = c.Join.List.With("a", text, "b", s)
	}
	return text
}

// Sources names what the deciding verdicts of a finding rest on, where its rule
// has a source for each.
func (c *Catalogue) Sources(f check.Finding) (out []string) {
	for _, w := range f.Works {
		out = append(out, cmp.Or(w.Title(), c.own("Work", string(w))))
	}
	return out
}

// Judged are the values of what a rule says, "outcome", and of how much that
// matters, "severity".
func Judged(o check.Outcome, s check.Severity) []record.Value {
	return []record.Value{{Name: "outcome", Type: "Outcome", Texts: []string{string(o)}}, {Name: "severity", Type: "Severity", Texts: []string{string(s)}}}
}

// Outcome names what a rule says.
func (c *Catalogue) Outcome(o check.Outcome) string { return c.own("Outcome", string(o)) }

// Severity names how much a finding matters.
func (c *Catalogue) Severity(s check.Severity) string { return c.own("Severity", string(s)) }

// Task names what is to be done.
func (c *Catalogue) Task(t check.Task) string { return c.own("Task", string(t)) }

// State names how a step stands.
func (c *Catalogue) State(s check.State) string { return c.own("State", string(s)) }

// own is a word of one of the program's own lists.
func (c *Catalogue) own(list, word string) string { return c.one(list, word, "") }

// DueWhen is [Catalogue.Due] with the window, as it looks from the moment of
// [Catalogue.At].
func (c *Catalogue) DueWhen(s check.Step) string {
	return Say(c, record.Say("due-step", Told("what", c.Due(s)), Told("window", c.Window(s.From, s.Safe, s.Until))))
}

// Due says what is to be done, and on what its window rests.
func (c *Catalogue) Due(s check.Step) string {
	text := Say(c, s.Said)
	var rests []string
	for _, r := range s.Rests {
		rests = append(rests, Say(c, r))
	}
	if rests == nil {
		return text
	}
	return c.Join.Bracket.With("text", text, "aside", c.Clauses(rests))
}
