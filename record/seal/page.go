package seal

import (
	"errors"
	"fmt"
	"slices"
	"strings"
)

const pageTitle = " panel page"

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

var errPage = errors.New("not the statement of a page: its lines are not those of one, or not in their order")

// Sign returns the statement as a note signed with the key.
func (p Page) Sign(k Key) ([]byte, error) {
	if k.private == nil {
		return nil, errors.New("cannot sign the page: there is no key")
	}
	p.Key = k.Public()
	text, err := p.text()
	if err == nil {
		_, err = parsePage(text)
	}
	var msg []byte
	if err == nil {
		msg, err = k.signNote(text)
	}
	if err != nil {
		return nil, fmt.Errorf("cannot sign the page: %w", err)
	}
	return msg, nil
}

// OpenPage reads a page's statement and checks its signature with the key that it names itself.
func OpenPage(msg []byte) (Page, error) {
	text, err := unsignedText(msg)
	if err != nil {
		return Page{}, err
	}
	p, err := parsePage(text)
	if err != nil {
		return Page{}, err
	}
	if _, err := openNote(msg, p.Key); err != nil {
		return Page{}, err
	}
	return p, nil
}

func (p Page) text() (string, error) {
	var pictures []string
	for _, d := range p.Pictures {
		pictures = append(pictures, d.String())
	}
	return formatFields(p.Origin+pageTitle, []field{{"number", p.Number}, {"record", p.Record.String()}, {"text", p.Text.String()},
		{"pictures", strings.Join(pictures, " ")}, {"key", p.Key.line()}})
}

func parsePage(text string) (Page, error) {
	first, values := parseFields(text)
	origin, ok := strings.CutSuffix(first, pageTitle)
	if !ok || !validOrigin(origin) || values["number"] == "" {
		return Page{}, errPage
	}
	p := Page{Origin: origin, Number: values["number"]}
	var err error
	if p.Record, err = ParseDigest(values["record"]); err != nil {
		return Page{}, err
	}
	if p.Text, err = ParseDigest(values["text"]); err != nil {
		return Page{}, err
	}
	for _, s := range strings.Fields(values["pictures"]) {
		d, err := ParseDigest(s)
		if err != nil {
			return Page{}, err
		}
		p.Pictures = append(p.Pictures, d)
	}
	if !slices.IsSortedFunc(p.Pictures, compareDigests) {
		return Page{}, errPage
	}
	if p.Key, err = parsePublicLine(values["key"]); err != nil {
		return Page{}, err
	}
	if again, err := p.text(); err != nil || again != text {
		return Page{}, errPage
	}
	return p, nil
}
