package questions_test

import (
	"fmt"
	"runtime"
	"slices"
	"testing"
	"time"

	"backleaf/record/invented"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

// However many cores judge, the same is said in the same order: what one panel
// leaves to be looked up by the next changes nothing.
func TestAnyNumberOfCores(t *testing.T) {
	s := session(t, slices.Collect(invented.Journal(3, 42))...)
	then := time.Date(1990, 1, 9, 0, 0, 0, 0, time.UTC)
	said := func(cores int) string {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
		var all []questions.Findings
		k := questions.Checking{Words: tell.English(), Now: now}
		if _, err := k.Check(t.Context(), s.Book, nil, nil, nil, func(f questions.Findings) error { all = append(all, f); return nil }); err != nil {
			t.Fatal(err)
		}
		due, _, err := questions.DueOf(t.Context(), tell.English(), s.Book, nil, then)
		steps := slices.Collect(due)
		if err != nil || len(steps) == 0 || len(all) == 0 {
			t.Fatalf("%d steps, %d panels judged: %v", len(steps), len(all), err)
		}
		return fmt.Sprint(all, steps)
	}
	if said(1) != said(4) {
		t.Error("four cores say something else than one")
	}
}
