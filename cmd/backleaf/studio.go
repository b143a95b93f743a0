package main

import (
	"cmp"
	"context"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/typed"
)

func newStudio(a *app) *cobra.Command {
	return folder("studio", "the studio: who makes the panels, and how its papers look",
		studioNew(a), studioShow(a), studioChange(a), newKey(a))
}

func studioNew(a *app) *cobra.Command {
	var o studioFlags
	var empty, demo bool
	c := &cobra.Command{
		Use: "new", Short: "make a new book for a studio",
		Long: `Make a new book. The mark is the first part of every panel number and stays for
good: one to four consonants without L and Y, for example KB.`,
		Example: `  backleaf studio new --maker "Kersti Brand" --mark KB --place "Riga, Latvia" --link HTTPS://EXAMPLE.ORG/P/
  backleaf --book panels.sqlite studio new --maker "North Shed" --mark NS --units in --paper letter`,
		Args: wanted(0, 0, "no words, only flags"),
		RunE: func(c *cobra.Command, _ []string) error {
			if empty {
				if err := studio.Create(c.Context(), a.path(), a.now, a.random, record.Studio{}); err != nil {
					return err
				}
				a.told("book-empty", record.With("file", a.path()))
				return nil
			}
			if o.s.Maker == "" || o.s.Mark == "" {
				return usage("for example --maker \"Your Name\" --mark KB", "a studio needs its maker's name and its mark")
			}
			s, err := o.onto(c, record.Studio{Mark: strings.ToUpper(o.s.Mark), NAAN: o.s.NAAN, Demo: demo})
			if err != nil {
				return err
			}
			if err := studio.Create(c.Context(), a.path(), a.now, a.random, s); err != nil {
				return err
			}
			a.told("book-made", record.With("file", a.path()), record.With("maker", s.Maker), record.With("mark", s.Mark))
			a.warn(nil, bench.Unprintable(s.Maker, s.Place, s.Contact))
			a.sayLink(s)
			a.told("next-materials")
			return nil
		},
	}
	o.flags(c)
	c.Flags().StringVar(&o.s.Mark, "mark", "", "the studio's mark, first part of every number")
	c.Flags().BoolVar(&demo, "demonstration", false, "every paper says that it is a demonstration")
	c.Flags().MarkHidden("demonstration")
	c.Flags().BoolVar(&empty, "empty", false, "an empty book, to be filled by \"backleaf import\"")
	c.Flags().StringVar(&o.s.NAAN, "naan", "", "ARK prefix of the studio, if it has one")
	return c
}

// sayLink shows where the symbols will lead.
func (a *app) sayLink(s record.Studio) {
	if n, err := record.NewNumber(s.Mark, a.now().Year(), 1, s.NAAN); err == nil && s.LinkBase != "" {
		a.told("sample-link", record.With("link", s.LinkBase+n.Bare()))
	}
}

func studioChange(a *app) *cobra.Command {
	var o studioFlags
	var when moment
	var mark string
	c := &cobra.Command{
		Use: "change", Short: "change what the studio says of itself (not its mark)",
		Example: `  backleaf studio change --contact "studio@example.org"
  backleaf studio change --sheet-page "297 x 210 mm" --sheet-label "67 x 99 mm" --sheet-rows 4 --sheet-columns 2`,
		Args: wanted(0, 0, "no words, only flags"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.atBench(c.Context(), &when, nil, func(ctx context.Context, v *studio.View, _ *typed.Reader, at record.When) (w studio.Written, err error) {
				n, err := o.onto(c, v.Shop.Studio)
				if err == nil && mark != "" {
					n.Picture, err = kept.KeepMark(v.Book.Path(), mark)
				}
				if err != nil {
					return w, err
				}
				w, err = v.Change(ctx, at, n)
				if err == nil && n.LinkBase != v.Shop.Studio.LinkBase {
					a.sayLink(n)
				}
				return w, err
			})
		},
	}
	when.timeFlag(c)
	o.flags(c)
	c.Flags().StringVar(&mark, "mark-picture", "", "a PNG picture of the studio's own mark, for its labels and certificates")
	return c
}

func studioShow(a *app) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: "show", Short: "show the studio and its book",
		Example: `  backleaf studio show
  backleaf studio show --json`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.read(c.Context(), func(session *studio.Session) error {
				w, err := session.Book.Workshop(c.Context())
				if err != nil {
					return err
				}
				s := w.Studio
				if a.asJSON {
					return a.sayJSON(struct {
						Studio  record.Studio `json:"studio"`
						Entries int64         `json:"entry_count"`
						Panels  int           `json:"panel_count"`
					}{s, w.Last, len(w.Panels)})
				}
				t := a.table()
				s.Zone = cmp.Or(s.Zone, a.line("studio-zone"))
				for _, f := range a.catalogue().Rows(s) {
					t.pair(f.Name, f.Value)
				}
				t.pair(a.line("name-book"), a.line("studio-book", record.With("file", a.path()), record.With("entries", w.Last), record.With("panels", len(w.Panels)),
					record.With("materials", len(w.Materials)), record.With("lots", len(w.Lots))))
				return t.done()
			})
		},
	})
}
