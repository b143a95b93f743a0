package main

import (
	"cmp"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/safefile"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/papers"
	"backleaf/record/studio/refuse"
)

func keyNew(a *app) {
	var demo bool
	a.writes("studio key new", flags{"demonstration": &demo, "passphrase-file": &a.passphraseFile}, func(r *run) error {
		return a.done(keys.Make(r.ctx, r.Session, holder{a}, demo))
	})
}

func keyShow(a *app) {
	var asPEM bool
	a.reads("studio key show", flags{"pem": &asPEM, "json": &a.asJSON}, func(r *run) error {
		ring, err := keys.Ring(r.ctx, r.Book)
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
		if err := keys.Settle(r.Book.Path(), ring); err != nil {
			return err
		}
		return a.sayKeys(ring)
	})
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
		a.told("key-file", record.With("file", keys.File(a.path())), record.With("there", yesNo(keys.There(a.path()))))
	}
	return nil
}

func keyRetire(a *app) {
	var because string
	a.writes("studio key retire", flags{"because": needed{&because}, "passphrase-file": &a.passphraseFile}, func(r *run) error {
		return a.done(keys.Retire(r.ctx, r.Session, holder{a}, because))
	})
}

func keyLost(a *app) {
	var because string
	a.writes("studio key lost", flags{"because": needed{&because}}, func(r *run) error {
		return a.done(keys.Lose(r.ctx, r.Session, because))
	})
}

func keySheet(a *app) {
	a.withKey("studio key recovery-sheet", nil, func(r *run) error {
		w, err := r.Book.WorkshopOf(r.ctx)
		if err = cmp.Or(papers.NewPDF(r.args[0]), err); err != nil {
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
