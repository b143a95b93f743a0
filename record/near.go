package record

import (
	"slices"
	"strings"
)

// OneOf is a list of words for a refusal of one that is not in it, with the
// nearest.
func OneOf(typed string, list []string) string {
	near := Nearest(typed, list)
	if near != "" {
		near = "; nearest: " + near
	}
	return "one of " + strings.Join(list, ", ") + near
}

// Nearest returns the word of a list that was most likely meant by one that is
// not in it: one that the trade calls so, else the one with the fewest slips of the finger, at most two and a third of its letters, in all of
// it or else in a part between hyphens, else the one with the longest same beginning
// of three letters or more, and of half of it. Empty: none is near.
func Nearest(typed string, list []string) (best string) {
	typed = strings.ToLower(typed)
	if i := slices.IndexFunc(list, func(w string) bool { return called(w, hyphened(typed)) }); i >= 0 {
		return list[i]
	}
	least, longest := 6, 2 // in halves of a slip: a part counts half a slip more than all of it
	for _, w := range list {
		for _, part := range append(strings.Split(w, "-"), w) {
			d := 2 * Slips(typed, part)
			if d/2 >= len(typed)-1 || d/2 > max(1, len(typed)/3) {
				continue
			}
			if part != w {
				d++
			}
			if d < least {
				best, least = w, d
			}
		}
	}
	if best != "" {
		return best
	}
	for _, w := range list {
		n := 0
		for n < min(len(w), len(typed)) && w[n] == typed[n] {
			n++
		}
		if n > longest && 2*n >= len(typed) {
			best, longest = w, n
		}
	}
	return best
}
