package check_test

import (
	"math/rand"
	"slices"
	"testing"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/toolcheck"
)

// shuffled makes histories that nobody thought of: entries of all histories,
// drawn at random and put in the order of their dates, on one panel.
func shuffled(t testing.TB, n int) []history {
	t.Helper()
	r := rand.New(rand.NewSource(3))
	var shelf, cuts, deeds []record.Entry
	seen := map[record.Key]bool{}
	for _, h := range histories(t) {
		for _, e := range h.entries {
			switch b := e.Body.(type) {
			case record.Studio:
			case record.Material:
				if !seen[b.Key] {
					seen[b.Key] = true
					shelf = append(shelf, e)
				}
			case record.Lot:
				if !seen[b.Key] {
					seen[b.Key] = true
					shelf = append(shelf, e)
				}
			case record.Cut:
				cuts = append(cuts, e)
			case record.Amended, record.Withdrawn:
			default:
				deeds = append(deeds, e)
			}
		}
	}
	var out []history
	for range n {
		es := []record.Entry{cuts[r.Intn(len(cuts))]}
		for range 3 + r.Intn(8) {
			es = append(es, deeds[r.Intn(len(deeds))])
		}
		slices.SortStableFunc(es[1:], func(a, b record.Entry) int { return a.At.Date().Compare(b.At.Date()) })
		h := history{name: "drawn at random", now: moment, own: len(shelf)}
		for i, e := range slices.Concat(shelf, es) {
			e.Seq, e.Written = int64(i+1), record.Moment(moment)
			if len(e.Panels) > 0 {
				e.Panels = []record.Number{panel}
			}
			h.entries = append(h.entries, e)
		}
		out = append(out, h)
	}
	return out
}

// What is tested over the written histories holds for drawn ones too.
func TestRandomHistories(t *testing.T) {
	for i, h := range shuffled(t, toolcheck.Rounds(150, 50)) {
		was := judge(t, h.entries, h.now)
		var turned []record.Entry
		for _, e := range h.entries {
			turned = append(turned, turn(t, e))
		}
		for rule, f := range judge(t, turned, h.now) {
			if f.Outcome != was[rule].Outcome {
				t.Errorf("%d: %s was %s (%s), turned round it is %s (%s)", i, rule, was[rule].Outcome, codes(was[rule]), f.Outcome, codes(f))
			}
		}
		check.Due(mustFold(t, h.entries), at(t, "05-20"))
	}
}

func mustFold(t testing.TB, es []record.Entry) *record.Workshop {
	t.Helper()
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// Blurring drawn histories, fewer of them: each field of each entry.
func TestRandomBlurring(t *testing.T) {
	for i, h := range shuffled(t, toolcheck.Rounds(6, 1)) {
		blurAll(t, h, i)
	}
}
