package main

import (
	"context"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/typed"
)

func newMaker(a *app) *cobra.Command {
	return folder("maker", "makers: who else makes panels or paints on them", makerAdd(a), makerList(a))
}

func makerAdd(a *app) *cobra.Command {
	var m record.Maker
	f := newFlags(&cobra.Command{
		Use: "add KEY", Short: "describe a maker, or describe one again from a date on",
		Long: `Describe somebody who makes panels or paints on them, under a short key; acts then say
--by KEY. Without --by the maker whom the studio names did it. Describing the same key
again holds from its date on; what was done before stays as it was.`,
		Example: `  backleaf maker add ilze --name "Ilze Kārkla" --place "Riga, Latvia"
  backleaf maker add shed --name "The North Shed" --voice we --at 2024`,
		Args: wanted(1, 1, "one key"),
	})
	f.keys(&m.Key)
	f.text(&m.Name, "name", "name as it is to be printed")
	f.need("name", "--name \"as it is to be printed\"", "what is the name?")
	word(f, &m.Voice, "voice", "i for one person, we for several")
	f.text(&m.Place, "place", "town and country")
	f.text(&m.Note, "note", "remark")
	f.o.timeFlag(f.c)
	return f.does(a, func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (studio.Written, error) {
		return f.o.perform(ctx, v, r, at, m)
	})
}

func makerList(a *app) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: "list", Short: "list the makers besides the studio's own",
		Example: `  backleaf maker list
  backleaf maker list --json`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.shelf(c, func(w *record.Workshop) error {
				if a.asJSON {
					return a.sayJSON(bodies(w.Makers))
				}
				t := a.table()
				for _, m := range w.Makers {
					t.row(string(m.Body.Key), m.Body.Name, m.Body.Place)
				}
				return t.done()
			})
		},
	})
}
