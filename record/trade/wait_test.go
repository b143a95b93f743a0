package trade_test

import (
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/trade"
)

func when(t *testing.T, s string) record.When {
	t.Helper()
	w, err := record.ParseWhen(s)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// Waiting times as the works give them: a paint maker's notes on drying times,
// MITRA QID 351 (acrylic ground 3, 14 and 30 days; oil ground 6 to 12 months),
// a note on waiting before varnishing (6 to 12 months); the rest from memory or
// common practice.
func TestWaits(t *testing.T) {
	d := func(n int) trade.Span { return trade.Span{Days: n} }
	m := func(n int) trade.Span { return trade.Span{Months: n} }
	h := func(n int) trade.Span { return trade.Span{Hours: n} }
	for _, c := range []struct {
		upper, lower         trade.Stratum
		thick                record.Answer
		least, usual, better trade.Span
	}{
		{trade.AcrylicGround, trade.AcrylicGround, record.No, h(1), h(12), trade.Span{}},
		{trade.OilPaint, trade.AcrylicGround, record.No, d(3), d(14), d(30)},
		{trade.Alkyd, trade.AcrylicGround, record.No, d(3), d(14), d(30)},
		{trade.OilPaint, trade.AcrylicMedium, record.No, d(3), trade.Span{}, trade.Span{}},
		{trade.OilPaint, trade.OilGround, record.No, trade.Span{}, m(1), m(6)},
		{trade.OilPaint, trade.Alkyd, record.No, d(1), d(7), trade.Span{}},
		{trade.OilPaint, trade.EggTempera, record.No, d(2), d(7), trade.Span{}},
		{trade.NaturalResin, trade.OilPaint, record.No, m(3), m(6), m(12)},
		{trade.NaturalResin, trade.OilPaint, record.Yes, m(6), m(12), trade.Span{}},
		{trade.HydrocarbonResin, trade.Alkyd, record.No, m(1), m(3), m(6)},
		{trade.AcrylicMedium, trade.AcrylicPaint, record.No, d(1), d(7), trade.Span{}},
		{trade.AcrylicResin, trade.AcrylicMedium, record.No, d(3), d(14), d(28)},
		{trade.KetoneResin, trade.EggTempera, record.No, m(3), m(6), m(12)},
		{trade.KetoneResin, trade.Emulsion, record.No, m(6), m(12), trade.Span{}},
	} {
		w, ok := trade.WaitFor(c.upper, c.lower, c.thick)
		if !ok || w.Least != c.least || w.Usual != c.usual || w.Better != c.better {
			t.Errorf("%s on %s: %v, %+v", c.upper, c.lower, ok, w)
		}
	}
	if w, ok := trade.WaitFor(trade.AcrylicGround, trade.OilPaint, record.Unknown); ok {
		t.Errorf("acrylic ground on oil waits %+v", w)
	}
}

// Calendar months: six months from 31 August end on the last of February. A
// date known to the month counts from its last day, to the year from 31
// December; only where every reading agrees is there an answer.
func TestPassed(t *testing.T) {
	for _, c := range []struct {
		lower, upper string
		span         trade.Span
		want         record.Answer
	}{
		{"2025-08-31", "2026-02-28", trade.Span{Months: 6}, record.Unknown},
		{"2025-08-31", "2026-03-01", trade.Span{Months: 6}, record.Yes},
		{"2025-08-31", "2026-02-27", trade.Span{Months: 6}, record.No},
		{"2025-08-31T10:00:00+02:00", "2026-02-28T10:00:00+01:00", trade.Span{Months: 6}, record.Yes},
		{"2025-08-31T10:00:00+02:00", "2026-02-28T08:59:00+01:00", trade.Span{Months: 6}, record.No},
		{"2025-05", "2025-05-20", trade.Span{Days: 14}, record.Unknown},
		{"2025-05", "2025-06-15", trade.Span{Days: 14}, record.Yes},
		{"2025-05", "2025-05-10", trade.Span{Days: 14}, record.No},
		{"2025", "2026-01-10", trade.Span{Days: 14}, record.Unknown},
		{"2025", "2026-01-15", trade.Span{Days: 14}, record.Yes},
		{"", "2026-01-15", trade.Span{Days: 14}, record.Unknown},
		{"unknown", "2026-01-15", trade.Span{Days: 14}, record.Unknown},
	} {
		if got := trade.Passed(when(t, c.lower), when(t, c.upper), c.span); got != c.want {
			t.Errorf("%v from %s to %s: %s, want %s", c.span, c.lower, c.upper, got, c.want)
		}
	}
	for from, want := range map[string]string{"2025-08-31T00:00:00Z": "2026-02-28", "2023-08-31T00:00:00Z": "2024-02-29", "2025-12-31T00:00:00Z": "2026-06-30", "2025-11-30T00:00:00Z": "2026-05-30"} {
		at, err := time.Parse(time.RFC3339, from)
		if err != nil {
			t.Fatal(err)
		}
		if got := (trade.Span{Months: 6}).After(at).Format("2006-01-02"); got != want {
			t.Errorf("six months from %s: %s, want %s", from, got, want)
		}
	}
	if at, ok := trade.SafeFrom(when(t, "2025-05"), trade.Span{Days: 14}); !ok || at.Format("2006-01-02") != "2025-06-14" {
		t.Errorf("two weeks from May 2025: %v, %v", at, ok)
	}
}

// Where the record leaves open how thick the paint is, both waits may hold.
func TestWaitsThickOrThin(t *testing.T) {
	varnish, paint := trade.Strata{trade.NaturalResin}, trade.Strata{trade.OilPaint}
	for _, c := range []struct {
		thick record.Answer
		at    string
		want  record.Answer
	}{
		{record.No, "2025-05-01", record.Yes}, {record.Yes, "2025-05-01", record.No}, {record.Unknown, "2025-05-01", record.Unknown},
		{record.Unknown, "2025-08-01", record.Yes}, {record.Unknown, "2025-03-01", record.No},
	} {
		ws, known := trade.WaitsFor(varnish, paint, c.thick)
		got := map[record.Answer]bool{}
		for _, w := range ws {
			got[trade.Passed(when(t, "2025-01-10"), when(t, c.at), w.Least)] = true
		}
		if all := len(got) == 1 && got[c.want]; known != record.Yes || all != (c.want != record.Unknown) {
			t.Errorf("thick %s, varnished %s: %v, want %s", c.thick, c.at, got, c.want)
		}
	}
}
