package main

import "backleaf/record/studio/keys"

func keyLost(a *app) {
	var because string
	a.writes("studio key lost", flags{"because": needed{&because}}, func(r *run) error {
		return a.done(keys.Lose(r.ctx, r.Session, because))
	})
}
