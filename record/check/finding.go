package check

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"backleaf/record"
)

// Outcome is what a rule says about a panel.
type Outcome string

// The four outcomes.
const (
	FallsShort    Outcome = "falls short"
	NotRecorded   Outcome = "not recorded"
	Holds         Outcome = "holds"
	NotApplicable Outcome = "does not apply"
)

// rank orders outcomes, the worst first.
func (o Outcome) rank() int {
	return slices.Index([]Outcome{FallsShort, NotRecorded, Holds, NotApplicable}, o)
}

// Severity is how much it matters when a rule falls short.
type Severity string

// The three severities.
const (
	Warning     Severity = "warning"
	Advice      Severity = "advice"
	Information Severity = "information"
)

func (s Severity) rank() int { return slices.Index([]Severity{Warning, Advice, Information}, s) }

// Rule is one rule of thumb.
type Rule struct {
	Name     string // plain words with hyphens
	Title    string // what is asked, as a short sentence
	Reason   string // why
	Source   string // a publication, or "common practice"
	Severity Severity
	Judged   string // how the record is read
	Remedy   string // what can still be done when it falls short
	Judge    func(*Subject) []Verdict
}

// Verdict is what a rule says about one thing. Severity is empty where the
// rule's own holds.
type Verdict struct {
	Outcome  Outcome
	Severity Severity
	Text     string
	Entries  []int64 // the entries it rests on, the one judged first
}

func verdict(o Outcome, entries []int64, format string, args ...any) Verdict {
	return Verdict{Outcome: o, Text: fmt.Sprintf(format, args...), Entries: entries}
}

func (v Verdict) at(s Severity) Verdict { v.Severity = s; return v }

// one is the answer of a rule that judges a single thing.
func one(o Outcome, entries []int64, format string, args ...any) []Verdict {
	return []Verdict{verdict(o, entries, format, args...)}
}

// Finding is what a rule says about a panel.
type Finding struct {
	Rule     string
	Title    string
	Outcome  Outcome
	Severity Severity
	Text     string  // what was found, ready to print
	Entries  []int64 // the entries it rests on
	Remedy   string  // what can still be done; empty where nothing is wrong
}

// Panel judges a panel by every rule at a moment, the worst finding first.
func Panel(w *record.Workshop, p *record.Panel, now time.Time) []Finding {
	s := newSubject(w, p, now)
	findings := make([]Finding, len(Rules))
	for i, r := range Rules {
		findings[i] = r.find(r.Judge(s))
	}
	slices.SortStableFunc(findings, func(a, b Finding) int {
		return cmp.Or(a.Outcome.rank()-b.Outcome.rank(), a.Severity.rank()-b.Severity.rank())
	})
	return findings
}

// find joins the verdicts of a rule: the worst decides, and what else is not
// in order is told too.
func (r Rule) find(vs []Verdict) Finding {
	f := Finding{Rule: r.Name, Title: r.Title, Outcome: NotApplicable, Severity: r.Severity, Text: "there is nothing to judge by this rule"}
	if len(vs) == 0 {
		return f
	}
	slices.SortStableFunc(vs, func(a, b Verdict) int {
		return cmp.Or(a.Outcome.rank()-b.Outcome.rank(), r.severity(a).rank()-r.severity(b).rank())
	})
	f.Outcome, f.Severity = vs[0].Outcome, r.severity(vs[0])
	var texts []string
	for _, v := range vs {
		open := v.Outcome == FallsShort || v.Outcome == NotRecorded
		if v.Outcome != f.Outcome && !open {
			continue
		}
		if !slices.Contains(texts, v.Text) {
			texts = append(texts, v.Text)
		}
		for _, e := range v.Entries {
			if e != 0 && !slices.Contains(f.Entries, e) {
				f.Entries = append(f.Entries, e)
			}
		}
	}
	f.Text = strings.Join(texts, "; ")
	switch f.Outcome {
	case FallsShort:
		f.Remedy = r.Remedy
	case NotRecorded:
		f.Remedy = "If it is known, write it down: amend the entry, or add one with its own date."
	}
	return f
}

func (r Rule) severity(v Verdict) Severity { return cmp.Or(v.Severity, r.Severity) }

// RuleNamed returns a rule by its name.
func RuleNamed(name string) (Rule, bool) {
	i := slices.IndexFunc(Rules, func(r Rule) bool { return r.Name == name })
	if i < 0 {
		return Rule{}, false
	}
	return Rules[i], true
}

// orNone says why nothing was judged where nothing was.
func orNone(vs []Verdict, why string) []Verdict {
	if len(vs) == 0 {
		return one(NotApplicable, nil, "%s", why)
	}
	return vs
}
