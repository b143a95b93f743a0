package main

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/check"
)

// around folds what these panels need, together with the panels that shared
// an entry with them: an amount for a batch says nothing of one panel without
// the sizes of the others.
func around(ctx context.Context, b *book.Book, ns []record.Number) (*record.Workshop, error) {
	w, err := b.WorkshopOf(ctx, ns...)
	if err != nil {
		return nil, err
	}
	all := slices.Clone(ns)
	for _, p := range w.Panels {
		for _, e := range p.Events {
			all = append(all, e.Panels...)
		}
	}
	slices.SortFunc(all, record.CompareNumbers)
	if all = slices.Compact(all); len(all) == len(ns) {
		return w, nil
	}
	return b.WorkshopOf(ctx, all...)
}

// chosen finds the panels of a reading command, and what they share entries
// with; without words, all panels in hand.
func (a *app) chosen(ctx context.Context, b *book.Book, terms, except []string) (*record.Workshop, []*record.Panel, error) {
	roll, err := b.Roll(ctx)
	if err != nil {
		return nil, nil, err
	}
	if len(terms) == 0 {
		w, err := b.Workshop(ctx)
		if err != nil {
			return nil, nil, err
		}
		var ps []*record.Panel
		for _, p := range w.Panels {
			if _, gone := p.Discarded(); !gone {
				ps = append(ps, p)
			}
		}
		return w, ps, nil
	}
	ns, err := roll.Select(terms, except)
	if err != nil {
		return nil, nil, hinted(err, "\"backleaf list\" shows the panels of this book")
	}
	w, err := around(ctx, b, ns)
	if err != nil {
		return nil, nil, err
	}
	var ps []*record.Panel
	for _, n := range ns {
		ps = append(ps, w.Panel(n))
	}
	return w, ps, nil
}

func newCheck(a *app) *cobra.Command {
	var all bool
	var why string
	var except []string
	c := &cobra.Command{
		Use: "check [" + panelWords + "]", Short: "hold panels against the rules of thumb",
		Long: `Hold panels against the rules of thumb, the worst finding first. A rule holds, falls
short, does not apply, or cannot be judged because something was not recorded; what
is not known never counts as a pass. Panels of which the same is said are named
together. Exit code 3 when something falls short.`,
		Example: `  backleaf check batch:may
  backleaf check 0142 --why answered-coats`,
		RunE: func(c *cobra.Command, args []string) error {
			rule, known := check.RuleNamed(why)
			if why != "" && !known {
				var names []string
				for _, r := range check.Rules {
					names = append(names, r.Name)
				}
				return usage("the rules are "+strings.Join(names, ", "), "there is no rule %q", why)
			}
			if known {
				a.sayRule(rule)
				if len(args) == 0 {
					return nil
				}
			}
			return a.read(c.Context(), func(b *book.Book) error {
				w, ps, err := a.chosen(c.Context(), b, args, except)
				if err != nil {
					return err
				}
				found := []panelFindings{}
				for _, p := range ps {
					f := panelFindings{Panel: p.Number, Title: p.Description().Title}
					for _, x := range check.Panel(w, p, a.now()) {
						if !known || x.Rule == why {
							f.Findings = append(f.Findings, finding(x))
						}
					}
					found = append(found, f)
				}
				return a.sayFindings(found, all || known)
			})
		},
	}
	c.Flags().BoolVar(&all, "all", false, "every rule, also those that hold or do not apply")
	c.Flags().StringVar(&why, "why", "", "explain a rule: reason, source, how it is judged, what can still be done")
	c.Flags().StringSliceVar(&except, "except", nil, "panels to leave out")
	return a.jsonFlag(c)
}

type panelFindings struct {
	Panel    record.Number `json:"panel"`
	Title    string        `json:"title,omitzero"`
	Findings []finding     `json:"findings"`
}

