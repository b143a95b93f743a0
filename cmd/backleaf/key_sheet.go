package main

import (
	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
)

func keySheet(a *app) {
	a.withKey("studio key recovery-sheet", nil, func(r *run) error {
		w, err := r.Book.WorkshopOf(r.ctx)
		if err != nil {
			return err
		}
		pdf, err := keys.Sheet(a.catalogue(), w.Studio, r.key, a.now().In(studio.Zone(w.Studio)))
		if err == nil {
			err = safefile.Create(r.args[0], 0o600, safefile.Bytes(pdf))
		}
		if err == nil {
			a.told("recovery-sheet", record.With("file", r.args[0]), record.With("key", r.key.Public().Fingerprint().Short()))
		}
		return err
	})
}
