package tell_test

import (
	"testing"
	"time"

	"backleaf/record/tell"
)

// A window is told as a painter at the bench needs it: what is open, since
// when; what is over, its end alone; what is far off, the day alone, and one
// day once.
func TestWindow(t *testing.T) {
	now := time.Date(2026, 5, 4, 15, 30, 0, 0, time.UTC)
	at := func(hours float64) time.Time { return now.Add(time.Duration(hours * float64(time.Hour))) }
	var none time.Time
	for _, c := range []struct {
		from, safe, until time.Time
		want              string
	}{
		{at(-1), at(-.5), none, "since 15:00"},
		{at(-1), at(-.5), at(23), "since 15:00, at the latest tomorrow 14:30"},
		{at(-1), none, at(29), "since 14:30, at the latest tomorrow 20:30"},
		{at(-1), none, none, "since 14:30"},
		{at(-.5), at(.5), at(23), "not before 15:00, surely from 16:00, at the latest tomorrow 14:30"},
		{at(1), none, at(2), "between 16:30 and 17:30"},
		{at(48), at(60), none, "not before 6 May 2026, 15:30, surely from 7 May 2026, 03:30"},
		{at(-9000), at(-8999), none, "since 24 April 2025"},
		{at(-9000), at(-8999), at(-8990), "at the latest 25 April 2025"},
		{at(9000), at(13000), none, "not before 14 May 2027, surely from 28 October 2027"},
		{at(9000), at(9001), none, "from 14 May 2027"},
		{none, none, none, ""},
	} {
		if got := tell.English().At(now, time.UTC).Window(c.from, c.safe, c.until); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
