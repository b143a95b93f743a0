package typed

import (
	"fmt"
	"strings"

	"backleaf/record"
	"backleaf/record/studio/refuse"
)

// NoneLater says that no label bears a number that the copy does not know.
const NoneLater = "none"

// Highest reads the highest numbers on labels of a studio of which the copy
// knows the last, one a year, or [NoneLater]. They
// must be said wherever a journal goes on from an older copy.
func Highest(st record.Studio, last record.Number, highest []string) (used []record.Number, err error) {
	if len(highest) == 0 {
		return nil, refuse.Input("highest", "highest-on-labels", "which is the highest number on any label? a panel numbered after this copy was made would share its number with the next one").With(record.With("last", last))
	}
	for _, s := range highest {
		if s == NoneLater && len(highest) == 1 {
			return nil, nil
		}
		n, err := record.ParseNumber(s, st.NAAN)
		if err == nil && !strings.HasPrefix(string(n), st.Mark) {
			err = fmt.Errorf("%s does not begin with the studio's mark %s", n, st.Mark)
		}
		if err != nil {
			return nil, refuse.Input("highest", "highest-on-labels", "%w", err)
		}
		used = append(used, n)
	}
	return used, nil
}
