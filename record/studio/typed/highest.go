package typed

import (
	"fmt"
	"strings"

	"backleaf/record"
	"backleaf/record/studio/refuse"
)

// NoneLater says that no label bears a number that the copy does not know.
const NoneLater = "none"

// Highest reads the highest numbers on labels, one a year, or [NoneLater]. They
// must be said wherever a journal goes on from an older copy.
func Highest(w *record.Workshop, highest []string) (used []record.Number, err error) {
	if len(highest) == 0 {
		last := record.Number("")
		if n := len(w.Panels); n > 0 {
			last = w.Panels[n-1].Number
		}
		return nil, refuse.Input("highest", "highest-on-labels", "a panel that was numbered after this copy was made would share its number with the next one").With(record.With("last", last))
	}
	for _, s := range highest {
		if s == NoneLater && len(highest) == 1 {
			return nil, nil
		}
		n, err := record.ParseNumber(s, w.Studio.NAAN)
		if err == nil && !strings.HasPrefix(string(n), w.Studio.Mark) {
			err = fmt.Errorf("%s does not begin with the studio's mark %s", n, w.Studio.Mark)
		}
		if err != nil {
			return nil, refuse.Input("highest", "highest-on-labels", "%w", err)
		}
		used = append(used, n)
	}
	return used, nil
}
