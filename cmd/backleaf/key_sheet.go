package main

import (
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
)

func keySheet(a *app) *cobra.Command {
	return a.passphraseFlag(&cobra.Command{
		Use: "recovery-sheet FILE", Short: "write a page from which the key can be made again",
		Long: `Write a PDF page with the secret of the key in letters and as a QR symbol. Whoever
reads it signs as the studio, passphrase or not: print it on a printer of your own,
put it where your papers are safest, and delete the file.`,
		Example: `  backleaf studio key recovery-sheet sheet.pdf
  backleaf studio key recovery-sheet /media/usb/sheet.pdf --passphrase-file ~/passphrase`,
		Args: wanted(1, 1, "the PDF file to write"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.withKey(c.Context(), func(s *studio.Session, k seal.Key) error {
				w, err := s.Book.WorkshopOf(c.Context())
				if err != nil {
					return err
				}
				pdf, err := keys.Sheet(w.Studio, k, a.now().In(studio.Zone(w.Studio)))
				if err != nil {
					return err
				}
				err = safefile.Create(args[0], 0o600, func(f *os.File) error { _, err := f.Write(pdf); return err })
				if err != nil {
					return fmt.Errorf("cannot write the recovery sheet: %w", err)
				}
				a.told("recovery-sheet", record.With("file", args[0]), record.With("key", k.Public().Fingerprint().Short()))
				a.told("recovery-sheet-is-key")
				return nil
			})
		},
	})
}
