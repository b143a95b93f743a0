package verify

import (
	"fmt"
	"regexp"
	"strings"

	"backleaf/record"
	"backleaf/record/deed"
)

var arkPrefix = regexp.MustCompile(`(?i)ark:/?([0-9bcdfghjkmnpqrstvwxz]{5})/`)

// Typed is the number in the text of a symbol: all of it, or what a link ends
// with.
func Typed(text string) string { return text[strings.LastIndexByte(text, '/')+1:] }

// symbol checks what the QR symbol of a label or certificate says: a number,
// or a link that ends with one.
func (c Checker) symbol(text string) (out []deed.Result) {
	say := func(v deed.Verdict, format string, args ...any) {
		out = append(out, deed.Result{Verdict: v, Text: fmt.Sprintf(format, args...)})
	}
	naan := ""
	if m := arkPrefix.FindStringSubmatch(text); m != nil {
		naan = strings.ToLower(m[1])
	}
	if c.Witness != nil {
		naan = c.Witness.NAAN()
	}
	n, err := record.ParseNumber(Typed(text), naan)
	if err != nil {
		say(deed.Fails, "what it says: %v", err)
		return out
	}
	say(deed.Holds, "%s is a panel number, not mistyped", n)
	if c.Witness == nil {
		say(deed.Unknown, "what panel that is: the studio's book is not here")
	} else {
		out = append(out, c.Witness.Symbol(n, text)...)
	}
	say(deed.Unknown, "whether this is that panel: a label can be copied; compare it with the record")
	return out
}
