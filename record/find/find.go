// Package find chooses panels by what is recorded of them, in the words of
// the trade. It is pure: a folded panel in, yes or no out. What the book's own
// tables can tell (batch, stage, whereabouts, materials, lots, words) is asked
// of them: see book.Narrow.
//
// What is not known never fits by itself: a panel without a recorded size is
// not among those "from 20 x 30 cm", one of no known date was not "made
// between 1998 and 2004". Tests that ask for a lack say so: [Unsealed] finds
// the faces of which no sealing is recorded, "unknown" finds what nobody
// recorded or could learn.
//
// TestFilters holds every test against panels that fit, that do not, and of
// which it is not known.
package find

import (
	"time"

	"backleaf/record"
	"backleaf/record/check"
)

// Test says whether a panel fits.
type Test func(*record.Workshop, *record.Panel) bool

// Finding fits panels of which a rule of package check says this at a moment.
func Finding(rule string, o check.Outcome, now time.Time) Test {
	return func(w *record.Workshop, p *record.Panel) bool {
		r, ok := check.RuleNamed(rule)
		return ok && r.Outcome(w, p, now) == o
	}
}

// OutOfBalance fits panels whose faces do not pull alike, or do not let
// moisture through alike, as far as recorded.
func OutOfBalance(now time.Time) Test {
	pull, damp := Finding("balanced-pull", check.FallsShort, now), Finding("balanced-moisture", check.FallsShort, now)
	return func(w *record.Workshop, p *record.Panel) bool { return pull(w, p) || damp(w, p) }
}
