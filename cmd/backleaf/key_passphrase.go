package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
)

func keyPassphrase(a *app) *cobra.Command {
	var file string
	var none bool
	c := a.passphraseFlag(&cobra.Command{
		Use: "passphrase", Short: "set, change or take away the passphrase of the key",
		Example: `  backleaf studio key passphrase
  backleaf studio key passphrase --passphrase-file old --new-passphrase-file new
  backleaf studio key passphrase --none`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.withKey(c.Context(), func(s *studio.Session, k seal.Key) error {
				var pass []byte
				var err error
				switch {
				case none:
				case file != "":
					pass, err = passphraseFrom(file)
				default:
					silent := *a
					silent.passphraseFile, silent.env = "", func(string) string { return "" } // that is the old one
					if pass, err = (holder{&silent}).NewPassphrase(); err == nil && pass == nil {
						err = usage("give --new-passphrase-file FILE, or --none to take it away", "there is no new passphrase")
					}
				}
				if err != nil {
					return err
				}
				if err := k.Replace(keys.File(a.path()), pass); err != nil {
					return err
				}
				if len(pass) == 0 {
					a.told("passphrase-gone", record.With("file", keys.File(a.path())))
				} else {
					a.told("passphrase-new", record.With("file", keys.File(a.path())))
				}
				return nil
			})
		},
	})
	c.Flags().StringVar(&file, "new-passphrase-file", "", "file whose first line is the new passphrase")
	c.Flags().BoolVar(&none, "none", false, "take the passphrase away")
	c.MarkFlagsMutuallyExclusive("none", "new-passphrase-file")
	return c
}
