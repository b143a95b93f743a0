package trade

import (
	"slices"
	"strings"
	"testing"
)

// Every row names what it rests on, every work named has a title, and no work
// stands idle.
func TestWorks(t *testing.T) {
	var all []string
	for _, r := range allPigments() {
		all = append(all, r.from)
	}
	for _, r := range misleading {
		all = append(all, r.from)
	}
	for _, r := range pairs() {
		all = append(all, r.from)
	}
	for _, r := range waits {
		all = append(all, r.from)
	}
	for _, r := range advices {
		all = append(all, r.from)
	}
	for _, r := range binders {
		all = append(all, r.from)
	}
	used := map[Work]bool{Practice: true, Memory: true}
	for _, from := range all {
		if strings.TrimSpace(from) == "" {
			t.Error("a row names nothing that it rests on")
		}
		for _, w := range standing(from).Works {
			if used[w] = true; w.Title() == "" && w != Practice && w != Memory {
				t.Errorf("no work %q", w)
			}
		}
	}
	var idle []string
	for w := range works {
		if !used[w] {
			idle = append(idle, string(w))
		}
	}
	slices.Sort(idle)
	if idle != nil {
		t.Errorf("works that no row names: %v", idle)
	}
}
