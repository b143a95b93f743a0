package check

import (
	"cmp"
	"slices"
	"strconv"
	"time"

	"backleaf/record"
	"backleaf/record/trade"
)

// Outcome is what a rule says about a panel.
type Outcome string

// The four outcomes, the worst first.
const (
	FallsShort    Outcome = "falls-short"
	NotRecorded   Outcome = "not-recorded"
	Holds         Outcome = "holds"
	NotApplicable Outcome = "does-not-apply"
)

// Outcomes lists the four outcomes, the worst first.
var Outcomes = []Outcome{FallsShort, NotRecorded, Holds, NotApplicable}

// Severity is how much it matters when a rule falls short.
type Severity string

// The three severities, the gravest first.
const (
	Warning     Severity = "warning"
	Advice      Severity = "advice"
	Information Severity = "information"
)

// Severities lists the three severities, the gravest first.
var Severities = []Severity{Warning, Advice, Information}

// Rule is one rule of thumb. What it asks, why, how it is judged and what can
// still be done stand in the catalogue of record/tell under its name.
type Rule struct {
	Name     string // words with hyphens
	Source   string // publications, or "common practice"
	Severity Severity
	judge    func(*subject) []verdict
}

// Finding is what a rule says about a panel.
type Finding struct {
	Rule     string
	Outcome  Outcome
	Severity Severity
	Said     []record.Said // what was found, the deciding first; each may name its entries as a value "entries"
	Deciding int           // how many of Said decide; the others are not recorded besides
	Entries  []int64       // all entries it rests on, in order
	Remedy   record.Said   // what can still be done, or what to watch; zero where nothing is wrong
	Write    []record.Body // the entries of a remedy that was reckoned and works; none where there is none
	Works    []trade.Work  // on what the deciding verdicts rest, where the rule has a source for each
	seen     sight
}

// verdict is what a rule says about one thing it judges. Severity is empty
// where the rule's own holds.
type verdict struct {
	outcome  Outcome
	severity Severity
	said     record.Said
	entries  []int64
	works    []trade.Work
}

func say(o Outcome, entries []int64, code string, values ...record.Value) verdict {
	return verdict{outcome: o, said: record.Say(code, values...), entries: entries}
}

func (v verdict) at(s Severity) verdict { v.severity = s; return v }

func (v verdict) from(rests trade.Standing) verdict { v.works = rests.Works; return v }

// one is the answer of a rule that judges a single thing.
func one(o Outcome, entries []int64, code string, values ...record.Value) []verdict {
	return []verdict{say(o, entries, code, values...)}
}

// Panel judges a panel by every rule at a moment, the worst finding first.
func Panel(w *record.Workshop, p *record.Panel, now time.Time) []Finding {
	return Shown(w, p, now, func(Finding) bool { return true })
}

// Shown is [Panel], with remedies of those findings alone that are shown with
// one: to reckon them takes longer than to judge.
func Shown(w *record.Workshop, p *record.Panel, now time.Time, with func(Finding) bool) []Finding {
	s := newSubject(w, p, now)
	findings := s.findings()
	for i, f := range findings {
		switch {
		case f.Outcome == NotRecorded:
			findings[i].Remedy = record.Say("remedy-write-down")
		case f.Outcome == FallsShort && with(f):
			findings[i].Remedy, findings[i].Write = s.remedy(f, findings)
		}
	}
	return findings
}

// Outcome says what one rule says of a panel at a moment.
func (r Rule) Outcome(w *record.Workshop, p *record.Panel, now time.Time) Outcome {
	o, _ := r.worst(r.judge(newSubject(w, p, now)))
	return o
}

// worst is what the gravest verdict of a rule says.
func (r Rule) worst(vs []verdict) (Outcome, Severity) {
	o, s := NotApplicable, r.Severity
	for i, v := range vs {
		severity := cmp.Or(v.severity, r.Severity)
		if i == 0 || cmp.Or(rank(Outcomes, v.outcome)-rank(Outcomes, o), rank(Severities, severity)-rank(Severities, s)) < 0 {
			o, s = v.outcome, severity
		}
	}
	return o, s
}

