package main

import (
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
		Use: "verify", Short: "read the whole book back and check that it holds",
		Example: `  backleaf verify
  backleaf --book backup.sqlite verify`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.read(c.Context(), func(b *book.Book) error { return a.verifyBook(c, b) })
		},
	}
}

// verifyBook checks the journal, its look-up tables and the photographs.
func (a *app) verifyBook(c *cobra.Command, b *book.Book) error {
	r, err := b.Verify(c.Context(), a.progress("entries"))
	if err != nil {
		return err
	}
	w, err := b.Workshop(c.Context())
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
