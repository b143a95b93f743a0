package main

import (
	"errors"
	"path/filepath"

	"backleaf/record/seal"
	"backleaf/record/studio/deposit"
	"backleaf/record/studio/keys"
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
	return r.done(deposit.Make(r.ctx, r.Session, dir, key, r.progress()))
}
