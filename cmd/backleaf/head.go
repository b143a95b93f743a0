package main

import (
	"backleaf/record"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/register"
	"backleaf/record/studio/verify"
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
			if _, err := r.Book.Verify(r.ctx, a.progress().Of("entries")); err != nil {
				return err
			}
			g, err := register.Of(r.ctx, r.Book)
			if err != nil {
				return err
			}
			what := record.Code("head")
			var then int64
			if es[0].Kind == verify.Book {
				what = "book"
				then, err = g.CompareBook(r.ctx, r.args[0], a.progress())
			} else {
				then, err = g.Compare(r.ctx, es[0], a.catalogue())
			}
			if err == nil {
				a.told("head-holds", record.With("then", then), record.With("what", what), record.With("now", g.Entries()))
			}
			return err
		})
	})
}
