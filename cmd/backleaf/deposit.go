package main

import (
	"errors"
	"fmt"
	"path/filepath"

	"backleaf/record"
	"backleaf/record/seal"
	"backleaf/record/studio/deposit"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/verify"
)

func newDeposit(a *app) {
	var unsigned bool
	a.command("deposit", flags{"unsigned": &unsigned, "passphrase-file": &a.passphraseFile}, func(r *run) error {
		dir := filepath.Clean(r.args[0])
		if err := deposit.Check(dir); err != nil {
			return err
		}
		s, err := a.openAnyway(r.ctx, false)
		if err != nil {
			return err
		}
		r.Session = s
		return errors.Join(r.deposit(dir, unsigned), s.Book.Close())
	})
}

func (r *run) deposit(dir string, unsigned bool) error {
	var key *seal.Key
	if !unsigned {
		var err error
		if key, err = keys.Current(r.ctx, r.Book, holder{r.app}); err != nil {
			if _, hint, code := refused(r.catalogue(), err); hint != "" {
				return &failure{err, hint + "; or --unsigned", code}
			}
			return err
		}
	}
	m, err := deposit.Make(r.ctx, r.Session, dir, key, r.progress())
	r.warn(nil, m.Warnings)
	if err != nil {
		return err
	}
	r.told("deposit-made", record.With("folder", dir), record.With("panels", m.Panels), record.With("entries", m.Entries), record.With("photographs", m.Photographs), record.With("root", m.Root))
	switch {
	case m.SignedBy != nil:
		r.told("signed", record.With("key", m.SignedBy.Fingerprint().Short()))
	case m.KeyOnRecord:
		r.told("not-signed-as-asked")
	default:
		r.told("not-signed")
	}
	for i, s := range m.LeftOut {
		if i == verify.MaxProblems {
			r.noted("and-more-in", record.With("n", len(m.LeftOut)-i), record.With("file", m.LeftOutList))
			break
		}
		r.noted("paper-left-out", record.With("what", s))
	}
	r.told("check-deposit", record.With("folder", dir))
	if m.Missing > 0 {
		return &failure{fmt.Errorf("%s missing or changed and could not be deposited", deposit.Count(m.Missing, "photograph")), "the rest is good; look for these photographs in a backup: README.txt names them", exitIntegrity}
	}
	return nil
}
