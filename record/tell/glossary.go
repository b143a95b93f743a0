package tell

import (
	"maps"
	"slices"

	"backleaf/record"
)

// Glossary tells every code that a record can hold in the words of the
// catalogue, for a reader who has no program: codes, rules, words of closed
// lists, kinds of entry, names of fields. The first row names the columns. A
// place in braces stands for a value of that name.
func (c *Catalogue) Glossary() [][]string {
	out := [][]string{{"list", "code", "words"}}
	for _, code := range slices.Sorted(maps.Keys(c.Codes)) {
		out = append(out, []string{"said", code, string(c.Codes[code])})
	}
	for _, name := range slices.Sorted(maps.Keys(c.Rules)) {
		out = append(out, []string{"rule", name, string(c.Rules[name].Title)})
	}
	for _, list := range slices.Sorted(maps.Keys(c.Words)) {
		for _, word := range slices.Sorted(maps.Keys(c.Words[list])) {
			out = append(out, []string{list, word, c.Words[list][word].Text})
		}
	}
	for _, k := range record.Kinds() {
		if m, ok := c.Events[k]; ok {
			out = append(out, []string{"told", string(k), string(m)})
		}
	}
	return out
}
