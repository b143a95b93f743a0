//go:build unix

package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/toolcheck"
)

const soakFor = time.Minute

// TestSoak lets two processes write, over and over, while others back the book
// up and deposit it: nothing that was acknowledged is lost, every copy holds,
// and no half file remains.
func TestSoak(t *testing.T) {
	toolcheck.Long(t)
	dir := t.TempDir()
	runs(t, dir, "studio", "new", "--maker", "Anna", "--mark", "KB")
	runs(t, dir, "studio", "key", "new")
	runs(t, dir, "panel", "add", "--size", "20 x 20 cm x 6 mm")
	deadline := time.Now().Add(soakFor)
	var mu sync.Mutex
	said := map[string]bool{} // acknowledged notes
	copies := []string{}
	var all sync.WaitGroup
	work := func(do func(i int) error) {
		all.Go(func() {
			for i := 0; time.Now().Before(deadline); i++ {
				if err := do(i); err != nil {
					t.Error(err)
					return
				}
			}
		})
	}
	command := func(args ...string) error {
		out, err := program(dir, args...).CombinedOutput()
		if err != nil {
			return fmt.Errorf("backleaf %s: %w\n%s", strings.Join(args, " "), err, out)
		}
		return nil
	}
	for w := range 2 {
		work(func(i int) error {
			text := fmt.Sprintf("writer %d, note %d", w, i)
			err := command("note", "1", text)
			if err == nil {
				mu.Lock()
				said[text] = true
				mu.Unlock()
			}
			return err
		})
	}
	work(func(i int) error {
		name := fmt.Sprintf("copy-%04d.sqlite", i)
		err := command("backup", name)
		copies = append(copies, name)
		return err
	})
	deposits := 0
	work(func(i int) error {
		name := filepath.Join(dir, fmt.Sprintf("bag-%04d", i))
		if err := command("deposit", name); err != nil {
			return err
		}
		wholeBag(t, name)
		deposits++
		return os.RemoveAll(name)
	})
	all.Wait()
	if t.Failed() {
		return
	}
	b, err := book.OpenReadOnly(context.Background(), filepath.Join(dir, "studio.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	if _, err := b.Verify(context.Background(), nil); err != nil {
		t.Fatal(err)
	}
	es, err := b.Entries(context.Background(), book.Filter{})
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range es {
		if n, ok := e.Entry.Body.(record.Note); ok {
			delete(said, n.Text)
		}
	}
	for text := range said {
		t.Errorf("%s was acknowledged, and is lost", text)
	}
	last := int64(0)
	for _, c := range copies {
		got := holds(t, filepath.Join(dir, c))
		if got < last {
			t.Errorf("%s holds %d entries, fewer than the copy before it", c, got)
		}
		last = got
	}
	onlyThese(t, dir, append(copies, "studio.sqlite", "studio.sqlite-wal", "studio.sqlite-shm", "studio.key")...)
	t.Logf("%d entries, %d backups, %d deposits in %v", len(es), len(copies), deposits, soakFor)
	if len(copies) == 0 || deposits == 0 || len(es) < 10 {
		t.Error("too little happened for this test to mean anything")
	}
}
