package main

import (
	"context"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/papers"
)

func newCertificate(a *app) *cobra.Command {
	var o papers.CertificateOrder
	var asIssued bool
	c := a.passphraseFlag(&cobra.Command{
		Use: "certificate NUMBER -o FILE", Short: "issue the certificate of a finished work, as PDF",
		Long: `Issue the certificate of a finished work: a PDF page to print, sign and hand over.
It carries the record and, if the studio has a key, its signature and proof. Issuing
is written down; a second certificate says which one it replaces, and both stay on
record. No name of a buyer and no price stand on it unless you ask for them. For a
panel reported stolen or lost, discarded or not painted say --anyway.
The file must not be there yet.`,
		Example: `  backleaf certificate 0142 -o low-tide.pdf
  backleaf certificate 0142 -o look.pdf --preview
  backleaf certificate 0142 -o again.pdf --because "the title was misspelt"
  backleaf certificate 0142 -o lost.pdf --as-issued
  backleaf certificate withdraw 0142 --because "lost in the post"`,
		Args: wanted(1, 1, "one panel"),
		RunE: func(c *cobra.Command, args []string) error {
			o.Panel = args[0]
			if o.File == "" {
				return usage("", "say -o FILE: where to write the certificate")
			}
			if err := o.Acceptable(); err != nil {
				return err
			}
			if asIssued {
				return a.read(c.Context(), func(s *studio.Session) error {
					e, err := papers.AsIssued(c.Context(), s, o)
					if err == nil {
						a.told("certificate-again", record.With("file", o.File), record.With("panel", e.Panels[0]), record.With("entry", record.EntryRef(e.Seq)))
					}
					return err
				})
			}
			issue := func(s *studio.Session) error {
				o.Key = func(ctx context.Context) (*seal.Key, error) { return keys.Current(ctx, s.Book, holder{a}) }
				made, err := papers.Issue(c.Context(), s, o)
				if err == nil {
					a.sayCertificate(o.File, made)
				}
				return err
			}
			if o.Preview {
				return a.read(c.Context(), issue)
			}
			return a.write(c.Context(), issue)
		},
	})
	f := c.Flags()
	f.StringVarP(&o.File, "output", "o", "", "the PDF file to write")
	f.StringVar(&o.Paper, "paper", "", "a4 or letter (default: the studio's paper)")
	f.StringVar(&o.Buyer, "buyer", "", "print this name as the owner's")
	f.BoolVar(&o.Price, "price", false, "print the price of the last handover")
	f.StringVar(&o.Because, "because", "", "why another certificate is issued")
	f.BoolVar(&o.Anyway, "anyway", false, "also for a panel reported stolen or lost, discarded, or not painted")
	f.BoolVar(&o.Preview, "preview", false, "only look: the page says that it is not issued, and nothing is written down")
	f.BoolVar(&asIssued, "as-issued", false, "write the last one again, byte for byte as it left the studio")
	c.AddCommand(certificateWithdraw(a))
	return c
}

// sayCertificate says what was issued.
func (a *app) sayCertificate(file string, c papers.Certificate) {
	defer a.warn(nil, c.Warnings)
	defer a.warn(nil, c.Photo)
	if c.Entry == 0 {
		a.told("certificate-preview", record.With("file", file), record.With("panel", c.Panel))
		return
	}
	a.told("certificate-written", record.With("entry", record.EntryRef(c.Entry)), record.With("panel", c.Panel), record.With("replaces", record.EntryRef(c.Replaces)))
	if c.SignedBy != nil {
		a.told("file-signed", record.With("file", file), record.With("key", c.SignedBy.Fingerprint().Short()))
	} else {
		a.told("file-not-signed", record.With("file", file))
	}
	a.told("take-back-certificate", record.With("panel", c.Panel))
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
			if err := needs(why, "", "say --because: a reader will ask"); err != nil {
				return err
			}
			return a.write(c.Context(), func(s *studio.Session) error {
				v, err := s.Look(c.Context(), args, nil)
				if err != nil {
					return err
				}
				done, old, err := papers.TakeBack(c.Context(), v, record.Moment(v.Local()), why)
				if err != nil {
					return err
				}
				e := done.Entries[0]
				a.told("certificate-taken-back", record.With("entry", record.EntryRef(e.Seq)), record.With("panel", e.Panels[0]), record.With("of", record.EntryRef(old)), record.With("because", why))
				a.told("another-certificate", record.With("panel", e.Panels[0]))
				return nil
			})
		},
	}
	c.Flags().StringVar(&why, "because", "", "the reason")
	return c
}
