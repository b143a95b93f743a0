package typed

import (
	"strconv"
	"strings"

	"backleaf/record/studio/refuse"
)

// Entry reads the number of an entry: "27" or "E27".
func Entry(s string) (int64, error) {
	n, err := strconv.ParseInt(strings.TrimPrefix(strings.ToUpper(s), "E"), 10, 64)
	if err != nil || n < 1 {
		return 0, refuse.Unclearly("no-entry-number", "%q is not the number of an entry", s)
	}
	return n, nil
}
