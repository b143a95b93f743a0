package main

import (
	"backleaf/record"
	"backleaf/record/studio/keys"
)

func keyPassphrase(a *app) {
	var file string
	var none bool
	a.withKey("studio key passphrase", flags{"new-passphrase-file": &file, "none": &none}, func(r *run) (err error) {
		var pass []byte
		switch {
		case none && file != "":
			return usage("", "--none or --new-passphrase-file, not both")
		case none:
		case file != "":
			pass, err = keys.PassphraseIn(file)
		default:
			silent := *a
			silent.passphrase, silent.env = nil, func(string) string { return "" } // that is the old one
			if pass, err = (holder{&silent}).NewPassphrase(); err == nil && pass == nil {
				err = usage("give --new-passphrase-file FILE, or --none to take it away", "there is no new passphrase")
			}
		}
		if err == nil {
			err = r.key.Replace(keys.File(a.path()), pass)
		}
		if err == nil {
			a.told("passphrase-now", record.With("file", keys.File(a.path())), record.With("with", yesNo(len(pass) > 0)))
		}
		return err
	})
}
