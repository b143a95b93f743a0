package dossier

import (
	"strings"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/tell"
)

// findings holds the record against the rules of thumb as they stood when the
// last entry was written, so that the same record gives the same page.
func (b *builder) findings() []Item {
	w, c := b.d, b.d
	now, _ := b.w.Written.Exact()
	out := []Item{Text{Text: w.T("findings-lead").With("date", b.Day(b.w.Written))}}
	groups := map[check.Outcome][]check.Finding{}
	for _, f := range check.Panel(b.w, b.p, now) {
		groups[f.Outcome] = append(groups[f.Outcome], f)
	}
	if len(groups[check.FallsShort]) == 0 {
		out = append(out, Text{Text: string(w.T("findings-none"))})
	}
	for _, g := range []struct {
		outcome check.Outcome
		head    string
		said    tell.Message
	}{{check.FallsShort, string(w.T("findings-short")), c.T("columns-finding")}, {check.NotRecorded, string(w.T("findings-open")), c.T("columns-missing")}} {
		if len(groups[g.outcome]) == 0 {
			continue
		}
		t := Table{Columns: []Column{{string(c.T("columns-rule")), 2.2}, {string(g.said), 3.8}, {string(c.T("columns-source")), 3.1}, {string(c.T("columns-entry")), 1.1}}}
		for _, f := range groups[g.outcome] {
			rule, found := b.asked(f.Rule), b.c.Capital(b.c.Found(f))+"."
			if g.outcome == check.FallsShort {
				rule = w.T("findings-severe").With("title", rule, "severity", b.c.Severity(f.Severity))
				found += " " + w.T("findings-remedy").With("remedy", b.c.Remedy(f))
			}
			t.Rows = append(t.Rows, []string{rule, found, b.source(f.Rule), b.entries(f.Entries)})
		}
		out = append(out, Text{Text: g.head, Strong: true}, t)
	}
	if len(groups[check.Holds]) > 0 {
		t := Table{Columns: []Column{{string(c.T("columns-rule")), 4}, {string(c.T("columns-finding")), 4.6}, {string(c.T("columns-entry")), 1.3}}}
		for _, f := range groups[check.Holds] {
			t.Rows = append(t.Rows, []string{b.asked(f.Rule), b.c.Capital(b.c.Found(f)) + ".", b.entries(f.Entries)})
		}
		out = append(out, Text{Text: string(w.T("findings-holds")), Strong: true}, t)
	}
	if n := len(groups[check.NotApplicable]); n > 0 {
		out = append(out, Text{Text: w.T("findings-not-apply").With("n", b.c.Fill(w.T("findings-count"), record.With("n", n))), Small: true})
	}
	return out
}

func (b *builder) source(rule string) string {
	r, _ := check.RuleNamed(rule)
	return r.Source
}

// asked is what a rule asks, without the stop of a sentence.
func (b *builder) asked(rule string) string {
	return strings.TrimSuffix(string(b.c.Rule(rule).Title), ".")
}

// entries names entries; a run of three or more by its ends.
func (b *builder) entries(seqs []int64) string {
	if len(seqs) == 0 {
		return "–"
	}
	return b.c.Entries(seqs)
}
