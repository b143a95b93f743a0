package paper

import (
	"strings"
	"unicode"
)

// units are the signs that are not parted from the number before them: those
// of ISO 80000, and the customary ones of painters and printers.
var units = map[string]bool{}

func init() {
	for _, u := range strings.Fields("mm cm m µm nm mil in ft yd g kg mg oz lb mL ml L l fl qt gal h min s d lux lx °C °F K % ‰ pt dpi ppi " +
		"g/m² oz/yd² g/mL kg/m³ g/cm³ cm² m² µW/lm threads/cm threads/in") {
		units[u] = true
	}
}

// hold marks the spaces at which no line may end, and what belongs to an address.
func hold(glyphs []glyph) {
	for from := 0; from < len(glyphs); {
		to := from
		for to < len(glyphs) && !isBlank(glyphs[to].text) && !glyphs[to].lineBreak() {
			to++
		}
		word := wordOf(glyphs[from:to])
		if isAddress(word) {
			for i := from; i < to; i++ {
				glyphs[i].link = true
			}
		}
		if from > 1 && isBlank(glyphs[from-1].text) && belongs(glyphs[from-2].first, word) {
			glyphs[from-1].held = true
		}
		from = to + 1
	}
}

func wordOf(glyphs []glyph) string {
	var b strings.Builder
	for _, g := range glyphs {
		b.WriteString(g.text)
	}
	return b.String()
}

// isAddress recognises web and mail addresses.
func isAddress(word string) bool {
	name, host, mail := strings.Cut(word, "@")
	return strings.Contains(word, "://") || mail && name != "" && strings.Contains(host, ".")
}

// belongs reports whether a word goes on with the number before it: it is a
// unit, or a number that no sign parts from it, as in 1 400 and 11 3/4.
func belongs(before rune, word string) bool {
	word, _, _ = strings.Cut(strings.ReplaceAll(word, ThinSpace, NoBreakSpace), NoBreakSpace)
	if !unicode.IsDigit(before) || word == "" {
		return false
	}
	return units[strings.TrimRight(word, ".,;:)]!?")] || unicode.IsDigit([]rune(word)[0])
}

// Held returns a text at whose spaces no line ends.
func Held(text string) string { return strings.ReplaceAll(text, " ", NoBreakSpace) }
