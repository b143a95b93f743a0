package main

import (
	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

func newCheck(a *app) {
	var all bool
	var why string
	var except []string
	a.command("check", flags{"all": &all, "why": &why, "except": &except, "json": &a.asJSON}, func(r *run) error {
		if why != "" {
			rule, err := questions.Rule(why)
			if err != nil {
				return err
			}
			a.sayRule(rule)
			if len(r.args) == 0 {
				return nil
			}
		}
		return r.reading(func(r *run) error {
			k, short := questions.Checking{Words: a.catalogue(), Now: a.now(), Rule: why, Brief: !all && why == "" && !a.asJSON}, false
			each := func(f func(questions.Findings) error) (err error) {
				short, err = k.Check(r.ctx, r.Book, r.args, except, a.progress(), f)
				return err
			}
			groups := questions.Groups{Brief: k.Brief}
			var err error
			if a.asJSON { // panel by panel as they come
				err = a.sayJSONList(func(add func(any) error) error { return each(func(x questions.Findings) error { return add(x) }) })
			} else if err = each(func(x questions.Findings) error { groups.Add(x); return nil }); err == nil {
				a.sayGroups(&groups)
			}
			if err == nil && short {
				err = quiet(exitFinding)
			}
			return err
		})
	})
}

func (a *app) sayRule(r check.Rule) {
	c := a.catalogue()
	w := c.Rule(r.Name)
	a.told("rule-title", record.With("rule", r.Name), tell.Told("title", string(w.Title)))
	t := a.table()
	t.Row("  "+a.line("name-why"), string(w.Reason))
	t.Row("  "+a.line("name-source"), r.Source)
	t.Row("  "+a.line("name-weight"), c.Severity(r.Severity))
	t.Row("  "+a.line("name-judged"), string(w.Judged))
	t.Row("  "+a.line("name-watch"), string(w.Watch))
	t.Done()
}

// sayGroups prints what is said of several panels together, the gravest first.
func (a *app) sayGroups(gs *questions.Groups) {
	some := false
	for g := range gs.Worst() {
		if some {
			a.say("")
		}
		a.sayPanelFindings(g)
		some = true
	}
	if !some {
		a.noted("no-panels-to-check")
	}
}

// sayPanelFindings prints what is said of all panels of a group.
func (a *app) sayPanelFindings(x questions.Group) {
	if len(x.Panels) == 1 {
		a.told("panel-checked", record.With("panel", x.Panels[0]), record.With("title", x.Title))
	} else {
		a.say("%s", a.catalogue().Fill("{panels}", record.With("panels", x.Panels)))
	}
	for _, f := range x.Findings {
		a.sayFinding(f)
	}
	for _, f := range x.Notes {
		a.told("finding-noted", record.With("rule", f.Rule), tell.Told("text", f.Short))
	}
	if x.MoreNotes > 0 {
		a.told("check-notes-more", record.With("n", x.MoreNotes))
	}
	if x.Questions != nil {
		a.told("check-not-recorded")
	}
	for _, q := range x.Questions {
		a.told("finding-text", tell.Told("text", q))
	}
	if x.MoreQuestions > 0 {
		a.told("check-more", record.With("n", x.MoreQuestions))
	}
	a.told("check-count", record.With("each", len(x.Panels)), record.With("holds", x.Count[check.Holds]), record.With("noted", x.Noted), record.With("short", x.Count[check.FallsShort]-x.Noted),
		record.With("open", x.Count[check.NotRecorded]), record.With("out", x.Count[check.NotApplicable]))
}

func (a *app) sayFinding(x questions.Printed) {
	a.told("finding", append(tell.Judged(x.Outcome, x.Severity), record.With("rule", x.Rule))...)
	a.told("finding-text", tell.Told("text", x.Text))
	if x.Sources != "" {
		a.told("finding-from", tell.Told("sources", x.Sources))
	}
	if x.Outcome == check.FallsShort {
		a.told("finding-do", tell.Told("remedy", x.Remedy))
	}
}
