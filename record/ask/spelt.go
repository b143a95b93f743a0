package ask

import (
	"maps"
	"slices"
	"strings"

	"backleaf/record"
)

// shortest is the length from which a word may be misspelt.
const shortest = 5

// vocabulary are all words that a topic knows, with those of the table of
// empty words and of what lies outside.
var vocabulary = map[string]bool{}

// topicsOf names the topics that know a word.
var topicsOf = map[string]string{}

func init() {
	for _, t := range topics {
		for _, p := range slices.Concat(t.phrases, t.about) {
			for _, w := range p {
				vocabulary[w] = true
				if !strings.HasSuffix(topicsOf[w], " "+string(t.code)) {
					topicsOf[w] += " " + string(t.code)
				}
			}
		}
	}
	for _, s := range []map[string]bool{empty, interrogative, outside} {
		maps.Copy(vocabulary, s)
	}
}

// spelt returns the one word of topics or of the record that a misspelt word is nearest to: one slip of
// the finger, in long words two, and none in its first letter. Where words of different topics are as near, it is
// left as it is.
func spelt(w string, recorded map[string]bool) string {
	if len(w) < shortest || vocabulary[w] || recorded[w] {
		return w
	}
	allowed := 1
	if len(w) >= 8 {
		allowed = 2
	}
	near := map[int][]string{}
	for _, words := range []map[string]bool{vocabulary, recorded} {
		for x := range words {
			d := record.Slips(w, x)
			if d > allowed || slices.Contains(near[d], x) {
				continue
			}
			if hazard[x] {
				return w
			}
			if len(x) >= shortest && !outside[x] && x[0] == w[0] {
				near[d] = append(near[d], x)
			}
		}
	}
	for d := 1; d <= allowed; d++ {
		if near[d] == nil {
			continue
		}
		slices.Sort(near[d])
		if !slices.ContainsFunc(near[d], func(x string) bool { return topicsOf[x] != topicsOf[near[d][0]] }) {
			return near[d][0]
		}
		break
	}
	return w
}
