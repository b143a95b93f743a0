package main

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
)

func newVerify(a *app) *cobra.Command {
	return &cobra.Command{
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
			return a.read(c.Context(), func(b *book.Book) error { return a.verifyBook(c.Context(), b) })
		},
	}
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
	photos, bad := 0, 0
	for _, p := range w.Panels {
		for _, ph := range record.Each[record.Photograph](p) {
			photos++
			if err := checkPhoto(a.path(), ph.Body); err != nil {
				bad++
				a.say("E%d  photograph of %s: %v", ph.Seq, p.Number, err)
			}
		}
	}
	a.say("the book holds: %d entries, root %x", r.Entries, r.Root[:])
	if photos > 0 {
		a.say("photographs: %d kept, %d in order", photos, photos-bad)
	}
	for _, m := range r.Missing {
		a.say("E%d  its private part is not in this copy", m)
	}
	for _, m := range r.Remarks {
		a.say("remark: %s", m)
	}
	if bad > 0 {
		return &failure{fmt.Errorf("%d of %d photographs are missing or changed", bad, photos), "take them from a backup of the folder \"photographs\"", exitIntegrity}
	}
	return nil
}

func checkPhoto(bookPath string, p record.Photograph) error {
	f, err := os.Open(photoPath(bookPath, p))
	if err != nil {
		return fmt.Errorf("the file is missing")
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, io.LimitReader(f, maxPhoto+1)); err != nil {
		return err
	}
	if hex.EncodeToString(h.Sum(nil)) != p.SHA256 {
		return fmt.Errorf("the file has been changed")
	}
	return nil
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
