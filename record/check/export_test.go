package check

import (
	"time"

	"backleaf/record"
)

// Judge is [Panel] without remedies: those cost as much again for each finding
// that falls short.
func Judge(w *record.Workshop, p *record.Panel, now time.Time) []Finding {
	return newSubject(w, p, now).findings()
}

// Unseen judges the panel anew with each remedy that can be tried, and gives f
// what each rule says then that saw nothing of what the remedy changes, so that
// it would not be asked again.
func Unseen(w *record.Workshop, p *record.Panel, now time.Time, f func(was Finding, remedy string, then Outcome, weight Severity)) {
	s := newSubject(w, p, now)
	findings := s.findings()
	for _, short := range findings {
		of := offers[short.Rule]
		if short.Outcome != FallsShort || of == nil {
			continue
		}
		for _, o := range of(s) {
			then := s.with(o.bodies)
			for _, was := range findings {
				if was.seen&changed(o.bodies) == 0 {
					rule, _ := RuleNamed(was.Rule)
					is, weight := rule.worst(rule.judge(then))
					f(was, o.said.Code, is, weight)
				}
			}
		}
	}
}
