package typed_test

import (
	"testing"
	"time"

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
