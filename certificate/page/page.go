package page

import (
	"bytes"
	"fmt"
	"slices"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/tell"
)

// Input is what a page is drawn from.
type Input struct {
	Workshop *record.Workshop
	Panel    *record.Panel
	// Deed is the record that the page carries. Without a signature it says
	// that there is none.
	Deed deed.Deed
	Key  *seal.Key // signs what the page states; nil if the studio has none
	// Photograph is the file of the photograph of the front, nil if none is to
	// be shown; Withheld says that there is one.
	Photograph []byte
	Withheld   bool
	Catalogue  *tell.Catalogue // tell.English if nil
}

// A Page is a file with the assets that it names.
type Page struct {
	HTML   []byte
	Assets []Asset
}

// Draw draws the page of a panel.
func Draw(in Input) (Page, error) {
	p, err := draw(in)
	if err != nil {
		return Page{}, fmt.Errorf("cannot draw the page of %s: %w", in.Panel.Number, err)
	}
	return p, nil
}

func draw(in Input) (Page, error) {
	if in.Catalogue == nil {
		in.Catalogue = tell.English()
	}
	var p Page
	c, err := newContent(in, &p)
	if err != nil {
		return p, err
	}
	if p.HTML, err = fill(panelPage, c); err != nil || !c.Signed {
		return p, err
	}
	// The signed word is no part of what is stated, so it is put in afterwards.
	stated, err := Stated(p.HTML)
	if err != nil {
		return p, err
	}
	word := seal.Page{Origin: c.origin, Number: string(in.Panel.Number), Record: seal.DigestOf(in.Deed.Record), Text: stated}
	for _, a := range p.Assets {
		if a.picture {
			word.Pictures = append(word.Pictures, a.digest())
		}
	}
	slices.SortFunc(word.Pictures, func(a, b seal.Digest) int { return bytes.Compare(a[:], b[:]) })
	note, err := word.Sign(*in.Key)
	if err != nil {
		return p, err
	}
	if c.Data, err = data(in.Deed, note); err != nil {
		return p, err
	}
	p.HTML, err = fill(panelPage, c)
	return p, err
}
