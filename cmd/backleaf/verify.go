package main

import (
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/bounded"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/register"
	"backleaf/record/studio/verify"
)

func newVerify(a *app) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: "verify [FILE]…", Short: "check the book, or a certificate, record, deposit, label or head",
		Long: `Without a FILE: read the whole book back and check that it holds.

FILE is a certificate (PDF), a record folder or single files of one, a deposit, the
text of a label's or certificate's QR symbol, a signed head, or a book; - is standard
input. Said is what holds, what does not, and what cannot be known. No book is
needed; if the studio's book is here, it is asked what became of the certificate.
Exit code 4 if anything does not hold.`,
		Example: `  backleaf verify
  backleaf verify certificate.pdf
  backleaf verify record.json record.sig studio.pem
  zbarimg --raw -q photo.png | backleaf verify -
  backleaf verify backup.sqlite`,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) > 0 {
				return a.verifyPapers(c.Context(), args)
			}
			return a.read(c.Context(), func(s *studio.Session) error { return a.verifyBook(c.Context(), s) })
		},
	})
}

// verifyBook checks the studio's book.
func (a *app) verifyBook(ctx context.Context, s *studio.Session) error {
	v, err := register.CheckBook(ctx, s.Book, a.progress())
	if err != nil {
		return err
	}
	if !a.asJSON {
		a.sayBook(v)
	} else if err := a.sayJSON(v); err != nil {
		return err
	}
	if n := len(v.Bad); n > 0 {
		return &failure{fmt.Errorf("%d of %d photographs and papers are missing or changed", n, v.Photographs+v.Papers), "take them from a backup of the folders \"photographs\" and \"papers\"", exitIntegrity}
	}
	return nil
}

func (a *app) sayBook(v register.BookReport) {
	if v.Newer > 0 {
		a.told("book-newer", record.With("n", v.Newer))
	}
	a.told("book-holds", record.With("entries", v.Entries), record.With("root", v.Root))
	lost := map[string]int{}
	for _, b := range v.Bad {
		lost[b.Folder]++
	}
	if n := v.Photographs; n > 0 {
		a.told("photographs-kept", record.With("n", n), record.With("good", n-lost[kept.Photographs]))
	}
	if n := v.Papers; n > 0 {
		a.told("papers-kept", record.With("n", n), record.With("good", n-lost[kept.Papers]))
	}
	for _, b := range v.Bad {
		a.say("%s", b)
	}
	for _, m := range v.Missing {
		a.told("private-elsewhere", record.With("entry", record.EntryRef(m)))
	}
	for _, m := range v.Remarks {
		a.told("remark", record.With("text", m))
	}
}

// verifyPapers checks what is named and says what holds.
func (a *app) verifyPapers(ctx context.Context, names []string) error {
	var all []verify.Evidence
	for _, n := range names {
		es, err := a.evidence(n)
		if err != nil {
			return err
		}
		all = append(all, es...)
	}
	all, err := verify.Together(all)
	if err != nil {
		return err
	}
	c := verify.Checker{Books: register.Books{Progress: a.progress()}}
	r, err := register.Open(ctx, a.path())
	if err == nil {
		defer r.Close()
		c.Witness = r
	} else if !errors.Is(err, book.ErrNoBook) || a.bookPath != "" {
		return err
	}
	papers, failed, err := c.Check(ctx, all)
	if err != nil {
		return err
	}
	if err := a.sayPapers(papers); err != nil {
		return err
	}
	if failed > 0 {
		return &failure{errors.New("not everything holds"), "", exitIntegrity}
	}
	return nil
}

// evidence reads a file or folder, or standard input for "-".
func (a *app) evidence(name string) ([]verify.Evidence, error) {
	if name != "-" {
		return verify.Open(name)
	}
	data, err := waiting(a, func() ([]byte, error) { return bounded.Read(a.in, verify.MaxPaper) })
	if err != nil {
		return nil, fmt.Errorf("cannot read standard input: %w", err)
	}
	return verify.Read("standard input", data), nil
}

func (a *app) sayPapers(views []verify.Paper) error {
	if a.asJSON {
		return a.sayJSON(views)
	}
	for _, v := range views {
		a.say("%s", v.Name)
		for _, r := range v.Results {
			a.say("  %-15s  %s", r.Verdict, r.Text)
		}
	}
	return nil
}
