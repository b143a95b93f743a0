package dossier

import (
	"strings"

	"backleaf/record/check"
)

// findings holds the record against the rules of thumb as they stood when the
// last entry was written, so that the same record gives the same page.
func (b *builder) findings() []Item {
	w, c := b.d.Findings, b.d.Columns
	now, _ := b.w.Written.Exact()
	out := []Item{Text{Text: w.Lead.With("date", b.Day(b.w.Written))}}
	groups := map[check.Outcome][]check.Finding{}
	for _, f := range check.Panel(b.w, b.p, now) {
		groups[f.Outcome] = append(groups[f.Outcome], f)
	}
	if len(groups[check.FallsShort]) == 0 {
		out = append(out, Text{Text: string(w.None)})
	}
	for _, g := range []struct {
		outcome check.Outcome
		head    string
	}{{check.FallsShort, string(w.Short)}, {check.NotRecorded, string(w.Open)}} {
		if len(groups[g.outcome]) == 0 {
			continue
		}
		t := Table{Columns: []Column{{string(c.Finding), 6}, {string(c.Source), 2.6}, {string(c.Entry), 1.4}}}
		for _, f := range groups[g.outcome] {
			said := w.Line.With("title", f.Title, "text", upper(f.Text)+".")
			if g.outcome == check.FallsShort {
				said = upper(string(w.Severities[string(f.Severity)])) + ". " + said
				if f.Remedy != "" {
					said += " " + w.Remedy.With("remedy", f.Remedy)
				}
			}
			t.Rows = append(t.Rows, []string{said, b.source(f.Rule), b.entries(f.Entries)})
		}
		out = append(out, Text{Text: g.head, Strong: true}, t)
	}
	var holds []string
	for _, f := range groups[check.Holds] {
		holds = append(holds, strings.TrimSuffix(f.Title, ".")+" ("+b.entries(f.Entries)+")")
	}
	if holds != nil {
		out = append(out, Text{Text: string(w.Holds), Strong: true}, Text{Text: strings.Join(holds, "; ") + "."})
	}
	if n := len(groups[check.NotApplicable]); n > 0 {
		out = append(out, Text{Text: w.NotApply.With("n", b.c.Count(w.Count, n)), Small: true})
	}
	return out
}

func (b *builder) source(rule string) string {
	r, _ := check.RuleNamed(rule)
	return r.Source
}

func (b *builder) entries(seqs []int64) string {
	var out []string
	for _, s := range seqs {
		out = append(out, b.Entry(s))
	}
	if out == nil {
		return "–"
	}
	return strings.Join(out, ", ")
}

// upper starts a sentence with a capital.
func upper(s string) string {
	r := []rune(s)
	if len(r) == 0 {
		return s
	}
	return strings.ToUpper(string(r[:1])) + string(r[1:])
}
