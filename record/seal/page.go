package seal

import (
	"errors"
	"slices"
	"strings"
)

// A Page is a studio's word for what the page of a panel states. Signed, it reads
//
//	backleaf/KB panel page
//	number: KB26-0142-1
//	record: e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855
//	text: 5b3a…  (what package page makes of the page, hashed)
//	pictures: 9f86… 60303…
//	key: MCowBQYDK2VwAyEA11qYAYKxCrfVS/7TyWQHOg7hcvPapiMlrwIaaPcHURo=
//
//	— backleaf/KB AbCd…
//
// The lines stand in this order; the line of pictures is left out where there are none. It has no date: the same page has the same word.
type Page struct {
	Origin   string // see Origin
	Number   string
	Record   Digest    // of the record that the page carries
	Text     Digest    // of what the page states
	Pictures []Digest  // ascending, each once
	Key      PublicKey // set by Sign
}

var pages = word[Page]{
	what: "the page", title: " panel page", wrong: errors.New("not the statement of a page: its lines are not those of one, or not in their order"),
	fields: func(p Page) (string, []field) {
		var pictures []string
		for _, d := range p.Pictures {
			pictures = append(pictures, d.String())
		}
		return p.Origin, []field{{"number", p.Number}, {"record", p.Record.String()}, {"text", p.Text.String()},
			{"pictures", strings.Join(pictures, " ")}, {"key", p.Key.line()}}
	},
	read: func(origin string, v *values) Page {
		p := Page{Origin: origin, Number: v.needed("number"), Record: v.digest("record"), Text: v.digest("text"), Key: v.key("key")}
		for _, s := range strings.Fields(v.of["pictures"]) {
			d, err := ParseDigest(s)
			v.wrong("pictures", err)
			p.Pictures = append(p.Pictures, d)
		}
		if !slices.IsSortedFunc(p.Pictures, compareDigests) {
			v.wrong("pictures", errors.New("the digests are not in their order"))
		}
		return p
	},
}

// Sign returns the statement as a note signed with the key.
func (p Page) Sign(k Key) ([]byte, error) {
	p.Key = k.public()
	return pages.sign(p, k)
}
