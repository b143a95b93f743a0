package main

import "backleaf/record/studio/keys"

func keyRetire(a *app) {
	var because string
	a.writes("studio key retire", flags{"because": needed{&because}, "passphrase-file": &a.passphraseFile}, func(r *run) error {
		return a.done(keys.Retire(r.ctx, r.Session, holder{a}, because))
	})
}
