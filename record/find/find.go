// Package find chooses panels by what is recorded of them, in the words of
// the trade. It is pure: a folded journal in, panels out.
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
	"slices"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/check"
)

// Test says whether a panel fits.
type Test func(*record.Workshop, *record.Panel) bool

// Panels returns the panels that fit all tests, in order of number. The
// workshop must hold the whole journal.
func Panels(w *record.Workshop, tests ...Test) []*record.Panel {
	var out []*record.Panel
	for _, p := range w.Panels {
		if !slices.ContainsFunc(tests, func(t Test) bool { return !t(w, p) }) {
			out = append(out, p)
		}
	}
	return out
}

// Among fits the panels of a list.
func Among(numbers []record.Number) Test {
	in := make(map[record.Number]bool, len(numbers))
	for _, n := range numbers {
		in[n] = true
	}
	return func(_ *record.Workshop, p *record.Panel) bool { return in[p.Number] }
}

// Batch fits the panels of a batch.
func Batch(k record.Key) Test {
	return func(_ *record.Workshop, p *record.Panel) bool { return p.Batch == k }
}

// Stage fits panels at a stage of the work.
func Stage(s record.Stage) Test {
	return func(_ *record.Workshop, p *record.Panel) bool { return p.Stage() == s }
}

// Places are the words that [Where] takes besides the ways of parting.
var Places = []string{"studio", "away", "discarded"}

// Where fits panels by where they are: one of [Places], or the way in which
// they last left ("sale", "loan" …).
func Where(place string) Test {
	return func(_ *record.Workshop, p *record.Panel) bool {
		_, gone := p.Discarded()
		h, away := p.Away()
		switch place {
		case "discarded":
			return gone
		case "studio":
			return !gone && !away
		case "away":
			return away
		}
		return away && string(h.Body.How) == place
	}
}

// OwnReference fits panels whose own reference of the studio holds a text, in
// any case.
func OwnReference(text string) Test {
	text = strings.ToLower(text)
	return func(_ *record.Workshop, p *record.Panel) bool {
		return strings.Contains(strings.ToLower(p.Description().Owner), text) ||
			strings.Contains(strings.ToLower(p.Cut().Owner), text)
	}
}

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
