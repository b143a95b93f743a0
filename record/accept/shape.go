package accept

import (
	"backleaf/record/pattern"
	"regexp"
)

// A Shape is a text with a form of its own. The `is` tag of a field names its
// shape; the published schema states the same pattern.
type Shape struct {
	Pattern string // RE2 syntax, also valid in ECMA-262
	Meaning string // what is expected, in words
	matches func() *regexp.Regexp
}

func shape(expr, meaning string) Shape {
	return Shape{expr, meaning, pattern.Of(expr)}
}

var shapes = map[string]Shape{
	"key":      shape(`^[a-z0-9][a-z0-9.-]{0,39}$`, "lower-case letters, digits, points and hyphens, at most 40"),
	"sha256":   shape(`^[0-9a-f]{64}$`, "a SHA-256 digest in 64 lower-case hex figures"),
	"mark":     shape(`^[BCDFGHJKMNPQRSTVWXZ]{1,4}$`, "one to four capital consonants without L and Y, for example KB"),
	"link":     shape(`^[Hh][Tt][Tt][Pp][Ss]?://[0-9A-Za-z.-]{1,60}(:[0-9]{1,5})?(/[0-9A-Za-z$%*+./:~_?&=-]{0,60})?[/=]$`, "a web address that ends in / or =, like https://example.org/P/"),
	"journal":  shape(`^[0-9bcdfghjkmnpqrstvwxz]{26}$`, "the 26 characters of the name of a journal"),
	"naan":     shape(`^[0-9bcdfghjkmnpqrstvwxz]{5}$`, "five characters of the ARK set"),
	"zone":     shape(`^[A-Za-z][A-Za-z0-9_+/-]{0,63}$`, "a name of the IANA list, like Europe/Riga"),
	"paper":    shape(`^(a4|letter)$`, "a4 or letter"),
	"currency": shape(`^[A-Z]{3}$`, "three capitals, like EUR"),
	"media":    shape(`^image/(jpeg|png)$`, "image/jpeg or image/png"),
	"base64":   shape(`^[A-Za-z0-9+/]{1,400}={0,2}$`, "base64 text"),
}

// Shapes returns a shape by the name in a field's `is` tag.
func Shapes(name string) (Shape, bool) { s, ok := shapes[name]; return s, ok }

// Limits of text, in characters. A field with the tag is:"text" is of several
// lines; all others are of one.
const (
	MaxLine = 300  // names, titles, single lines
	MaxText = 4000 // notes and reports
)
