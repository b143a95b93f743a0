package main

import (
	"path/filepath"

	"backleaf/record/studio"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/site"
)

func newSite(a *app) {
	var o site.Order
	a.reads("site", flags{"index": &o.Index, "anew": &o.Anew, "dry-run": &o.DryRun, "unsigned": &o.Unsigned, "passphrase-file": &a.passphraseFile, "json": &a.asJSON}, func(r *run) (err error) {
		o.Dir, o.Catalogue, o.Progress = filepath.Clean(r.args[0]), a.catalogue(), a.progress()
		if !o.Unsigned {
			if o.Key, err = keys.Current(r.ctx, r.Book, holder{a}); err != nil {
				return err
			}
		}
		done, err := site.Write(r.ctx, r.Session, o)
		if a.asJSON && err == nil {
			a.warn(nil, done.Warnings)
			return a.sayJSON(done)
		}
		return a.done(studio.Written{Means: done.Means, Warnings: append(done.Warnings, done.Next...)}, err)
	})
}
