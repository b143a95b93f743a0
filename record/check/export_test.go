package check

import (
	"time"

	"backleaf/record"
)

// Judge is [Panel] without remedies: those cost as much again for each finding
// that falls short.
func Judge(w *record.Workshop, p *record.Panel, now time.Time) []Finding {
	return newSubject(w, p, now).findings()
}