// finding is a finding for a program to read.
type finding struct {
	Rule     string         `json:"rule"`
	Title    string         `json:"title"`
	Outcome  check.Outcome  `json:"outcome"`
	Severity check.Severity `json:"severity"`
	Text     string         `json:"text"`
	Entries  []int64        `json:"entries"`
	Remedy   string         `json:"remedy,omitzero"`
}

func (a *app) sayRule(r check.Rule) {
	a.say("%s  %s", r.Name, r.Title)
	t := a.table()
	t.row("  why", r.Reason)
	t.row("  source", r.Source)
	t.row("  weight", string(r.Severity))
	t.row("  judged", r.Judged)
	t.row("  still to do", r.Remedy)
	t.done()
}

// sayFindings prints findings and ends with exit code 3 if one falls short.
func (a *app) sayFindings(found []panelFindings, all bool) error {
	short := false
	for _, f := range found {
		for _, x := range f.Findings {
			short = short || x.Outcome == check.FallsShort
		}
	}
	if a.asJSON {
		if err := a.sayJSON(found); err != nil {
			return err
		}
	} else {
		for i, g := range alike(found, all) {
			if i > 0 {
				a.say("")
			}
			a.sayPanelFindings(g, all)
		}
		if len(found) == 0 {
			a.talk("there are no panels to check")
		}
	}
	if short {
		return quiet(exitFinding)
	}
	return nil
}

// shown reports whether a reader is to see a finding: an open one, or any.
func (x finding) shown(all bool) bool {
	return all || x.Outcome == check.FallsShort || x.Outcome == check.NotRecorded
}

// count counts the findings of each outcome.
func (f panelFindings) count() map[check.Outcome]int {
	count := map[check.Outcome]int{}
	for _, x := range f.Findings {
		count[x.Outcome]++
	}
	return count
}

// alike groups panels of which the same is said, in the order of the first.
func alike(found []panelFindings, all bool) [][]panelFindings {
	var out [][]panelFindings
	at := map[string]int{}
	for _, f := range found {
		said := fmt.Sprint(f.count())
		for _, x := range f.Findings {
			if x.shown(all) {
				said += fmt.Sprintf("\n%q", []any{x.Rule, x.Outcome, x.Severity, x.Text, x.Entries, x.Remedy})
			}
		}
		i, ok := at[said]
		if !ok {
			i = len(out)
			at[said], out = i, append(out, nil)
		}
		out[i] = append(out[i], f)
	}
	return out
}

// sayPanelFindings prints what is said of all panels of a group.
func (a *app) sayPanelFindings(group []panelFindings, all bool) {
	f := group[0]
	if len(group) == 1 {
		a.say("%s%s", f.Panel, after("  ", quoted(f.Title)))
	} else {
		var ns []record.Number
		for _, g := range group {
			ns = append(ns, g.Panel)
		}
		a.say("%s", sayPanels(ns))
	}
	for _, x := range f.Findings {
		if !x.shown(all) {
			continue
		}
		head := string(x.Outcome)
		if x.Outcome == check.FallsShort {
			head += ", " + string(x.Severity)
		}
		a.say("  %s  %s", head, x.Rule)
		a.say("    %s%s", x.Text, entryList(x.Entries))
		if x.Outcome == check.FallsShort && x.Remedy != "" {
			a.say("    → %s", x.Remedy)
		}
	}
	each, count := "", f.count()
	if len(group) > 1 {
		each = "each: "
	}
	a.say("  %s%d hold, %d fall short, %d not recorded, %d do not apply", each,
		count[check.Holds], count[check.FallsShort], count[check.NotRecorded], count[check.NotApplicable])
}

// entryList names entries for a reader: " (E3, E7)".
func entryList(seqs []int64) string {
	var s []string
	for i, n := range seqs {
		if i == 6 {
			s = append(s, "…")
			break
		}
		s = append(s, fmt.Sprintf("E%d", n))
	}
	if s == nil {
		return ""
	}
	return " (" + strings.Join(s, ", ") + ")"
}
