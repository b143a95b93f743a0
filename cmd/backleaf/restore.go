package main

import (
	"cmp"

	"backleaf/record"
	"backleaf/record/studio/copies"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/verify"
)

func newRestore(a *app) {
	var to string
	var highest []string
	a.command("restore", flags{"to": &to, "highest": &highest}, func(r *run) error {
		to := cmp.Or(to, a.path())
		made, err := copies.Restore(r.ctx, r.args[0], to, highest, a.progress(), func() error {
			return r.sound(verify.Evidence{Name: r.args[0], Kind: verify.Book})
		})
		err = a.sayCopy("restored", r.args[0], made, err)
		if made.Path != "" && made.Keys && !keys.There(to) {
			a.told("key-not-restored", record.With("file", keys.File(to)))
		}
		return err
	})
}
