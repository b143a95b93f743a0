package main

import (
	"backleaf/record"
	"backleaf/record/studio/keys"
)

func keyLost(a *app) {
	var because string
	a.writes("studio key lost", flags{"because": needed{&because}}, func(r *run) error {
		l, err := keys.Lose(r.ctx, r.Session, because)
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
}
