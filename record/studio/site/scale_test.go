package site_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/invented"
)

// Of many panels one changed: only its page is written, and the run is held
// against a walk over the folder that reads every page. BACKLEAF_PANELS says of
// how many, for the figures of ten thousand.
func TestOneOfMany(t *testing.T) {
	panels, _ := strconv.Atoi(os.Getenv("BACKLEAF_PANELS"))
	panels = max(panels, 30)
	a := newAtelier(t, panels)
	var all []record.Number
	for n := range panels {
		all = append(all, invented.Number(n))
	}
	for some := range slices.Chunk(all, 500) {
		a.publish(record.Yes, some...)
	}
	timed := func(what string, work func()) {
		start := time.Now()
		work()
		t.Logf("%d panels, %s: %.2f s", panels, what, time.Since(start).Seconds())
	}
	timed("the first time", func() { a.write() })
	timed("nothing changed", func() {
		if r := a.write(); r.Files != 0 {
			t.Errorf("%d files", r.Files)
		}
	})
	a.append(record.Entry{Panels: all[7:8], Body: record.Described{Title: "Changed"}})
	timed("one changed", func() {
		if r := a.write(); len(r.Written) != 1 || r.Written[0] != all[7] {
			t.Errorf("written: %v", r.Written)
		}
	})
	timed("a walk over the folder", func() {
		filepath.WalkDir(a.dir, func(path string, d fs.DirEntry, err error) error {
			if err == nil && d.Name() == "index.html" {
				_, err = os.ReadFile(path)
			}
			return err
		})
	})
	a.append(record.Entry{Body: record.Note{Text: "about no panel"}})
	if r := a.write(); len(r.Written) != 0 {
		t.Errorf("a note about no panel wrote %d pages", len(r.Written))
	}
}
