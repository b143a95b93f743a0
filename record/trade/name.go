package trade

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// spelled brings a name to the form in which the tables are searched: lower
// case without accents, ß as ss, signs as spaces, so that "Bleiweiß",
// "BLEIWEISS" and "céruse", "ceruse" are one each.
func spelled(s string) []string {
	var b strings.Builder
	for _, r := range norm.NFD.String(strings.ToLower(s)) {
		switch {
		case r == 'ß':
			b.WriteString("ss")
		case unicode.Is(unicode.Mn, r):
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(r)
		default:
			b.WriteByte(' ')
		}
	}
	return strings.Fields(b.String())
}

// cancelling are the words that take a name back: what is in the tube is then
// open, and so is what the name says.
var cancelling = map[string]bool{"hue": true, "tone": true, "ton": true, "farbton": true, "shade": true, "nuance": true, "imit": true, "imitation": true, "imitat": true,
	"substitute": true, "substitut": true, "ersatz": true, "new": true, "extra": true, "permanent": true, "free": true, "frei": true, "sans": true, "ohne": true, "without": true}

// cancellingEnds are the same at the end of a German compound whose beginning
// the tables know: "Kadmiumrotton", but not "Charlton".
var cancellingEnds = []string{"ton", "frei", "freie", "freies", "freier", "freien", "free", "ersatz", "imitat", "imitation", "substitut"}

func cancelled(words []string) bool {
	for _, w := range words {
		if cancelling[w] {
			return true
		}
		for _, end := range cancellingEnds {
			base, ok := strings.CutSuffix(w, end)
			if _, known := byName()[base]; ok && base != "" && (known || stemmed(base) != nil) {
				return true
			}
		}
	}
	return false
}

// parted splits a name that joins several: "lead white + zinc white".
func parted(s string) []string {
	return strings.FieldsFunc(strings.NewReplacer(" and ", "+", " und ", "+", " et ", "+", "&", "+", ";", "+").Replace(s), func(r rune) bool { return r == '+' })
}
