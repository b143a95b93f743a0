package page

import (
	"backleaf/record"
	"backleaf/record/tell"
)

// frame is what every page of a site has.
type frame struct {
	Language    string
	WindowTitle string
	Style, Icon string // addresses
	Script      string // nothing for a page with nothing to check
	NoIndex     bool   // not for lists of search engines
}

// newFrame names style and script from a place; up leads from there to the
// folder of the site.
func newFrame(c *tell.Catalogue, up string, p *Page) (frame, error) {
	css, sign := asset(".css", style), asset(".svg", icon)
	js, err := scriptAsset(c)
	p.Assets = append(p.Assets, css, sign, js)
	at := up + Assets + "/"
	return frame{Language: c.Tag.String(), Style: at + css.Name, Icon: at + sign.Name, Script: at + js.Name}, err
}

// plain is a page without a record: a heading and paragraphs.
type plain struct {
	frame
	Kind, Heading string
	Paragraphs    []string
	Links         []Link
}

// Link leads to the page of a panel.
type Link struct{ URL, Text, Note string }

func drawPlain(c *tell.Catalogue, up string, x plain) (Page, error) {
	var p Page
	f, err := newFrame(c, up, &p)
	if err != nil {
		return p, err
	}
	p.Assets = p.Assets[:2] // without the script
	f.Script, f.WindowTitle, f.NoIndex = "", x.Heading, x.Links == nil
	if x.Kind != "" {
		f.WindowTitle += ", " + x.Kind
	}
	x.frame = f
	p.HTML, err = fill(plainPage, x)
	return p, err
}

// TakenBack draws the page of a panel that the maker shows no more.
func TakenBack(c *tell.Catalogue, w *record.Workshop, panel *record.Panel, on record.When) (Page, error) {
	t := tell.New(c, w, panel)
	return drawPlain(c, "../", plain{Kind: c.Page.Panel.With("number", t.Number()), Heading: string(c.Page.TakenBack),
		Paragraphs: []string{c.Page.TakenBackText.With("date", t.Day(on), "maker", w.Studio.Maker, "contact", contact(w.Studio))}})
}

// NotFound draws the page for an address without a panel. up leads from any
// place of the host to the folder of the site.
func NotFound(c *tell.Catalogue, s record.Studio, sample record.Number, up string) (Page, error) {
	words := c.Page
	return drawPlain(c, up, plain{Heading: string(words.NotFound), Paragraphs: []string{string(words.NotFoundText),
		words.NotFoundHow.With("sample", string(sample)),
		c.Fill(words.NotFoundAsk, tell.Told("maker", s.Maker), tell.Told("contact", s.Contact))}})
}

// LinkTo is what stands in a list of panels.
func LinkTo(c *tell.Catalogue, w *record.Workshop, panel *record.Panel) Link {
	t := tell.New(c, w, panel)
	return Link{panel.Number.Bare() + "/", t.Title(), t.Number()}
}

// Index draws a list of panels.
func Index(c *tell.Catalogue, s record.Studio, panels []Link) (Page, error) {
	return drawPlain(c, "", plain{Heading: c.Page.Index.With("maker", s.Maker), Paragraphs: []string{string(c.Page.IndexText)}, Links: append([]Link{}, panels...)})
}
