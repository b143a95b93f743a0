package record

import (
	"fmt"
	"strconv"
	"strings"
)

// MixPart is one named thing in a typed mix, before the shelf is asked
// whether the name is a lot or a material.
type MixPart struct {
	Parts int64
	Name  Key
}

// ParseMix reads what a person types for a mix: "sealer", "3 primer + 1
// sealer", "3:primer,1:sealer". Without a figure a name counts one part.
func ParseMix(s string) ([]MixPart, error) {
	bad := func(why string) ([]MixPart, error) {
		return nil, fmt.Errorf("mix %q: %s; expected something like \"sealer\" or \"3 primer + 1 sealer\"", clip(s), why)
	}
	if len(s) > 500 {
		return bad("it is too long")
	}
	var out []MixPart
	for _, term := range strings.FieldsFunc(s, func(r rune) bool { return r == '+' || r == ',' }) {
		words := strings.FieldsFunc(term, func(r rune) bool { return r == ' ' || r == ':' || r == '\t' })
		p := MixPart{Parts: 1}
		switch len(words) {
		case 1:
			p.Name = Key(words[0])
		case 2:
			n, err := strconv.ParseInt(words[0], 10, 64)
			if err != nil || n < 1 || n > 10000 {
				return bad("parts are whole numbers from 1")
			}
			p.Parts, p.Name = n, Key(words[1])
		default:
			return bad("each part is a figure and a name")
		}
		p.Name = Key(strings.ToLower(string(p.Name)))
		if !p.Name.WellFormed() {
			return bad(fmt.Sprintf("%q is not a name on a shelf", clip(string(p.Name))))
		}
		for _, q := range out {
			if q.Name == p.Name {
				return bad(fmt.Sprintf("%s stands twice", p.Name))
			}
		}
		out = append(out, p)
	}
	if len(out) == 0 || len(out) > 20 {
		return bad("it names nothing, or more than 20 things")
	}
	return out, nil
}