// findings judges by every rule, the worst first, what is not recorded in the
// order of what to ask, without remedies.
func (s *subject) findings() []Finding {
	found, order := make([]Finding, len(Rules)), make([]*Finding, len(Rules))
	for i, r := range Rules {
		s.seen = 0
		found[i] = r.find(r.judge(s))
		found[i].seen, order[i] = s.seen, &found[i]
	}
	slices.SortStableFunc(order, func(a, b *Finding) int {
		if a.Outcome == NotRecorded && b.Outcome == NotRecorded {
			return Asking(a.Rule) - Asking(b.Rule)
		}
		return cmp.Or(rank(Outcomes, a.Outcome)-rank(Outcomes, b.Outcome), rank(Severities, a.Severity)-rank(Severities, b.Severity))
	})
	findings := make([]Finding, 0, len(order))
	for _, f := range order {
		findings = append(findings, *f)
	}
	return findings
}

func rank[W comparable](list []W, w W) int { return slices.Index(list, w) }

// find joins the verdicts of a rule: the worst decides, and what else is not
// in order is told too. The same said of several entries is said once.
func (r Rule) find(vs []verdict) Finding {
	f := Finding{Rule: r.Name, Outcome: NotApplicable, Severity: r.Severity}
	if len(vs) == 0 {
		f.Said, f.Deciding = []record.Said{record.Say("nothing-to-judge")}, 1
		return f
	}
	weight := func(v verdict) int { return rank(Severities, cmp.Or(v.severity, r.Severity)) }
	slices.SortStableFunc(vs, func(a, b verdict) int {
		return cmp.Or(rank(Outcomes, a.outcome)-rank(Outcomes, b.outcome), weight(a)-weight(b))
	})
	f.Outcome, f.Severity = vs[0].outcome, cmp.Or(vs[0].severity, r.Severity)
	f.Said = make([]record.Said, 0, len(vs))
	seqs := make([][]int64, 0, len(vs))
	for _, v := range vs {
		if open := v.outcome == FallsShort || v.outcome == NotRecorded; v.outcome != f.Outcome && !open {
			continue
		}
		i := slices.IndexFunc(f.Said, func(s record.Said) bool { return same(s, v.said) })
		if i < 0 {
			i = len(f.Said)
			f.Said, seqs = append(f.Said, v.said), append(seqs, nil)
			if v.outcome == f.Outcome {
				f.Deciding++
			}
		}
		seqs[i] = append(seqs[i], v.entries...)
		for _, w := range v.works {
			if v.outcome == f.Outcome && !slices.Contains(f.Works, w) {
				f.Works = append(f.Works, w)
			}
		}
		f.Entries = append(f.Entries, v.entries...)
	}
	for i, s := range f.Said {
		f.Said[i].Values = append(slices.Clip(s.Values), entriesOf(seqs[i])...)
	}
	f.Entries = tidy(f.Entries)
	return f
}

func same(a, b record.Said) bool {
	return a.Code == b.Code && slices.EqualFunc(a.Values, b.Values, func(x, y record.Value) bool {
		return x.Name == y.Name && x.Type == y.Type && slices.Equal(x.Texts, y.Texts)
	})
}

// tidy puts entry numbers in order, each once and none that is not there.
func tidy(seqs []int64) []int64 {
	if len(seqs) == 1 && seqs[0] != 0 {
		return seqs
	}
	seqs = slices.DeleteFunc(slices.Clone(seqs), func(e int64) bool { return e == 0 })
	slices.Sort(seqs)
	return slices.Compact(seqs)
}

// entriesOf names entries as a value of something said; nothing for none.
func entriesOf(seqs []int64) []record.Value {
	var texts []string
	for _, e := range tidy(seqs) {
		texts = append(texts, strconv.FormatInt(e, 10))
	}
	if texts == nil {
		return nil
	}
	return []record.Value{{Name: "entries", Type: "entry", Texts: texts}}
}

// RuleNamed returns a rule by its name.
func RuleNamed(name string) (Rule, bool) {
	i := slices.IndexFunc(Rules, func(r Rule) bool { return r.Name == name })
	if i < 0 {
		return Rule{}, false
	}
	return Rules[i], true
}

// orNone says why nothing was judged where nothing was.
func orNone(vs []verdict, code string) []verdict {
	if len(vs) == 0 {
		return one(NotApplicable, nil, code)
	}
	return vs
}
