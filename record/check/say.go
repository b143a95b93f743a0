package check

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"backleaf/record"
)

// days puts a span of time in round words: "20 min", "3 h", "2 days".
func days(d time.Duration) string {
	switch {
	case d < 0:
		return "no time"
	case d < 2*time.Hour:
		return fmt.Sprintf("%d min", int(d.Minutes()))
	case d < 2*day:
		return fmt.Sprintf("%d h", int(d.Hours()))
	case d < 60*day:
		return fmt.Sprintf("%d days", int(d.Hours()/24))
	default:
		return fmt.Sprintf("%d months", int(d.Hours()/24/30.44))
	}
}

// asRecorded repeats a recorded time: "1 week", "2 weeks", "36 h".
func asRecorded(d record.Duration) string {
	if u := d.Unit(); d.Number() == "1" && (u == "weeks" || u == "months") {
		return "1 " + strings.TrimSuffix(u, "s")
	}
	return d.String()
}

// trimFloat prints a figure without needless zeros.
func trimFloat(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// count puts a number of things in words: "1 coat", "2 coats".
func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

func faceIs(f record.Face) string {
	if f == record.Edges {
		return "the edges are"
	}
	return "the " + string(f) + " is"
}

func spanText(microns int64) string { return millimetres(float64(microns)) + " mm" }
