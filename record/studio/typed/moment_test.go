package typed_test

import (
	"testing"
	"time"

	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
)

// What is to come is asked for in the words in which the past is told; the days
// are those of the calendar of 2026 (ISO 8601: 26 November is a Thursday).
func TestMoment(t *testing.T) {
	now := time.Date(2026, 11, 26, 14, 27, 0, 0, time.UTC)
	for said, want := range map[string]string{"16:05": "2026-11-26 16:05", "tomorrow": "2026-11-27 00:00", "tomorrow 9:00": "2026-11-27 09:00", "Tomorrow 2pm": "2026-11-27 14:00",
		"monday 9:00": "2026-11-30 09:00", "thu 8:30": "2026-12-03 08:30", "27.11.2026 9:00": "2026-11-27 09:00", "27.11.2026": "2026-11-27 00:00", "2026-12-03 09:00": "2026-12-03 09:00",
		"today 18:00": "2026-11-26 18:00", "soon": "", "9": "", "3/4/2026 9:00": "", "": ""} {
		got, err := typed.Moment("start", said, now)
		if (err != nil) != (want == "") || err == nil && got.Format("2006-01-02 15:04") != want {
			t.Errorf("%q: %s, %v, want %s", said, got, err, want)
		}
	}
}

// Where the clock is put forward or back, no hour is taken that was not said.
// The days and offsets are those of the time zone database (tzdata): Dublin and
// Berlin change at 01:00 UTC on the last Sundays of March and October, Lord Howe
// by half an hour, on 5 April 2026 at 15:00 UTC of the day before.
func TestClockPutForwardAndBack(t *testing.T) {
	for _, c := range []struct{ zone, now, said, want string }{
		{"Europe/Dublin", "2025-10-27T12:00:00Z", "2025-10-26 01:30", "!hour-twice"},
		{"Europe/Dublin", "2025-10-27T12:00:00Z", "yesterday 01:59", "!hour-twice"},
		{"Europe/Dublin", "2025-10-27T12:00:00Z", "2025-10-26T01:30:00+01:00", "2025-10-26T01:30:00+01:00"},
		{"Europe/Dublin", "2025-10-27T12:00:00Z", "2025-10-26T01:30:00Z", "2025-10-26T01:30:00Z"},
		{"Europe/Dublin", "2025-10-27T12:00:00Z", "2025-10-26 00:59", "2025-10-26T00:59:00+01:00"},
		{"Europe/Dublin", "2025-10-27T12:00:00Z", "2025-10-26 02:00", "2025-10-26T02:00:00Z"},
		{"Europe/Dublin", "2025-10-26T00:45:00Z", "01:30", "2025-10-26T01:30:00+01:00"}, // the second is still to come
		{"Europe/Dublin", "2025-10-26T01:45:00Z", "01:30", "!hour-twice"},
		{"Europe/Dublin", "2026-03-29T12:00:00Z", "01:30", "!no-such-time"},
		{"Europe/Berlin", "2026-10-25T12:00:00Z", "02:30", "!hour-twice"},
		{"Europe/Berlin", "2026-10-25T12:00:00Z", "03:00", "2026-10-25T03:00:00+01:00"},
		{"Europe/Berlin", "2026-03-29T12:00:00Z", "02:30", "!no-such-time"},
		{"Australia/Lord_Howe", "2026-04-06T00:00:00Z", "2026-04-05 01:45", "!hour-twice"},
		{"Australia/Lord_Howe", "2026-04-06T00:00:00Z", "2026-04-05 01:15", "2026-04-05T01:15:00+11:00"},
	} {
		zone, err := time.LoadLocation(c.zone)
		if err != nil {
			t.Fatal(err)
		}
		now, err := time.Parse(time.RFC3339, c.now)
		if err != nil {
			t.Fatal(err)
		}
		r := typed.Reader{Now: now, Zone: zone}
		got := r.At(c.said).String()
		if code := refuse.Code(r.Err()); code != "" {
			got = "!" + code
		}
		if got != c.want {
			t.Errorf("%s, %s: %q is %s, want %s", c.zone, c.now, c.said, got, c.want)
		}
		if len(c.said) == len("01:30") {
			continue // of a day to come both are still ahead
		}
		ahead, err := typed.Moment("start", c.said, now.In(zone))
		if got = ahead.Format(time.RFC3339); err != nil {
			got = "!" + refuse.Code(err)
		}
		if got != c.want {
			t.Errorf("%s, %s: ahead, %q is %s, want %s", c.zone, c.now, c.said, got, c.want)
		}
	}
}
