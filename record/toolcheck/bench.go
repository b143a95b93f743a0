package toolcheck

import (
	"cmp"
	"os"
	"strconv"
	"testing"
	"time"
)

// Against times work and a bare baseline in turn and reports how many times as
// long the work takes ("x-bare"), of each the least: other programs may run
// beside.
func Against(b *testing.B, work, bare func()) {
	b.Helper()
	var least [2]time.Duration
	for b.Loop() {
		for i, f := range []func(){work, bare} {
			began := time.Now()
			f()
			if took := time.Since(began); least[i] == 0 || took < least[i] {
				least[i] = took
			}
		}
	}
	ms := func(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(ms(least[0]), "ms")
	b.ReportMetric(ms(least[1]), "bare-ms")
	b.ReportMetric(float64(least[0])/float64(least[1]), "x-bare")
}

// Panels is how many panels an invented book of a benchmark has:
// BACKLEAF_PANELS, or a few, so that benchmarks are kept working.
func Panels(b testing.TB) int {
	n, err := strconv.Atoi(cmp.Or(os.Getenv("BACKLEAF_PANELS"), "280"))
	if err != nil {
		b.Fatal(err)
	}
	return n
}
