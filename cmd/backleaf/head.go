package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/register"
	"backleaf/record/studio/verify"
)

func newHead(a *app) *cobra.Command {
	return folder("head", "the signed head of the journal: proof that nothing was changed since",
		headShow(a), headCompare(a))
}

func headShow(a *app) *cobra.Command {
	return a.passphraseFlag(&cobra.Command{
		Use: "show", Short: "sign the journal as it stands, keep the head and print it",
		Long: `Sign size and root of the journal, keep this head in the book and print it. Keep a
copy elsewhere, or give it away: with it anyone can tell later that nothing of what
stood in the book then was changed or removed.`,
		Example: `  backleaf head show
  backleaf head show > head-2026.txt`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.withKey(c.Context(), func(s *studio.Session, k seal.Key) error {
				w, err := s.Book.WorkshopOf(c.Context())
				if err != nil {
					return err
				}
				note, err := keys.SignHead(c.Context(), s.Book, w.Studio, k)
				if err == nil {
					_, err = a.out.Write(note)
				}
				return err
			})
		},
	})
}

func headCompare(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "compare OLD", Short: "prove that what an older paper or book saw still stands",
		Long: `Read the whole book back, then prove that what OLD saw of the journal is the
beginning of today's, entry for entry, or show where it breaks. OLD is a head, a
certificate (PDF), a record folder, or an older copy of the book. Exit code 4 if it
is not.`,
		Example: `  backleaf head compare head-2026.txt
  backleaf head compare certificate.pdf
  backleaf head compare backup.sqlite`,
		Args: wanted(1, 1, "one older head, certificate, record folder or book"),
		RunE: func(c *cobra.Command, args []string) error {
			ctx := c.Context()
			es, err := a.evidence(args[0])
			if err != nil {
				return err
			}
			if len(es) != 1 {
				return usage("", "%s holds several things: name a single head", args[0])
			}
			return a.read(ctx, func(s *studio.Session) error {
				if _, err := s.Book.Verify(ctx, a.progress().Of("entries")); err != nil {
					return err
				}
				r, err := register.Of(ctx, s.Book)
				if err != nil {
					return err
				}
				what := record.Code("head")
				var then int64
				if es[0].Kind == verify.Book {
					what = "book"
					then, err = r.CompareBook(ctx, args[0], a.progress())
				} else {
					then, err = r.Compare(ctx, es[0])
				}
				if err == nil {
					a.told("head-holds", record.With("then", then), record.With("what", what), record.With("now", r.Entries()))
				}
				return err
			})
		},
	}
}
