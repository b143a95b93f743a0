package main

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/photos"
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
			return a.read(c.Context(), func(s *studio.Session) error { return a.verifyBook(c.Context(), s.Book) })
		},
	})
}

// bookView is what was found in a book that holds, for a program to read.
type bookView struct {
	Entries     int64    `json:"entries"`
	Root        string   `json:"root"`
	Photographs int      `json:"photographs"`
	Bad         []string `json:"photographs_missing_or_changed"`
	Missing     []int64  `json:"private_parts_elsewhere"`
	Remarks     []string `json:"remarks"`
}

// verifyBook checks the journal, its look-up tables and the photographs.
func (a *app) verifyBook(ctx context.Context, b *book.Book) error {
	r, err := b.Verify(ctx, a.progress("entries"))
	if err != nil {
		return err
	}
	w, err := b.Workshop(ctx)
	if err != nil {
		return err
	}
	v := bookView{Entries: r.Entries, Root: fmt.Sprintf("%x", r.Root[:]), Bad: []string{}, Missing: r.Missing, Remarks: r.Remarks}
	for _, p := range w.Panels {
		for _, ph := range record.Each[record.Photograph](p) {
			v.Photographs++
			if err := photos.Check(a.path(), ph.Body); err != nil {
				v.Bad = append(v.Bad, fmt.Sprintf("E%d  photograph of %s: %v", ph.Seq, p.Number, err))
			}
		}
	}
	if a.asJSON {
		if err := a.sayJSON(v); err != nil {
			return err
		}
	} else {
		a.sayBook(v)
	}
	if n := len(v.Bad); n > 0 {
		return &failure{fmt.Errorf("%d of %d photographs are missing or changed", n, v.Photographs), "take them from a backup of the folder \"photographs\"", exitIntegrity}
	}
	return nil
}

func (a *app) sayBook(v bookView) {
	a.say("the book holds: %d entries, root %s", v.Entries, v.Root)
	if v.Photographs > 0 {
		a.say("photographs: %d kept, %d in order", v.Photographs, v.Photographs-len(v.Bad))
	}
	for _, b := range v.Bad {
		a.say("%s", b)
	}
	for _, m := range v.Missing {
		a.say("E%d  its private part is not in this copy", m)
	}
	for _, m := range v.Remarks {
		a.say("remark: %s", m)
	}
}

// progress returns a function that shows how far long work has come, on a
// terminal only.
func (a *app) progress(what string) func(done, total int64) {
	if !a.isTerminal() {
		return nil
	}
	return func(done, total int64) {
		fmt.Fprintf(a.err, "\r%d of %d %s", done, total, what)
		if done == total {
			fmt.Fprint(a.err, "\r\x1b[K")
		}
	}
}
