package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"time"

	"github.com/spf13/cobra"

	"backleaf/certificate"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/check"
	"backleaf/record/deed"
	"backleaf/record/safefile"
	"backleaf/record/seal"
)

// issuing is what the command line says of a certificate.
type issuing struct {
	file, paper, buyer, because string
	price, preview              bool
}

func newCertificate(a *app) *cobra.Command {
	var o issuing
	c := a.passphraseFlag(&cobra.Command{
		Use: "certificate NUMBER -o FILE", Short: "issue the certificate of a finished work, as PDF",
		Long: `Issue the certificate of a finished work: a PDF page to print, sign and hand over.
It carries the record and, if the studio has a key, its signature and proof. Issuing
is written down; a second certificate says which one it replaces, and both stay on
record. No name of a buyer and no price stand on it unless you ask for them.
The file must not be there yet.`,
		Example: `  backleaf certificate 0142 -o low-tide.pdf
  backleaf certificate 0142 -o look.pdf --preview
  backleaf certificate 0142 -o again.pdf --because "the title was misspelt"
  backleaf certificate withdraw 0142 --because "lost in the post"`,
		Args: wanted(1, 1, "one panel"),
		RunE: func(c *cobra.Command, args []string) error {
			if o.file == "" {
				return usage("", "say -o FILE: where to write the certificate")
			}
			if o.paper != "" && o.paper != "a4" && o.paper != "letter" {
				return usage("", "--paper: %q is neither a4 nor letter", o.paper)
			}
			for _, t := range []struct{ flag, text string }{{"--buyer", o.buyer}, {"--because", o.because}} {
				if err := record.CheckLine(t.text); err != nil {
					return usage("", "%s: %v", t.flag, err)
				}
			}
			if _, err := os.Lstat(o.file); err == nil {
				return hinted(fmt.Errorf("cannot write %s: %w", o.file, fs.ErrExist), "choose another name; nothing was written")
			}
			if o.preview {
				return a.read(c.Context(), func(b *book.Book) error { return a.certify(c.Context(), b, args[0], o) })
			}
			return a.write(c.Context(), func(b *book.Book) error { return a.certify(c.Context(), b, args[0], o) })
		},
	})
	f := c.Flags()
	f.StringVarP(&o.file, "output", "o", "", "the PDF file to write")
	f.StringVar(&o.paper, "paper", "", "a4 or letter (default: the studio's paper)")
	f.StringVar(&o.buyer, "buyer", "", "print this name as the owner's")
	f.BoolVar(&o.price, "price", false, "print the price of the last handover")
	f.StringVar(&o.because, "because", "", "why another certificate is issued")
	f.BoolVar(&o.preview, "preview", false, "only look: the page says that it is not issued, and nothing is written down")
	c.AddCommand(certificateWithdraw(a))
	return c
}

// certify draws a certificate and, unless it is a preview, issues it.
func (a *app) certify(ctx context.Context, b *book.Book, typed string, o issuing) error {
	s, err := a.look(ctx, b, &bench{}, []string{typed})
	if err != nil {
		return err
	}
	if len(s.panels) != 1 {
		return usage("", "one certificate speaks of one panel, not of %d", len(s.panels))
	}
	n := s.panels[0]
	s.now = s.now.In(s.zone).Truncate(time.Second)
	if s.shop, err = b.Workshop(ctx); err != nil { // amounts are shared by all panels of an entry
		return err
	}
	p := s.shop.Panel(n)
	if err := certifiable(p); err != nil {
		return err
	}
	in := certificate.Input{Workshop: s.shop, Panel: p, Issued: s.now, Paper: orElse(orElse(o.paper, s.shop.Studio.Paper), "a4"), Buyer: o.buyer, Preview: o.preview,
		Photograph: func(ph record.Photograph) ([]byte, error) { return keptPhoto(b.Path(), ph) }}
	if o.price {
		if in.Price, err = lastPrice(ctx, b, p); err != nil {
			return err
		}
	}
	entry := record.Issued{Reason: o.because}
	if old, ok := record.Latest[record.Issued](p); ok {
		entry.Replaces, in.Replaces = old.Seq, old.At
		if !old.At.Known() {
			in.Replaces = old.Written
		}
	}
	if o.preview {
		pdf, err := drawn(in)
		if err != nil {
			return err
		}
		if err := safefile.Create(o.file, 0o644, func(f *os.File) error { _, err := f.Write(pdf); return err }); err != nil {
			return err
		}
		a.say("%s  preview of the certificate of %s; nothing was issued", o.file, n)
		return nil
	}
	key, err := a.studioKey(ctx, b)
	if err != nil {
		return err
	}
	if in.Deed, err = deed.Make(ctx, b, s.shop, p, check.Panel(s.shop, p, s.now), key, s.now); err != nil {
		return hinted(err, "nothing was written")
	}
	pdf, err := drawn(in)
	if err != nil {
		return hinted(err, "nothing was written")
	}
	return a.issue(ctx, b, s, o, in, entry, pdf)
}

func drawn(in certificate.Input) ([]byte, error) {
	var pdf bytes.Buffer
	err := certificate.Draw(&pdf, in)
	return pdf.Bytes(), err
}

