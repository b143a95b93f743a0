package bag_test

import (
	"bufio"
	"crypto/sha512"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"backleaf/record/bag"
	"backleaf/record/toolcheck"
)

// greedy lays bags that hold, or say that they hold, far more than they should.
var greedy = map[string]func(t *testing.T, dir string){
	"a sparse tag file": func(t *testing.T, dir string) { grow(t, filepath.Join(dir, "bag-info.txt"), 3<<30) },
	"a sparse list":     func(t *testing.T, dir string) { grow(t, filepath.Join(dir, "manifest-sha256.txt"), 3<<30) },
	"a sparse file that is not listed": func(t *testing.T, dir string) {
		grow(t, filepath.Join(dir, "data", "sparse"), 3<<30)
	},
	"a million files that are not there": func(t *testing.T, dir string) {
		write(t, filepath.Join(dir, "manifest-sha512.txt"), 1000000, func(i int) string { return fmt.Sprintf("%x  data/%d\n", sha512.Sum512(nil), i) })
	},
	"as many as may be": func(t *testing.T, dir string) {
		for _, digits := range []int{64, 128} {
			write(t, filepath.Join(dir, fmt.Sprintf("manifest-sha%d.txt", 4*digits)), 399000, func(i int) string {
				return strings.Repeat("0", digits) + fmt.Sprintf("  data/photographs/%030d/of a panel.jpg\n", i)
			})
		}
	},
	"a million lines that are none": func(t *testing.T, dir string) {
		write(t, filepath.Join(dir, "manifest-sha256.txt"), 10000000, func(int) string { return "\n" })
	},
	"a million lines of nonsense": func(t *testing.T, dir string) {
		write(t, filepath.Join(dir, "fetch.txt"), 1000000, func(i int) string { return fmt.Sprintf("http://x - data/%d\n", i) })
	},
	"one line": func(t *testing.T, dir string) {
		write(t, filepath.Join(dir, "manifest-md5.txt"), 100000, func(int) string { return strings.Repeat("x", 1000) })
	},
	"folders without end": func(t *testing.T, dir string) {
		for range 300 {
			dir = filepath.Join(dir, "data")
		}
		if err := os.MkdirAll(dir, 0o777); err != nil {
			t.Fatal(err)
		}
	},
	"a folder full of files": func(t *testing.T, dir string) {
		for i := range 20000 {
			write(t, filepath.Join(dir, "data", fmt.Sprint(i)), 0, nil)
		}
	},
}

func grow(t *testing.T, path string, size int64) {
	t.Helper()
	if err := os.WriteFile(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(path, size); err != nil {
		t.Skip(err)
	}
}

func write(t *testing.T, path string, n int, line func(int) string) {
	t.Helper()
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	w := bufio.NewWriter(f)
	for i := range n {
		w.WriteString(line(i))
	}
	if err := w.Flush(); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
}

// No bag costs more than these before its files themselves are read, and no more
// than a thousand faults are told one by one.
func TestBounds(t *testing.T) {
	const mostMB, most = 300, 5 * time.Second
	if toolcheck.InChild(t, func(dir string) {
		r, err := bag.Validate(t.Context(), dir)
		if err == nil && (r.Valid || len(r.Problems) > 1000 || len(r.Notes) > 1000) {
			t.Errorf("%d problems, %d more, %d notes", len(r.Problems), r.More, len(r.Notes))
		}
	}) {
		return
	}
	toolcheck.Long(t)
	for name, change := range greedy {
		dir := lay(t, basic())
		change(t, dir)
		mb, took := toolcheck.Cost(t, dir)
		t.Logf("%-35s %3d MB %5.2f s", name, mb, took.Seconds())
		if mb > mostMB || took > most {
			t.Errorf("%s: %d MB, %v", name, mb, took)
		}
	}
}
