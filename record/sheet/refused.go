package sheet

import (
	"backleaf/record/pattern"
	"cmp"
	"slices"
)

// Kind is what many cells of a column are refused for, with the first of them.
type Kind struct {
	First Refusal
	Count int
}

// varied is what differs between refusals of one kind.
var varied = pattern.Of(`"[^"]*"|; nearest: .*|[0-9]+ cells|panel \S+$`)

// Kinds groups what is refused, the most frequent first.
func (s Sheet) Kinds() []Kind {
	var out []Kind
	at := map[string]int{}
	for _, r := range s.Refused {
		kind := r.Column + ": " + varied().ReplaceAllString(r.Why, "")
		i, seen := at[kind]
		if !seen {
			i, at[kind] = len(out), len(out)
			out = append(out, Kind{First: r})
		}
		out[i].Count++
	}
	slices.SortStableFunc(out, func(a, b Kind) int { return cmp.Compare(b.Count, a.Count) })
	return out
}
