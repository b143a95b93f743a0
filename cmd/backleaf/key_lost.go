package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
)

func keyLost(a *app) *cobra.Command {
	var because string
	c := &cobra.Command{
		Use: "lost", Short: "declare the key lost or stolen",
		Long: `Write into the book that the key is lost or in wrong hands. A lost key can sign for
no successor, so tell buyers the fingerprint of the new one by another way.`,
		Example: `  backleaf studio key lost --because "the computer was stolen"
  backleaf studio key lost --because "the passphrase is forgotten"`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			if err := needs(because, "for example --because \"the computer was stolen\"", "say --because"); err != nil {
				return err
			}
			return a.write(c.Context(), func(s *studio.Session) error {
				l, err := keys.Lose(c.Context(), s, because)
				if l.Entry != 0 {
					a.told("key-lost", record.With("entry", record.EntryRef(l.Entry)), record.With("key", l.Key.Fingerprint().Short()))
				}
				if err != nil {
					return err
				}
				if l.File != "" {
					a.told("key-file-old", record.With("file", l.File))
				}
				a.told("next-key")
				return nil
			})
		},
	}
	c.Flags().StringVar(&because, "because", "", "why")
	return c
}
