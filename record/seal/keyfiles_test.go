package seal_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"backleaf/record/seal"
)

func newKey(t *testing.T) seal.Key {
	t.Helper()
	k, err := seal.NewKey()
	if err != nil {
		t.Fatal(err)
	}
	return k
}

// keysIn returns which keys lie in a folder, by fingerprint, and where.
func keysIn(t *testing.T, dir string) map[seal.PublicKey][]string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	out := map[seal.PublicKey][]string{}
	for _, e := range entries {
		k, _, err := seal.LoadKey(filepath.Join(dir, e.Name()), nil)
		if err != nil {
			t.Fatalf("%s: %v", e.Name(), err)
		}
		out[k.Public()] = append(out[k.Public()], e.Name())
	}
	return out
}

func link(from, to string) func() error { return func() error { return os.Link(from, to) } }
func unlink(path string) func() error   { return func() error { return os.Remove(path) } }

// A change of key, cut off after each of its steps: what the disk then holds is laid out by hand, and the next start settles it.
func TestSettleChange(t *testing.T) {
	const entry = 1 // after the first step the journal has it
	for cut := 0; ; cut++ {
		dir := t.TempDir()
		old, heir := newKey(t), newKey(t)
		files := seal.KeyFiles{InUse: filepath.Join(dir, "studio.key")}
		if err := old.Create(files.InUse, nil); err != nil {
			t.Fatal(err)
		}
		short := func(k seal.Key) string { return k.Public().Fingerprint().String()[:8] }
		waiting, retired := filepath.Join(dir, "studio-new-"+short(heir)+".key"), filepath.Join(dir, "studio-retired-"+short(old)+".key")
		steps := []func() error{
			func() error { _, err := files.Lay(heir, nil); return err },
			func() error { return nil }, // the entry
			link(files.InUse, retired), unlink(files.InUse), link(waiting, files.InUse), unlink(waiting),
		}
		if cut > len(steps) {
			return
		}
		for _, step := range steps[:cut] {
			if err := step(); err != nil {
				t.Fatal(err)
			}
		}
		current, before := old.Public(), (*seal.PublicKey)(nil)
		want := map[seal.PublicKey]string{old.Public(): "[studio.key]"}
		if cut > entry {
			p := old.Public()
			current, before = heir.Public(), &p
			want = map[seal.PublicKey]string{old.Public(): "[" + filepath.Base(files.Retired(old.Public())) + "]", heir.Public(): "[studio.key]"}
		} else if cut == entry { // it never signed, and nobody needs it
			want[heir.Public()] = "[" + filepath.Base(waiting) + "]"
		}
		for range 2 { // and once more, where nothing is left to do
			if err := files.Settle(current, before); err != nil {
				t.Fatalf("cut off after step %d: %v", cut, err)
			}
			got := keysIn(t, dir)
			for k, names := range want {
				if fmt.Sprint(got[k]) != names || len(got) != len(want) {
					t.Errorf("cut off after step %d: %v, want %v", cut, got, want)
				}
			}
		}
	}
}

func TestSettleLoss(t *testing.T) {
	dir := t.TempDir()
	k := newKey(t)
	files := seal.KeyFiles{InUse: filepath.Join(dir, "studio.key")}
	if to, err := files.Lose(k.Public()); err != nil || to != "" {
		t.Errorf("no file: %q, %v", to, err)
	}
	for _, both := range []bool{false, true} { // cut off between the two halves of the move, or after it
		if err := k.Create(files.InUse, nil); err != nil {
			t.Fatal(err)
		}
		to, err := files.Lose(k.Public())
		if err != nil {
			t.Fatal(err)
		}
		if both {
			if err := os.Link(to, files.InUse); err != nil {
				t.Fatal(err)
			}
		}
		if err := files.Settle(k.Public(), nil); err != nil || len(keysIn(t, dir)) != 1 {
			t.Errorf("%v, %v", keysIn(t, dir), err)
		}
		if got, _, err := seal.LoadKey(files.InUse, nil); err != nil || got.Public() != k.Public() {
			t.Errorf("the key is not in its place: %v", err)
		}
		os.Remove(files.InUse)
		os.Remove(to)
	}
}

// What does not fit together is told, and nothing is moved.
func TestSettleRefuses(t *testing.T) {
	dir := t.TempDir()
	old, heir, third := newKey(t), newKey(t), newKey(t)
	files := seal.KeyFiles{InUse: filepath.Join(dir, "studio.key")}
	if err := errors.Join(old.Create(files.InUse, nil), third.Create(files.Retired(old.Public()), nil)); err != nil {
		t.Fatal(err)
	}
	if _, err := files.Lay(heir, nil); err != nil {
		t.Fatal(err)
	}
	p := old.Public()
	for _, before := range []*seal.PublicKey{nil, &p} {
		if err := files.Settle(heir.Public(), before); err == nil {
			t.Errorf("before %v: settled", before)
		}
	}
	if got := keysIn(t, dir); len(got) != 3 {
		t.Errorf("%v", got)
	}
}

// Two starts at once settle the same change.
func TestSettleAtOnce(t *testing.T) {
	for range 50 {
		dir := t.TempDir()
		old, heir := newKey(t), newKey(t)
		files := seal.KeyFiles{InUse: filepath.Join(dir, "studio.key")}
		if err := old.Create(files.InUse, nil); err != nil {
			t.Fatal(err)
		}
		if _, err := files.Lay(heir, nil); err != nil {
			t.Fatal(err)
		}
		p := old.Public()
		var all sync.WaitGroup
		for range 3 {
			all.Go(func() {
				if err := files.Settle(heir.Public(), &p); err != nil {
					t.Error(err)
				}
			})
		}
		all.Wait()
		got := keysIn(t, dir)
		if fmt.Sprint(got[heir.Public()]) != "[studio.key]" || fmt.Sprint(got[old.Public()]) != "["+filepath.Base(files.Retired(p))+"]" || len(got) != 2 {
			t.Fatalf("%v", got)
		}
	}
}
