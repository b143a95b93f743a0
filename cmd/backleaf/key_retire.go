package main

import (
	"backleaf/record"
	"backleaf/record/studio/keys"
)

func keyRetire(a *app) {
	var because string
	a.writes("studio key retire", flags{"because": needed{&because}, "passphrase-file": &a.passphraseFile}, func(r *run) error {
		x, err := keys.Retire(r.ctx, r.Session, holder{a}, because)
		if err == nil {
			a.told("key-retired", record.With("made", record.EntryRef(x.Made)), record.With("retired", record.EntryRef(x.Retired)), record.With("old", x.Old.Fingerprint().Short()),
				record.With("key", x.New.Fingerprint().Groups()), record.With("file", x.OldFile))
		}
		return err
	})
}
