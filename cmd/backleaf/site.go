package main

import (
	"context"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/site"
)

func newSite(a *app) *cobra.Command {
	var o site.Order
	var unsigned bool
	c := a.jsonFlag(a.passphraseFlag(&cobra.Command{
		Use: "site DIR", Short: "write the pages behind the symbols into a folder for any file host",
		Long: `Write the page of every panel that "panel publish" shows into DIR, in a folder named as
in its link, so that whoever scans a label meets it. A page holds what the papers say,
the signed record, and a script that checks it in the browser; it asks nothing of any
other place. Nothing private is in it.

The file "status" is the studio's signed word of today: its keys, its newest head, and
which certificates were issued, replaced, withdrawn, or are of works reported stolen.
Write the site again from time to time, so that it stays young.

Run again, only what changed is written anew. Copy the folder to any host; the link
base of the studio must lead to it.`,
		Example: `  backleaf site ../public/p
  backleaf site ../public/p --dry-run
  backleaf site ../public/p --index`,
		Args: wanted(1, 1, "the folder of the site"),
		RunE: func(c *cobra.Command, args []string) error {
			o.Dir, o.Catalogue, o.Progress = filepath.Clean(args[0]), a.catalogue(), a.progress()
			return a.read(c.Context(), func(s *studio.Session) error { return a.site(c.Context(), s, o, unsigned) })
		},
	}))
	f := c.Flags()
	f.BoolVar(&o.Index, "index", false, "write a list of the panels too")
	f.BoolVar(&o.Anew, "anew", false, "draw all pages again, also those whose record did not change")
	f.BoolVar(&o.DryRun, "dry-run", false, "only say what would be written and removed")
	f.BoolVar(&unsigned, "unsigned", false, "sign nothing: where the key is not at hand")
	return c
}

func (a *app) site(ctx context.Context, s *studio.Session, o site.Order, unsigned bool) error {
	if !unsigned {
		var err error
		if o.Key, err = keys.Current(ctx, s.Book, holder{a}); err != nil {
			return err
		}
	}
	r, err := site.Write(ctx, s, o)
	a.warn(nil, r.Warnings)
	if err != nil {
		return err
	}
	if a.asJSON {
		return a.sayJSON(r)
	}
	dry := record.With("dry", record.Code(map[bool]string{true: "yes", false: "no"}[o.DryRun]))
	a.told("site-written", record.With("folder", o.Dir), record.With("shown", r.Shown), record.With("written", len(r.Written)), record.With("kept", r.Shown-len(r.Written)), dry)
	for _, n := range r.Written {
		a.told("site-page", record.With("panel", n), dry)
	}
	for _, n := range r.TakenBack {
		a.told("site-taken-back", record.With("panel", n))
	}
	for _, name := range r.Removed {
		a.told("site-removed", record.With("name", name), dry)
	}
	if !r.Status.IsZero() && !o.DryRun {
		a.told("site-status", record.With("date", record.Moment(r.Status)))
	}
	w, err := s.Book.WorkshopOf(ctx)
	switch {
	case err != nil:
		return err
	case r.Shown == 0:
		a.noted("site-nothing")
	case w.Studio.LinkBase != "" && !o.DryRun:
		a.noted("site-try", record.With("link", strings.ToLower(w.Studio.LinkBase)))
	}
	return nil
}
