package certificate

import (
	"errors"
	"fmt"
	"io"
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
	Paper      string          // a4 or letter
	Catalogue  *tell.Catalogue // tell.English if nil
	Buyer      string          // only if the buyer's name is to stand on the page
	Price      string          // only if the price is to stand on the page
	Preview    bool            // says that it is not issued, and holds no files
}

// Draw writes a certificate as a PDF file. Nothing is written if it cannot be
// drawn.
func Draw(w io.Writer, in Input) error {
	pdf, err := draw(in, paper.A3b)
	if err != nil {
		return fmt.Errorf("cannot draw the certificate of %s: %w", in.Panel.Number, err)
	}
	_, err = w.Write(pdf)
	return err
}

func draw(in Input, kind paper.Kind) ([]byte, error) {
	s, ok := papers[in.Paper]
	if !ok {
		return nil, fmt.Errorf("the paper %q is neither a4 nor letter", in.Paper)
	}
	if in.Issued.IsZero() {
		return nil, errors.New("it has no date of issue")
	}
	c, err := newContent(in)
	if err != nil {
		return nil, err
	}
	d := &paper.Document{Info: paper.Info{
		Title:    c.words.FileTitle.With("number", c.number, "title", c.title),
		Author:   c.maker,
		Subject:  string(c.words.FileSubject),
		Language: c.language,
		Created:  in.Issued,
	}}
	first, err := c.layPage(s)
	if err != nil {
		return nil, err
	}
	if first.plan.moved != 0 {
		// How many pages the rest needs is known when it is laid.
		trial := &paper.Document{Info: paper.Info{}}
		trial.Page(s.width, s.height)
		if err := c.layRest(trial, s, first.plan); err != nil {
			return nil, err
		}
		c.total = trial.Pages()
		if first, err = c.layPage(s); err != nil {
			return nil, err
		}
	}
	shapes, err := first.shapes()
	if err != nil {
		return nil, err
	}
	d.Page(s.width, s.height).Draw(shapes...)
	if first.plan.moved != 0 {
		if err := c.layRest(d, s, first.plan); err != nil {
			return nil, err
		}
	}
	if kind != paper.A3b {
		return d.Finish(kind) // without the files, for the tests
	}
	return d.Finish(kind, c.attachments()...)
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
	out := []pdf.Attachment{file("record.json", "application/json", c.words.RecordFile, pdf.Source, d.Record)}
	if c.signed() {
		out = append(out,
			file("record.sig", "application/octet-stream", c.words.SignatureFile, pdf.Supplement, d.Signature),
			file("studio.pem", "application/x-pem-file", c.words.KeyFile, pdf.Supplement, d.Key.PEM()),
			file("head.txt", "text/plain", c.words.HeadFile, pdf.Supplement, d.Head),
			file("proof.json", "application/json", c.words.Proof, pdf.Supplement, d.Proof))
	}
	return out
}

func (c *content) signed() bool { return len(c.in.Deed.Signature) > 0 && !c.in.Preview }

func tooLong(err error) bool { return errors.Is(err, paper.ErrTooLong) }
