package verify

import (
	"strings"
	"unicode"
)

// alike are scripts whose letters look like one another.
var alike = []*unicode.RangeTable{unicode.Latin, unicode.Greek, unicode.Cyrillic, unicode.Armenian, unicode.Cherokee}

// mixed returns a word that has letters of two scripts which look alike; empty
// if there is none. Nobody writes so who does not mean to pass for another, but
// a word wholly of another script is a word.
func mixed(texts ...string) string {
	for _, word := range strings.FieldsFunc(strings.Join(texts, " "), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsMark(r) }) {
		scripts := 0
		for _, s := range alike {
			if strings.ContainsFunc(word, func(r rune) bool { return unicode.Is(s, r) }) {
				scripts++
			}
		}
		if scripts > 1 {
			return word
		}
	}
	return ""
}
