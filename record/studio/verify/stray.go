package verify

import (
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"backleaf/record/pattern"
)

var (
	language = pattern.Of("\x1b[^\x1b]*\x1b") // of a text string in a PDF (ISO 32000-2, 7.9.2.2)
)

// passesForPart reports that some program would take a file for a part of the record,
// or write it over one, by its name: it drops what cannot be seen, ends the name
// at a zero byte, a colon or a final dot, or knows no capitals.
func passesForPart(name string) bool {
	name = language().ReplaceAllString(name, "")
	for _, ends := range []string{"\x00", ":", "\ufffd"} {
		if before, _, _ := strings.Cut(name, ends); isPart(before) {
			return true
		}
	}
	return isPart(name)
}

// isPart compares the letters, digits and marks of a name that can be seen. One
// that was cut for being long is a part's if it begins as one.
func isPart(name string) bool {
	name = strings.Map(func(r rune) rune {
		if unicode.IsGraphic(r) && !unicode.IsSpace(r) && !unicode.Is(unicode.M, r) && !unicode.Is(unicode.Other_Default_Ignorable_Code_Point, r) && r != '\u2800' {
			return unicode.ToLower(r)
		}
		return -1
	}, norm.NFKD.String(name))
	return slices.ContainsFunc(Names, func(n string) bool {
		return strings.TrimRight(name, ".") == n || strings.HasPrefix(name, n) && strings.HasSuffix(name, "...")
	})
}
