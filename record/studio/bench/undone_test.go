package bench_test

import (
	"slices"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/studio/bench"
)

// Whatever is taken back, in whatever order, the bench says when an entry was
// taken back already, when one stands again, and when one stays taken back; as
// it says, so the panel stands.
func TestUndone(t *testing.T) {
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	for _, x := range []struct {
		name   string
		undo   []int // 0: the coat; n: the n-th withdrawal
		say    []string
		stands bool
	}{
		{"once", []int{0}, []string{""}, false},
		{"twice", []int{0, 0}, []string{"", "withdrawn-already"}, false},
		{"and back", []int{0, 1}, []string{"", "stands-again"}, true},
		{"twice, and one back", []int{0, 0, 1}, []string{"", "withdrawn-already", "stays-withdrawn"}, false},
		{"twice, and both back", []int{0, 0, 1, 2}, []string{"", "withdrawn-already", "stays-withdrawn", "stands-again"}, true},
		{"back, and again", []int{0, 1, 0}, []string{"", "stands-again", ""}, false},
	} {
		t.Run(x.name, func(t *testing.T) {
			s := newStudio(t, func() time.Time { return now })
			v, err := s.Look(t.Context(), nil, nil)
			if err != nil {
				t.Fatal(err)
			}
			at := record.Moment(now)
			if _, err := bench.Cut(t.Context(), v, at, []record.Cut{{Size: size(t, "30 x 40 cm x 3 mm")}}); err != nil {
				t.Fatal(err)
			}
			if v, err = s.Look(t.Context(), []string{"1"}, nil); err != nil {
				t.Fatal(err)
			}
			coat, err := bench.Do(t.Context(), v, at, record.Coat{Faces: record.Faces, Purpose: record.Sealer})
			if err != nil {
				t.Fatal(err)
			}
			es := coat.Entries
			for i, of := range x.undo {
				if v, err = s.Look(t.Context(), nil, nil); err != nil {
					t.Fatal(err)
				}
				w, _, err := bench.Correct(t.Context(), v, at, es[of], record.Withdrawn{Entry: es[of].Seq, Because: "x"})
				if err != nil {
					t.Fatal(err)
				}
				es = append(es, w.Entries...)
				said := slices.DeleteFunc(slices.Concat(w.Means, w.Warnings), func(s record.Said) bool {
					return !slices.Contains([]string{"withdrawn-already", "stands-again", "stays-withdrawn"}, s.Code)
				})
				got := ""
				for _, s := range said {
					got += s.Code
				}
				if got != x.say[i] {
					t.Errorf("withdrawal %d: %q, want %q", i+1, got, x.say[i])
				}
			}
			if v, err = s.Look(t.Context(), []string{"1"}, nil); err != nil {
				t.Fatal(err)
			}
			if stands := len(v.Shop.Panel(v.Panels[0]).Layers()) > 0; stands != x.stands {
				t.Errorf("the coat stands: %v", stands)
			}
		})
	}
}
