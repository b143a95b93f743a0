package main

import (
	"backleaf/record/studio/keys"
	"backleaf/record/studio/register"
)

func headShow(a *app) {
	a.withKey("head show", nil, func(r *run) error {
		w, err := r.Book.WorkshopOf(r.ctx)
		if err != nil {
			return err
		}
		note, err := keys.SignHead(r.ctx, r.Book, w.Studio, r.key)
		if err == nil {
			_, err = a.out.Write(note)
		}
		return err
	})
}

func headCompare(a *app) {
	a.command("head compare", nil, func(r *run) error {
		es, err := a.evidence(r.args[0])
		if err != nil {
			return err
		}
		if len(es) != 1 {
			return usage("", "%s holds several things: name a single head", r.args[0])
		}
		return r.reading(func(r *run) error {
			return a.done(register.Compare(r.ctx, r.Book, es[0], a.catalogue(), a.progress()))
		})
	})
}
