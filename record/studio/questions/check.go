package questions

import (
	"context"
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/check"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/tell"
)

// Findings is what the rules find of one panel.
type Findings struct {
	Panel    record.Number `json:"panel"`
	Title    string        `json:"title,omitzero"`
	Findings []Finding     `json:"findings"`

	words *tell.Catalogue
}

// Finding is what one rule finds.
type Finding struct {
	Rule     string         `json:"rule"`
	Title    string         `json:"title"`
	Outcome  check.Outcome  `json:"outcome"`
	Severity check.Severity `json:"severity"`
	Said     []record.Said  `json:"said"`
	Text     string         `json:"text"`
	Entries  []int64        `json:"entry_numbers"`
	Remedy   string         `json:"remedy,omitzero"`
	Sources  []string       `json:"sources,omitzero"` // where the rule has one for each thing it found

	Short string     `json:"-"` // of Text what decides
	asks  []question // the things not recorded, one by one
}

// question is one thing not recorded, in words, and the entries that it is asked for.
type question struct {
	text    string
	entries []string
}

// Rules are the names of the rules.
func Rules() []string {
	var names []string
	for _, r := range check.Rules {
		names = append(names, r.Name)
	}
	return names
}

// Rule returns a rule by its name.
func Rule(name string) (check.Rule, error) {
	r, ok := check.RuleNamed(name)
	if !ok {
		return r, refuse.Unclearly("no-such-rule", "there is no rule %q", name).With(record.With("rules", Rules()), record.With("near", record.Nearest(name, Rules())))
	}
	return r, nil
}

// A Checking is how panels are held against the rules, and told.
type Checking struct {
	Words *tell.Catalogue
	Now   time.Time
	Rule  string // only this one; empty: all
	Brief bool   // only what falls short or is not recorded is put in words, remedies of more than information
}

// found puts a finding in words.
func (k Checking) found(f check.Finding) Finding {
	x := Finding{Rule: f.Rule, Outcome: f.Outcome, Severity: f.Severity, Said: f.Said, Entries: f.Entries}
	if k.Brief && !x.Open() {
		return x
	}
	c, parts, asks := k.Words, make([]string, 0, len(f.Said)), make([]question, 0, len(f.Said))
	for _, s := range f.Said {
		a := question{tell.Say(c, s), s.Value("entries").Texts}
		parts, asks = append(parts, c.RestsOn(a.text, a.entries)), append(asks, a)
	}
	x.Title, x.Remedy, x.Sources = string(c.Rule(f.Rule).Title), c.Remedy(f), c.Sources(f)
	x.Text, x.Short, x.asks = c.FoundOf(f, parts), c.Clauses(parts[:f.Deciding]), asks[f.Deciding:]
	if f.Outcome == check.NotRecorded {
		x.asks = asks
	}
	return x
}

// Check holds panels, named as typed, against the rules and gives
// what it finds of each to f. It says whether any falls short.
func (k Checking) Check(ctx context.Context, b *book.Book, terms, except []string, progress studio.Progress, f func(Findings) error) (short bool, err error) {
	ns, err := numbers(ctx, b, terms, except, discarded)
	if err != nil {
		return false, err
	}
	done, show := 0, progress.Of("panels")
	err = book.Each(ctx, b, ns, func(w *record.Workshop, p *record.Panel) (Findings, error) { return k.Panel(w, p), nil }, func(x Findings) error {
		if done++; show != nil {
			show(int64(done), int64(len(ns)))
		}
		short = short || slices.ContainsFunc(x.Findings, Finding.FallsShort)
		return f(x)
	})
	return short, err
}

// Panel holds one panel against the rules.
func (k Checking) Panel(w *record.Workshop, p *record.Panel) Findings {
	k.Words = k.Words.For(w.Studio)
	f := Findings{Panel: p.Number, Title: p.Description().Title, words: k.Words}
	asked := func(x check.Finding) bool { return k.Rule == "" || x.Rule == k.Rule }
	all := check.Shown(w, p, k.Now, func(x check.Finding) bool { return asked(x) && !(k.Brief && x.Severity == check.Information) })
	f.Findings = make([]Finding, 0, len(all))
	for _, x := range all {
		if asked(x) {
			f.Findings = append(f.Findings, k.found(x))
		}
	}
	return f
}

// FallsShort reports that a finding falls short by more than information.
func (x Finding) FallsShort() bool {
	return x.Outcome == check.FallsShort && x.Severity != check.Information
}

// notes are the findings that fall short by no more than information.
func (f Findings) notes() []Printed {
	var out []Printed
	for _, x := range f.Findings {
		if x.Outcome == check.FallsShort && x.Severity == check.Information {
			out = append(out, f.printed(x))
		}
	}
	return out
}

// weight is how grave the findings of a panel are together: one warning more
// than any advice.
func (f Findings) weight() (n int) {
	for _, x := range f.Findings {
		if x.Outcome == check.FallsShort {
			n += map[check.Severity]int{check.Warning: 1000, check.Advice: 1}[x.Severity]
		}
	}
	return n
}

// Questions are what the rules would have to know of a panel, each once with
// the entries of all that ask it, the most useful first: what may be graver
// before what is lighter, and before all that only a reader of the record would
// miss.
func (f Findings) Questions() []string {
	var out []string
	var all []question
	for _, x := range slices.SortedStableFunc(slices.Values(f.Findings), func(a, b Finding) int { return check.Asking(a.Rule) - check.Asking(b.Rule) }) {
		for _, q := range x.asks {
			if i := slices.IndexFunc(all, func(a question) bool { return a.text == q.text }); i < 0 {
				all = append(all, q)
			} else {
				all[i].entries = slices.Concat(all[i].entries, q.entries)
			}
		}
	}
	for _, q := range all {
		out = append(out, f.words.RestsOn(q.text, q.entries))
	}
	return out
}

// Open reports that something is to be done or to be learned.
func (x Finding) Open() bool { return x.Outcome == check.FallsShort || x.Outcome == check.NotRecorded }

// Count counts the findings of each outcome.
func (f Findings) Count() map[check.Outcome]int {
	count := map[check.Outcome]int{}
	for _, x := range f.Findings {
		count[x.Outcome]++
	}
	return count
}
