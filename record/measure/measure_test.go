package measure_test

import (
	"math"
	"math/rand"
	"testing"

	"backleaf/record/measure"
)

// check is one row of a table of figures: what was computed, what the source
// says, how near it must come, and the source.
type check struct {
	name      string
	got       float64
	err       error
	want, tol float64
	source    string
}

// val makes the first fields of a check from a function's two results.
func val(got float64, err error) check { return check{got: got, err: err} }

func (c check) is(name string, want, tol float64, source string) check {
	c.name, c.want, c.tol, c.source = name, want, tol, source
	return c
}

func run(t *testing.T, checks ...check) {
	t.Helper()
	for _, c := range checks {
		if c.err != nil {
			t.Errorf("%s: %v (source: %s)", c.name, c.err, c.source)
			continue
		}
		if !(math.Abs(c.got-c.want) <= c.tol) {
			t.Errorf("%s: got %.7g, want %.7g within %g (source: %s)", c.name, c.got, c.want, c.tol, c.source)
		}
	}
}

// refuse calls f with each bad value in turn; every one must be an error and
// leave a plain zero.
func refuse(t *testing.T, name string, f func(float64) (float64, error), bad ...float64) {
	t.Helper()
	for _, v := range append(bad, math.NaN(), math.Inf(1), math.Inf(-1)) {
		if got, err := f(v); err == nil || got != 0 {
			t.Errorf("%s(%g) = %g, %v; want 0 and an error", name, v, got, err)
		}
	}
}

// fixed is a seeded generator: a failure can be run again.
func fixed() *rand.Rand { return rand.New(rand.NewSource(1)) }

func between(r *rand.Rand, lo, hi float64) float64 { return lo + r.Float64()*(hi-lo) }

// logBetween spreads values evenly over the powers of ten.
func logBetween(r *rand.Rand, lo, hi float64) float64 {
	return math.Min(hi, math.Max(lo, math.Exp(between(r, math.Log(lo), math.Log(hi)))))
}

func finite(t *testing.T, name string, v float64, err error) {
	t.Helper()
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		t.Fatalf("%s: got %g, %v for input in range", name, v, err)
	}
}

func TestSourceString(t *testing.T) {
	for _, c := range []struct {
		source measure.Source
		want   string
	}{
		{measure.Source{Basis: measure.Memory, Text: "EN 622-5"}, "from memory of EN 622-5"},
		{measure.Source{Basis: measure.Published, Text: "ISO 9706"}, "as given in ISO 9706"},
		{measure.Source{Basis: measure.Practice}, "common practice"},
		{measure.Source{Basis: measure.Practice, Text: "mid-range"}, "common practice: mid-range"},
	} {
		if got := c.source.String(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
