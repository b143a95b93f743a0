package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
)

func keyRetire(a *app) *cobra.Command {
	var because string
	c := a.passphraseFlag(&cobra.Command{
		Use: "retire", Short: "change to a new key, which the old one names as its successor",
		Long: `Make a new key and let the old one sign for it, so that papers of both can be told
to be of one studio. What the old key signed stays good; it signs nothing more.`,
		Example: `  backleaf studio key retire --because "a new computer"
  backleaf studio key retire --because "the studio moves" --passphrase-file ~/passphrase`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			if err := needs(because, "for example --because \"a new computer\"", "say --because"); err != nil {
				return err
			}
			return a.write(c.Context(), func(s *studio.Session) error {
				x, err := keys.Retire(c.Context(), s, holder{a}, because)
				if err != nil {
					return err
				}
				a.told("key-retired", record.With("made", record.EntryRef(x.Made)), record.With("retired", record.EntryRef(x.Retired)), record.With("key", x.Old.Fingerprint().Short()))
				a.told("signing-key", record.With("key", x.New.Fingerprint().Groups()))
				a.told("key-file-retired", record.With("file", x.OldFile))
				a.told("next-new-sheet")
				return nil
			})
		},
	})
	c.Flags().StringVar(&because, "because", "", "why")
	return c
}
