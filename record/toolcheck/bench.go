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
// beside. On a busy machine the ratio of processor time ("x-processor"), of all
// cores and with what was started, says more.
func Against(b *testing.B, work, bare func()) {
	b.Helper()
	var least, worked [2]time.Duration
	for b.Loop() {
		for i, f := range []func(){work, bare} {
			began, before := time.Now(), processor()
			f()
			if took := time.Since(began); least[i] == 0 || took < least[i] {
				least[i] = took
			}
			if took := processor() - before; worked[i] == 0 || took < worked[i] {
				worked[i] = took
			}
		}
	}
	ms := func(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(ms(least[0]), "ms")
	b.ReportMetric(ms(least[1]), "bare-ms")
	b.ReportMetric(float64(least[0])/float64(least[1]), "x-bare")
	if worked[1] > 0 {
		b.ReportMetric(float64(worked[0])/float64(worked[1]), "x-processor")
	}
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
