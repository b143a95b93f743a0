package accept

import (
	"time"

	"backleaf/record"
)

// Ahead reports that something is said to have happened after a moment. A day
// begins at another moment in every place, so an inexact date is ahead only
// where it is so all over the world (UTC+14 is the furthest east).
func Ahead(at record.When, now time.Time) bool {
	first, ok := at.Earliest()
	if _, exact := at.Exact(); !exact {
		first = first.Add(-14 * time.Hour)
	}
	return ok && first.After(now.Add(time.Minute))
}

// NoRoom reports a temperature that no workroom has: most often a slip of the
// unit.
func NoRoom(t record.Temperature) bool {
	mc, ok := t.Millicelsius()
	return ok && (mc < -30_000 || mc > 60_000)
}

// Nothing reports a measured amount of nothing.
func Nothing(a record.Amount) bool {
	mg, mass := a.Milligrams()
	ul, volume := a.Microliters()
	return (mass || volume) && mg+ul == 0
}

func checkRoom(t record.Temperature) error {
	if NoRoom(t) {
		return refuse("temperature", "%s is not the temperature of a room", t)
	}
	return nil
}
