package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/deposit"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/verify"
)

func newDeposit(a *app) *cobra.Command {
	var unsigned bool
	c := a.passphraseFlag(&cobra.Command{
		Use: "deposit DIR", Short: "write all of the record into a folder that a stranger can read and check",
		Long: `Write everything on record into the new folder DIR: for an archive, a museum or an
heir. It is a bag (BagIt 1.0) with its own checksums: the journal, the book, a page,
a signed record and a dossier of every panel, photographs, tables, labels and
certificates drawn anew, and a README that tells a stranger how to read and check all
of it without backleaf. Others may write to the book meanwhile.

Private parts (buyers, prices) are not in it. Photographs are the exact files, with
whatever the camera wrote into them, such as a place.

Without a key nothing in it is signed, and its README says so; where the studio has a
key, verify then ends with exit code 7.`,
		Example: `  backleaf deposit /media/stick/deposit-2026
  backleaf deposit ../for-the-archive --unsigned`,
		Args: wanted(1, 1, "the folder to make"),
		RunE: func(c *cobra.Command, args []string) error {
			ctx, dir := c.Context(), filepath.Clean(args[0])
			if err := deposit.Check(dir); err != nil {
				return err
			}
			s, err := a.openAnyway(ctx, false)
			if err != nil {
				return err
			}
			err = a.deposit(ctx, s, dir, unsigned)
			return errors.Join(err, s.Book.Close())
		},
	})
	c.Flags().BoolVar(&unsigned, "unsigned", false, "sign nothing: where the key is not at hand")
	return c
}

func (a *app) deposit(ctx context.Context, s *studio.Session, dir string, unsigned bool) error {
	var key *seal.Key
	if !unsigned {
		var err error
		if key, err = keys.Current(ctx, s.Book, holder{a}); err != nil {
			if _, hint, code := refused(err); hint != "" {
				return &failure{err, hint + "; or --unsigned", code}
			}
			return err
		}
	}
	m, err := deposit.Make(ctx, s, dir, key, a.progress())
	a.warn(nil, m.Warnings)
	if err != nil {
		return err
	}
	a.told("deposit-made", record.With("folder", dir), record.With("panels", m.Panels), record.With("entries", m.Entries), record.With("photographs", m.Photographs), record.With("root", m.Root))
	switch {
	case m.SignedBy != nil:
		a.told("signed", record.With("key", m.SignedBy.Fingerprint().Short()))
	case m.KeyOnRecord:
		a.told("not-signed-as-asked")
	default:
		a.told("not-signed")
	}
	for i, s := range m.LeftOut {
		if i == verify.MaxProblems {
			a.noted("and-more-in", record.With("n", len(m.LeftOut)-i), record.With("file", m.LeftOutList))
			break
		}
		a.noted("paper-left-out", record.With("what", s))
	}
	a.told("check-deposit", record.With("folder", dir))
	if m.Missing > 0 {
		return &failure{fmt.Errorf("%s missing or changed and could not be deposited", deposit.Count(m.Missing, "photograph")), "the rest is good; look for these photographs in a backup: README.txt names them", exitIntegrity}
	}
	return nil
}
