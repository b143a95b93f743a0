package certificate

import (
	"errors"
	"fmt"
	"image"
	"time"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/paper"
	"backleaf/record/pdf"
	"backleaf/record/tell"
)

// Input is what a certificate is drawn from.
type Input struct {
	Workshop *record.Workshop
	Panel    *record.Panel
	// Deed is the record and what proves it. Without a signature the page says
	// that there is none.
	Deed   deed.Deed
	Issued time.Time // in the studio's time zone
	// Replaces is the date of the certificate that this one replaces.
	Replaces record.When
	// Photograph returns the file of a kept photograph. What it returns must
	// have the digest on record.
	Photograph func(record.Photograph) ([]byte, error)
	Mark       image.Image     // of the studio, for the head of the front; nil: it has none
	Paper      string          // a4 or letter
	Catalogue  *tell.Catalogue // tell.English if nil
	Buyer      string          // only if the buyer's name is to stand on the page
	Price      string          // only if the price is to stand on the page
	Preview    bool            // says that it is not issued, and holds no files
}

// A Drawn is a certificate as a PDF file, with what is to be known of its
// photograph before it is printed.
type Drawn struct {
	PDF   []byte
	Photo Photo
}

// Draw draws a certificate, a preview with the very layout that will be issued.
func Draw(in Input) (Drawn, error) {
	out, err := draw(in, paper.A3b)
	if err != nil {
		return Drawn{}, fmt.Errorf("cannot draw the certificate of %s: %w", in.Panel.Number, err)
	}
	return out, nil
}

func draw(in Input, kind paper.Kind) (Drawn, error) {
	s, ok := papers[in.Paper]
	if !ok {
		return Drawn{}, fmt.Errorf("the paper %q is neither a4 nor letter", in.Paper)
	}
	if in.Issued.IsZero() {
		return Drawn{}, errors.New("it has no date of issue")
	}
	c, err := newContent(in)
	if err != nil {
		return Drawn{}, err
	}
	d := &paper.Document{Info: paper.Info{
		Title:    c.words.T("file-title").With("number", c.number, "title", c.title),
		Author:   c.maker,
		Subject:  string(c.words.T("file-subject")),
		Language: c.teller.Catalogue().Tag.String(),
		Created:  in.Issued,
	}}
	at, err := c.pages(d, s)
	if err != nil {
		return Drawn{}, err
	}
	var files []pdf.Attachment
	if kind == paper.A3b {
		files = c.attachments()
	}
	out := Drawn{Photo: c.photo.facts(at, in.Panel.Size())}
	out.PDF, err = d.Finish(kind, files...)
	return out, err
}

// pages lays front, reverse, and what the reverse has no room for.
func (c *content) pages(d *paper.Document, s sheet) (placed, error) {
	at := placed{}
	pages := 2
	_, p, err := c.reverse(s, pages)
	if err != nil {
		return at, err
	}
	if p != 0 {
		// How many pages the rest needs is known when it is laid.
		trial := &paper.Document{}
		trial.Page(s.width, s.height)
		trial.Page(s.width, s.height)
		if err := c.rest(trial, s, p, 3); err != nil {
			return at, err
		}
		pages = trial.Pages()
	}
	back, p, err := c.reverse(s, pages)
	if err != nil {
		return at, err
	}
	front, at, err := c.front(s, pages)
	for tooLong(err) && c.shorten() {
		front, at, err = c.front(s, pages)
	}
	if err != nil {
		return at, err
	}
	if c.in.Preview { // in the margin, where it moves nothing
		b, err := paper.Compose(s.inner(), paper.Span{Style: strong, Text: string(c.words.T("preview"))})
		if err != nil {
			return at, err
		}
		front = append([]paper.Shape{paper.Text{X: s.middle(), Y: s.top / 2, Block: b, Align: paper.Centre}}, front...)
	}
	d.Page(s.width, s.height).Draw(front...)
	d.Page(s.width, s.height).Draw(back...)
	if p != 0 {
		return at, c.rest(d, s, p, pages)
	}
	return at, nil
}

// attachments are the files that prove the record.
func (c *content) attachments() []pdf.Attachment {
	if c.in.Preview || len(c.in.Deed.Record) == 0 {
		return nil
	}
	file := func(name, kind string, what tell.Message, relation pdf.Relation, data []byte) pdf.Attachment {
		return pdf.Attachment{Name: name, MIME: kind, Description: string(what), Relation: relation, Modified: c.in.Issued, Data: data}
	}
	d := c.in.Deed
	out := []pdf.Attachment{file("record.json", "application/json", c.words.T("record-file"), pdf.Source, d.Record)}
	if c.signed() {
		out = append(out,
			file("record.sig", "application/octet-stream", c.words.T("signature-file"), pdf.Supplement, d.Signature),
			file("studio.pem", "application/x-pem-file", c.words.T("key-file"), pdf.Supplement, d.Key.PEM()),
			file("head.txt", "text/plain", c.words.T("head-file"), pdf.Supplement, d.Head),
			file("proof.json", "application/json", c.words.T("proof"), pdf.Supplement, d.Proof))
	}
	return out
}

func tooLong(err error) bool { return errors.Is(err, paper.ErrTooLong) }