// issue writes the file, the entry, and only then gives the file its name: a
// certificate that can be seen has its entry. An entry without its file is
// told; it does no harm, since the next certificate replaces it.
func (a *app) issue(ctx context.Context, b *book.Book, s *benchState, o issuing, in certificate.Input, entry record.Issued, pdf []byte) error {
	r, err := deed.Read(in.Deed.Record)
	if err != nil {
		return err
	}
	entry.Record = seal.DigestOf(in.Deed.Record).String()
	var done []record.Entry
	err = safefile.Create(o.file, 0o644, func(f *os.File) error {
		if _, err := f.Write(pdf); err != nil {
			return err
		}
		if err := f.Sync(); err != nil {
			return err
		}
		// The entry follows the head that was signed, or it is not written.
		var err error
		done, err = b.Append(ctx, s.now, record.Entry{Seq: r.Size + 1, At: record.Moment(s.now), Panels: s.panels, Body: entry})
		return err
	})
	switch {
	case err != nil && done != nil:
		return hinted(fmt.Errorf("the certificate is on record as E%d, but its file is not there: %w", done[0].Seq, err),
			fmt.Sprintf("issue it again: backleaf certificate %s -o FILE --because \"E%d was not written\"", in.Panel.Number, done[0].Seq))
	case err != nil:
		return hinted(err, "nothing was issued; try again")
	}
	if len(in.Deed.Head) > 0 {
		if err := b.KeepHead(ctx, book.Head{Size: r.Size, Root: r.Root, Note: string(in.Deed.Head)}); err != nil {
			return fmt.Errorf("the certificate is issued; its head could not be kept: %w", err)
		}
	}
	line := fmt.Sprintf("E%d  certificate issued: %s", done[0].Seq, in.Panel.Number)
	if entry.Replaces != 0 {
		line += fmt.Sprintf(", replaces that of E%d", entry.Replaces)
	}
	a.say("%s", line)
	if len(in.Deed.Signature) > 0 {
		a.say("%s  signed with key %s …", o.file, in.Deed.Key.Fingerprint().Short())
	} else {
		a.say("%s  not signed: the studio has no key (\"backleaf studio key new\" makes one)", o.file)
	}
	a.say("to take it back: backleaf certificate withdraw %s --because \"…\"", in.Panel.Number)
	return nil
}

// certifiable refuses what a certificate cannot speak of.
func certifiable(p *record.Panel) error {
	if d, ok := p.Discarded(); ok {
		return fmt.Errorf("%s was discarded: %s", p.Number, d.Body.Because)
	}
	st := p.Stage()
	if st != record.StagePainted && st != record.StageVarnished && p.Description().Title == "" {
		return hinted(fmt.Errorf("%s is no finished work: neither paint nor a title is on record", p.Number),
			"\"backleaf paint\" and \"backleaf panel describe\" write them down; a blank panel has its label")
	}
	return nil
}

// keptPhoto reads the file of a photograph.
func keptPhoto(bookPath string, p record.Photograph) ([]byte, error) {
	path := photoPath(bookPath, p)
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, hinted(fmt.Errorf("cannot read the photograph on record: %w", err),
			"put the file back into the folder \"photographs\" beside the book, or keep another with \"backleaf panel photo\"")
	}
	return data, nil
}

// lastPrice is the price of the last handover, for this panel alone.
func lastPrice(ctx context.Context, b *book.Book, p *record.Panel) (string, error) {
	ps, err := partings(ctx, b, p)
	if err != nil {
		return "", err
	}
	for i := len(ps) - 1; i >= 0; i-- {
		h := ps[i]
		if h.Taken || h.How == "return" || h.Private.Price == (price{}) {
			continue
		}
		if h.Panels > 1 {
			return "", fmt.Errorf("the price of E%d is for %d panels together; none is on record for %s alone", h.Entry, h.Panels, p.Number)
		}
		return h.Private.Price.String(), nil
	}
	return "", hinted(errors.New("no price is on record for "+string(p.Number)), "\"backleaf handover\" writes one down")
}

func certificateWithdraw(a *app) *cobra.Command {
	var why string
	c := &cobra.Command{
		Use: "withdraw NUMBER", Short: "take an issued certificate back: lost, stolen, wrong",
		Long: `Take the certificate of a panel back. It stays on record as issued and as taken back,
with the reason; whoever checks the paper against the book learns of it.`,
		Example: `  backleaf certificate withdraw 0142 --because "lost in the post"
  backleaf certificate withdraw KB26-0142-1 --because "stolen with the work"`,
		Args: wanted(1, 1, "one panel"),
		RunE: func(c *cobra.Command, args []string) error {
			if why == "" {
				return usage("", "say --because: a reader will ask")
			}
			return a.write(c.Context(), func(b *book.Book) error {
				s, err := a.look(c.Context(), b, &bench{}, args)
				if err != nil {
					return err
				}
				if len(s.panels) != 1 {
					return usage("", "name one panel, not %d", len(s.panels))
				}
				p := s.shop.Panel(s.panels[0])
				old, ok := p.Certificate()
				if !ok {
					return hinted(fmt.Errorf("no certificate of %s stands", p.Number), fmt.Sprintf("\"backleaf show %s\" tells which were issued and taken back", p.Number))
				}
				done, err := b.Append(c.Context(), s.now.In(s.zone), record.Entry{At: s.at, Panels: s.panels, Body: record.Revoked{Certificate: old.Seq, Because: why}})
				if err != nil {
					return fieldHint(err)
				}
				a.say("E%d  certificate of %s taken back (E%d): %s", done[0].Seq, p.Number, old.Seq, why)
				a.say("for another: backleaf certificate %s -o FILE", p.Number)
				return nil
			})
		},
	}
	c.Flags().StringVar(&why, "because", "", "the reason")
	return c
}
