package trade

import (
	"regexp"
	"strconv"
	"strings"
	"sync"
)

// Index is a Colour Index generic name: the letters of usage and hue ("PW"
// pigment white, "NBr" natural brown), the number, and the number after the
// colon, which in cadmiums means "extended with barium sulfate", elsewhere
// another form or salt.
type Index struct {
	Letters string
	Number  int
	Suffix  int // 0: none
}

// String writes the name as it is printed: "PY 35:1".
func (i Index) String() string {
	s := i.Letters + " " + strconv.Itoa(i.Number)
	if i.Suffix > 0 {
		s += ":" + strconv.Itoa(i.Suffix)
	}
	return s
}

// base is the name without its suffix, by which the tables know it.
func (i Index) base() string { i.Suffix = 0; return i.String() }

// hues are the letters of the hues, and their words in the long form of a name.
var hues = map[string]string{"w": "W", "y": "Y", "o": "O", "r": "R", "v": "V", "b": "B", "g": "G", "br": "Br", "bk": "Bk", "m": "M",
	"white": "W", "yellow": "Y", "orange": "O", "red": "R", "violet": "V", "blue": "B", "green": "G", "brown": "Br", "black": "Bk", "metal": "M"}

// indexText finds generic names in a text, long or short: "PW 1", "pw1",
// "C.I. Pigment White 1". Letters and number belong together: a bare number is
// none.
var indexText = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)(?:\b(?:c\.?\s?i\.?|colou?r index)\s*)?\b(p|n|pigment|natural)[.\s]*(white|yellow|orange|red|violet|blue|green|brown|black|metal|bk|br|w|y|o|r|v|b|g|m)[.\s-]*0*([1-9][0-9]{0,2})(?:\s?:\s?([1-9][0-9]?))?\b`)
})

// ParseIndex reads one Colour Index generic name, and nothing else beside it.
func ParseIndex(s string) (Index, bool) {
	found, rest := findIndexes(s)
	if len(found) != 1 || strings.TrimSpace(rest) != "" {
		return Index{}, false
	}
	return found[0], true
}

// findIndexes returns the generic names in a text, and the text without them.
func findIndexes(s string) (found []Index, rest string) {
	if len(s) > 1000 {
		return nil, s
	}
	rest = indexText().ReplaceAllStringFunc(s, func(m string) string {
		g := indexText().FindStringSubmatch(m)
		i := Index{Letters: strings.ToUpper(g[1][:1]) + hues[strings.ToLower(g[2])]}
		i.Number, _ = strconv.Atoi(g[3])
		i.Suffix, _ = strconv.Atoi(g[4])
		found = append(found, i)
		return " "
	})
	return found, rest
}
