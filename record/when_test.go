package record_test

import (
	"strconv"
	"testing"
	"time"

	"backleaf/record"
)

func itoa(n int64) string { return strconv.FormatInt(n, 10) }

func when(t testing.TB, s string) record.When {
	t.Helper()
	w, err := record.ParseWhen(s)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestWhen(t *testing.T) {
	for _, c := range []struct {
		in           string
		known, exact bool
	}{
		{"", false, false}, {"unknown", false, false}, {"Unknown", false, false}, {"2026-05-02T14:05:00+02:00", true, true}, {"2026-05-02T12:05:00Z", true, true},
		{"2026-05-02", true, false}, {"1998~", true, false}, {"2019-21", true, false}, {"199X", true, false}, {"../1998", true, false}, {"2026-05-02T14:05:00", true, false},
	} {
		w := when(t, c.in)
		if _, exact := w.Exact(); w.Known() != c.known || exact != c.exact || w.IsZero() != (c.in == "") || w.IsUnknown() != (!c.known && c.in != "") {
			t.Errorf("%q: known %v, exact %v", c.in, w.Known(), exact)
		}
	}
	for _, bad := range []string{"yesterday", "2026-13", "2026-02-30", "2026-05-02T14:05", "2026-05-02 14:05:00Z", "2026-05-02T14:05:00.5Z", "2026-05-02T14:05:00,5Z", " 2026", "02.05.2026", "2026-05-02T14:05:00+02:00\n"} {
		if w, err := record.ParseWhen(bad); err == nil {
			t.Errorf("%q was read as %q", bad, w)
		}
	}
	m := record.Moment(time.Date(2026, 5, 2, 14, 5, 0, 999, time.FixedZone("", 7200)))
	if at, ok := m.Exact(); m.String() != "2026-05-02T14:05:00+02:00" || !ok || at.Format(time.RFC3339) != m.String() {
		t.Errorf("%q, %v", m, at)
	}
}

// Certainly earlier means that the bounds do not overlap; nothing is earlier
// or later than what is not known.
func TestBefore(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want bool
	}{
		{"1998", "1999", true}, {"1999", "1998", false}, {"1998", "1998-06", false}, {"1998-06", "1998", false}, {"199X", "1998", false}, {"198X", "1990~", true},
		{"2026-05-02T14:05:00+02:00", "2026-05-02T14:05:00Z", true}, {"2026-05-02T14:05:00Z", "2026-05-02T16:05:00+02:00", false},
		{"../1998", "1999", true}, {"1999", "1998/..", false}, {"1997", "1998/..", true}, {"1998/..", "2050", false}, {"unknown", "1999", false}, {"1999", "unknown", false}, {"", "1999", false}, {"1999", "", false},
	} {
		if got := when(t, c.a).Before(when(t, c.b)); got != c.want {
			t.Errorf("%q before %q: %v", c.a, c.b, got)
		}
	}
}
