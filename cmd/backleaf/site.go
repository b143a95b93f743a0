package main

import (
	"path/filepath"
	"strings"

	"backleaf/record"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/site"
)

func newSite(a *app) {
	var o site.Order
	var unsigned bool
	a.reads("site", flags{"index": &o.Index, "anew": &o.Anew, "dry-run": &o.DryRun, "unsigned": &unsigned, "passphrase-file": &a.passphraseFile, "json": &a.asJSON}, func(r *run) (err error) {
		o.Dir, o.Catalogue, o.Progress = filepath.Clean(r.args[0]), a.catalogue(), a.progress()
		if !unsigned {
			if o.Key, err = keys.Current(r.ctx, r.Book, holder{a}); err != nil {
				return err
			}
		}
		done, err := site.Write(r.ctx, r.Session, o)
		a.warn(nil, done.Warnings)
		if err != nil {
			return err
		}
		if a.asJSON {
			return a.sayJSON(done)
		}
		return r.saySite(o, done)
	})
}

func (r *run) saySite(o site.Order, done site.Result) error {
	dry := record.With("dry", yesNo(o.DryRun))
	r.told("site-written", record.With("folder", o.Dir), record.With("shown", done.Shown), record.With("written", len(done.Written)), record.With("kept", done.Shown-len(done.Written)), dry)
	for _, n := range done.Written {
		r.told("site-page", record.With("panel", n), dry)
	}
	for _, n := range done.TakenBack {
		r.told("site-taken-back", record.With("panel", n))
	}
	for _, name := range done.Removed {
		r.told("site-removed", record.With("name", name), dry)
	}
	if !done.Status.IsZero() && !o.DryRun {
		r.told("site-status", record.With("date", record.Moment(done.Status)))
	}
	w, err := r.Book.WorkshopOf(r.ctx)
	switch {
	case err != nil:
		return err
	case done.Shown == 0:
		r.noted("site-nothing")
	case w.Studio.LinkBase != "" && !o.DryRun:
		r.noted("site-try", record.With("link", strings.ToLower(w.Studio.LinkBase)))
	}
	return nil
}
