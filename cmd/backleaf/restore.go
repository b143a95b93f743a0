package main

import (
	"cmp"

	"backleaf/record/studio/copies"
	"backleaf/record/studio/verify"
)

func newRestore(a *app) {
	var to string
	var highest []string
	a.command("restore", flags{"to": &to, "highest": &highest}, func(r *run) error {
		return a.done(copies.Restore(r.ctx, r.args[0], cmp.Or(to, a.path()), highest, a.progress(), func() error {
			return r.sound(verify.Evidence{Name: r.args[0], Kind: verify.Book})
		}))
	})
}
