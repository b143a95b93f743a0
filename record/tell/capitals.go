package tell

import (
	"strings"
	"unicode/utf8"

	"golang.org/x/text/cases"
)

// Capital starts a line with a capital, as the language writes it.
func (c *Catalogue) Capital(s string) string {
	_, n := utf8.DecodeRuneInString(s)
	return c.Upper(s[:n]) + s[n:]
}

// Upper writes a line in capitals, as the language does: in German ß becomes
// SS. The µ of micrometres is a sign and stays.
func (c *Catalogue) Upper(s string) string {
	upper, parts := cases.Upper(c.Tag), strings.Split(s, "µ")
	for i := range parts {
		parts[i] = upper.String(parts[i])
	}
	return strings.Join(parts, "µ")
}
