package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

func newCheck(a *app) *cobra.Command {
	var all bool
	var why string
	var except []string
	c := &cobra.Command{
		Use: "check [" + panelWords + "]", Short: "hold panels against the rules of thumb",
		Long: `Hold panels against the rules of thumb, the worst finding first. A rule holds, falls
short, does not apply, or cannot be judged because something was not recorded; what
is not known never counts as a pass. Panels of which the same is said are named
together, the worst first, and what was not recorded is one list of questions. Exit
code 3 when something falls short by more than information.`,
		Example: `  backleaf check batch:may
  backleaf check 0142 --why balanced-pull`,
		RunE: func(c *cobra.Command, args []string) error {
			if why != "" {
				rule, err := questions.Rule(why)
				if err != nil {
					return err
				}
				a.sayRule(rule)
				if len(args) == 0 {
					return nil
				}
			}
			return a.read(c.Context(), func(s *studio.Session) error {
				w, ps, err := questions.Chosen(c.Context(), s.Book, args, except)
				if err != nil {
					return err
				}
				return a.sayFindings(questions.Check(w, ps, a.now(), why), all || why != "")
			})
		},
	}
	c.Flags().BoolVar(&all, "all", false, "every rule, also those that hold or do not apply")
	c.Flags().StringVar(&why, "why", "", "explain a rule: reason, source, how it is judged, what can still be done")
	c.Flags().StringSliceVar(&except, "except", nil, "panels to leave out")
	return a.jsonFlag(c)
}

func (a *app) sayRule(r check.Rule) {
	w := tell.English.Rule(r.Name)
	a.say("%s  %s", r.Name, w.Title)
	t := a.table()
	t.row("  why", string(w.Reason))
	t.row("  source", r.Source)
	t.row("  weight", tell.English.Severity(r.Severity))
	t.row("  judged", string(w.Judged))
	t.row("  to watch", string(w.Watch))
	t.done()
}

// sayFindings prints findings and ends with exit code 3 if one falls short.
func (a *app) sayFindings(found []questions.Findings, all bool) error {
	if a.asJSON {
		if err := a.sayJSON(found); err != nil {
			return err
		}
	} else {
		for i, g := range questions.Alike(found, all) {
			if i > 0 {
				a.say("")
			}
			a.sayPanelFindings(g, all)
		}
		if len(found) == 0 {
			a.talk("there are no panels to check")
		}
	}
	if questions.FallsShort(found) {
		return quiet(exitFinding)
	}
	return nil
}

// sayPanelFindings prints what is said of all panels of a group.
func (a *app) sayPanelFindings(group []questions.Findings, all bool) {
	f := group[0]
	if len(group) == 1 {
		a.tell(a.catalogue(), record.Say("panel-checked", record.With("panel", f.Panel), record.With("title", f.Title)))
	} else {
		var ns []record.Number
		for _, g := range group {
			ns = append(ns, g.Panel)
		}
		a.say("%s", a.catalogue().Fill("{panels}", record.With("panels", ns)))
	}
	for _, x := range f.Findings {
		if !all && x.Outcome != check.FallsShort {
			continue
		}
		head := tell.English.Outcome(x.Outcome)
		if x.Outcome == check.FallsShort {
			head += ", " + tell.English.Severity(x.Severity)
		}
		a.say("  %s  %s", head, x.Rule)
		a.say("    %s", x.Text)
		if x.Outcome == check.FallsShort {
			a.say("    → %s", x.Remedy)
		}
	}
	if !all {
		a.sayQuestions(f.Questions())
	}
	each, count := "", f.Count()
	if len(group) > 1 {
		each = "each: "
	}
	a.say("  %s%d hold, %d fall short, %d not recorded, %d do not apply", each,
		count[check.Holds], count[check.FallsShort], count[check.NotRecorded], count[check.NotApplicable])
}

// manyQuestions is how many questions are put at once.
const manyQuestions = 6

// sayQuestions prints what is not recorded as one list.
func (a *app) sayQuestions(questions []string) {
	if len(questions) == 0 {
		return
	}
	a.say("  not recorded, the most useful first:")
	for i, q := range questions {
		if i == manyQuestions {
			a.say("    and %d more (--all)", len(questions)-i)
			break
		}
		a.say("    %s", q)
	}
}
