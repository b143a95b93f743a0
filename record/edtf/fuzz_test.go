package edtf_test

import (
	"strings"
	"testing"

	"backleaf/record/edtf"
)

// Whatever is accepted is given back unchanged, has ordered bounds and prints.
func FuzzParse(f *testing.F) {
	for _, c := range specification {
		f.Add(c.text)
	}
	f.Add("2004-06-XX/2004-07-03")
	f.Fuzz(func(t *testing.T, s string) {
		d, err := edtf.Parse(s)
		if err != nil {
			if !d.IsZero() || !strings.HasPrefix(err.Error(), "cannot read ") {
				t.Fatalf("%q: %v with error %v", s, d, err)
			}
			return
		}
		var back edtf.Date
		b, _ := d.MarshalText()
		if err := back.UnmarshalText(b); err != nil || back != d || d.String() != s {
			t.Fatalf("%q became %q: %v", s, back, err)
		}
		first, ok1 := d.Earliest()
		last, ok2 := d.Latest()
		if !ok1 && !ok2 || ok1 && ok2 && last.Before(first) {
			t.Fatalf("%q: bounds %v %v", s, first, last)
		}
		if d.Words() == "" || strings.Contains(d.Words(), "%!") {
			t.Fatalf("%q: words %q", s, d.Words())
		}
	})
}

// Compare is a total order: 0 only for the same spelling, the reverse when
// turned round, and transitive.
func FuzzCompare(f *testing.F) {
	f.Add("1985", "../1985", "1985/..")
	f.Add("2019-21", "2019-03-01/2019-05-31", "201X")
	f.Add("1985-04-12T23:20:30Z", "1985-04-12T23:20:30+00", "1985-04-12")
	f.Fuzz(func(t *testing.T, x, y, z string) {
		var d [3]edtf.Date
		for i, s := range []string{x, y, z} {
			if d[i].UnmarshalText([]byte(s)) != nil {
				return
			}
		}
		checkOrder(t, d[0], d[1], d[2])
	})
}

func checkOrder(t *testing.T, a, b, c edtf.Date) {
	t.Helper()
	if a.Compare(b) != -b.Compare(a) || (a.Compare(b) == 0) != (a == b) {
		t.Fatalf("%q and %q: %d and %d", a, b, a.Compare(b), b.Compare(a))
	}
	if a.Compare(b) <= 0 && b.Compare(c) <= 0 && a.Compare(c) > 0 {
		t.Fatalf("%q <= %q <= %q, but not the first and the last", a, b, c)
	}
}

func TestTotalOrder(t *testing.T) {
	all := []edtf.Date{{}}
	for _, c := range append(specification, further...) {
		d, err := edtf.Parse(c.text)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, d)
	}
	for _, a := range all {
		for _, b := range all {
			for _, c := range all {
				checkOrder(t, a, b, c)
			}
		}
	}
}
