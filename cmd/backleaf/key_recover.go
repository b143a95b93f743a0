package main

import (
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
)

func keyRecover(a *app) *cobra.Command {
	return a.passphraseFlag(&cobra.Command{
		Use: "recover [FILE]", Short: "write the key file again from the words of the recovery sheet",
		Long: `Read the fourteen groups of the recovery sheet from a file or standard input and
write the key file again. It must be the key that the book names.`,
		Example: `  backleaf studio key recover
  backleaf studio key recover words.txt`,
		Args: wanted(0, 1, "at most one file"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.read(c.Context(), func(s *studio.Session) error {
				in := a.in
				if len(args) == 1 && args[0] != "-" {
					f, err := os.Open(args[0])
					if err != nil {
						return fmt.Errorf("cannot read the recovery text: %w", err)
					}
					defer f.Close()
					in = f
				} else {
					a.noted("type-groups")
				}
				text, err := waiting(a, func() ([]byte, error) { return io.ReadAll(io.LimitReader(in, 1<<16)) })
				if err != nil {
					return fmt.Errorf("cannot read the recovery text: %w", err)
				}
				p, err := keys.Recover(c.Context(), s, holder{a}, string(text))
				if err != nil {
					return err
				}
				a.told("key-as-it-was", record.With("file", keys.File(a.path())), record.With("key", p.Fingerprint().Short()))
				return nil
			})
		},
	})
}
