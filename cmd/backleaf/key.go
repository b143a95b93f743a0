package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/refuse"
)

func newKey(a *app) *cobra.Command {
	return folder("key", "the key that signs the studio's records",
		keyNew(a), keyShow(a), keyPassphrase(a), keyRetire(a), keyLost(a), keySheet(a), keyRecover(a))
}

func keyNew(a *app) *cobra.Command {
	var demo bool
	c := a.passphraseFlag(&cobra.Command{
		Use: "new", Short: "make the studio's signing key",
		Long: `Make the key that signs records and heads. Its file lies beside the book, with the
book's name, and only you can read it; the book holds the public half. Whoever has
the file and its passphrase signs as the studio. Print a recovery sheet next.

If a key file lies there already and the book knows no key, it is taken as it is.`,
		Example: `  backleaf studio key new
  backleaf studio key new --passphrase-file ~/passphrase`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.write(c.Context(), func(s *studio.Session) error {
				m, err := keys.Make(c.Context(), s, holder{a}, demo)
				if err != nil {
					return err
				}
				how := record.Code("open")
				switch {
				case m.WasThere:
					how = "there"
				case m.Passphrase:
					how = "passphrase"
				}
				a.told("key-entered", record.With("entry", record.EntryRef(m.Entry)), record.With("key", m.Key.Fingerprint().Groups()))
				a.told("key-file-made", record.With("file", m.File), record.With("how", how))
				if !m.Key.IsDemo() {
					a.told("next-recovery-sheet")
				}
				return nil
			})
		},
	})
	c.Flags().BoolVar(&demo, "demonstration", false, "the public key of the demonstration")
	c.Flags().MarkHidden("demonstration")
	return c
}

func keyShow(a *app) *cobra.Command {
	var asPEM bool
	c := a.jsonFlag(&cobra.Command{
		Use: "show", Short: "show the studio's keys and their fingerprints",
		Example: `  backleaf studio key show
  backleaf studio key show --pem > studio.pem`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.read(c.Context(), func(s *studio.Session) error {
				ring, err := keys.Ring(c.Context(), s.Book)
				if err != nil {
					return err
				}
				if asPEM {
					p, ok := ring.Current()
					if !ok {
						return refuse.Cannot("no-key", "the studio has no key")
					}
					_, err := a.out.Write(p.PEM())
					return err
				}
				if err := keys.Settle(s.Book.Path(), ring); err != nil {
					return err
				}
				return a.sayKeys(ring)
			})
		},
	})
	c.Flags().BoolVar(&asPEM, "pem", false, "print the current public key as a PEM file")
	return c
}

func (a *app) sayKeys(ring deed.Keyring) error {
	type row struct {
		Fingerprint string        `json:"fingerprint"`
		Standing    deed.Standing `json:"standing"`
		Demo        bool          `json:"demonstration,omitzero"`
	}
	rows := []row{}
	for _, p := range ring.Keys {
		rows = append(rows, row{p.Fingerprint().String(), ring.Standing(p), p.IsDemo()})
	}
	if a.asJSON {
		return a.sayJSON(rows)
	}
	if len(rows) == 0 {
		a.noted("no-key-yet")
		return nil
	}
	for i, p := range ring.Keys {
		a.told("key-standing", record.With("key", p.Fingerprint().Groups()), record.With("standing", record.Code(rows[i].Standing)))
		if rows[i].Demo {
			a.told("key-is-public")
		}
	}
	if _, ok := ring.Current(); ok {
		there := record.Yes
		if !keys.There(a.path()) {
			there = record.No
		}
		a.told("key-file", record.With("file", keys.File(a.path())), record.With("there", there))
	}
	return nil
}
