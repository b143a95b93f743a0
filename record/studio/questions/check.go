package questions

import (
	"context"
	"crypto/sha256"
	"fmt"
	"io"
	"slices"
	"time"
	"unique"

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
// what it finds of each to f.
func (k Checking) Check(ctx context.Context, b *book.Book, terms, except []string, progress studio.Progress, f func(Findings) error) error {
	ns, err := numbers(ctx, b, terms, except, discarded)
	if err != nil {
		return err
	}
	done, show := 0, progress.Of("panels")
	return book.Each(ctx, b, ns, func(w *record.Workshop, p *record.Panel) (Findings, error) { return k.Panel(w, p), nil }, func(x Findings) error {
		if done++; show != nil {
			show(int64(done), int64(len(ns)))
		}
		return f(x)
	})
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

// FallsShort reports that any finding falls short by more than information.
func (f Findings) FallsShort() bool { return slices.ContainsFunc(f.Findings, Finding.FallsShort) }

// FallsShort reports that a finding falls short by more than information.
func (x Finding) FallsShort() bool {
	return x.Outcome == check.FallsShort && x.Severity != check.Information
}

// notes are the findings that fall short by no more than information.
func (f Findings) notes() []unique.Handle[Printed] {
	var out []unique.Handle[Printed]
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

// A Group is panels of which the same is said, and what is shown of it.
type Group struct {
	Panels []record.Number
	Title  string // of the first
	Count  map[check.Outcome]int
	Shown
	weight int
}

// Groups are panels of which the same is said, of every rule or, briefly, only of
// open findings.
type Groups struct {
	Brief  bool
	all    []*Group
	at     map[[sha256.Size]byte]*Group
	counts map[string]map[check.Outcome]int // as they are written
}

// Add puts a panel into its group. Only what is shown is kept.
func (g *Groups) Add(f Findings) {
	said, counted := sha256.New(), fmt.Sprint(f.Count())
	io.WriteString(said, counted)
	for _, x := range f.Findings {
		if !g.Brief || x.Open() {
			for _, text := range []string{x.Rule, string(x.Outcome), string(x.Severity), x.Text, fmt.Sprint(x.Entries), x.Remedy} {
				io.WriteString(said, text+"\x00")
			}
		}
	}
	if g.at == nil {
		g.at, g.counts = map[[sha256.Size]byte]*Group{}, map[string]map[check.Outcome]int{}
	}
	key := [sha256.Size]byte(said.Sum(nil))
	if g.at[key] == nil {
		if g.counts[counted] == nil {
			g.counts[counted] = f.Count()
		}
		g.at[key] = &Group{Title: f.Title, Count: g.counts[counted], Shown: f.shown(!g.Brief), weight: f.weight()}
		g.all = append(g.all, g.at[key])
	}
	g.at[key].Panels = append(g.at[key].Panels, f.Panel)
}

// Worst are the groups, the gravest first.
func (g *Groups) Worst() []*Group {
	slices.SortStableFunc(g.all, func(a, b *Group) int { return b.weight - a.weight })
	return g.all
}

// A panel of which nothing falls short by more than information takes at most
// so many lines: of those that much may be notes, and so many questions are put
// at once.
const (
	soundLines    = 12
	noteLines     = 4
	manyQuestions = 7
)

// Shown is what is told of a group: of each list the first, and how many more
// there are.
type Shown struct {
	Findings, Notes          []unique.Handle[Printed]
	Questions                []string
	MoreNotes, MoreQuestions int
	Noted                    int // how many notes there are, however they are shown
}

// Printed is what is printed of a finding. It is held once, however many groups it
// is told of: those of one batch say nearly the same.
type Printed struct {
	Rule                         string
	Outcome                      check.Outcome
	Severity                     check.Severity
	Text, Short, Remedy, Sources string
}

func (f Findings) printed(x Finding) unique.Handle[Printed] {
	return unique.Make(Printed{x.Rule, x.Outcome, x.Severity, x.Text, x.Short, x.Remedy, f.words.Clauses(x.Sources)})
}

// shown is every finding in full, or in few lines what falls short and what is
// not recorded.
func (f Findings) shown(every bool) (s Shown) {
	for _, x := range f.Findings {
		if every || x.FallsShort() {
			if !every {
				x.Text = x.Short
			}
			s.Findings = append(s.Findings, f.printed(x))
		}
	}
	notes := f.notes()
	s.Noted = len(notes)
	if every {
		return s
	}
	s.Notes, s.MoreNotes = fit(notes, noteLines)
	left := soundLines - 3 - len(s.Notes) // without the panel, the head of the questions and the count
	if s.MoreNotes > 0 {
		left--
	}
	s.Questions, s.MoreQuestions = fit(f.Questions(), min(left, manyQuestions))
	for i, q := range s.Questions {
		s.Questions[i] = unique.Make(q).Value() // held once, as [Printed] is
	}
	return s
}

// fit is what of a list is shown in some lines, the last of which says how many
// more there are where not all are.
func fit[T any](all []T, lines int) (shown []T, more int) {
	if len(all) <= lines {
		return all, 0
	}
	return slices.Clone(all[:lines-1]), len(all) - lines + 1
}
