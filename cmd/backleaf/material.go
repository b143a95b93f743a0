package main

import (
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/shelf"
)

func newMaterial(a *app) *cobra.Command {
	return folder("material", "products: boards, cloths, sealers, grounds, paints, varnishes",
		materialAdd(a), materialStarter(a), materialList(a), materialShow(a))
}

func materialList(a *app) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: "list", Short: "list the materials on the shelf",
		Example: `  backleaf material list
  backleaf material list --json`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.shelf(c, func(w *record.Workshop) error {
				if a.asJSON {
					return a.sayJSON(bodies(w.Materials))
				}
				if len(w.Materials) == 0 {
					a.noted("shelf-empty")
					return nil
				}
				t := a.table()
				for _, m := range w.Materials {
					t.row(string(m.Body.Key), usesText(m.Body.Uses), m.Body.Name)
				}
				return t.done()
			})
		},
	})
}

func usesText(us []record.Use) string {
	var s []string
	for _, u := range us {
		s = append(s, string(u))
	}
	return strings.Join(s, ", ")
}

// shelf hands the studio and the shelf to a reading command.
func (a *app) shelf(c *cobra.Command, do func(*record.Workshop) error) error {
	return a.read(c.Context(), func(s *studio.Session) error {
		w, err := s.Book.WorkshopOf(c.Context())
		if err != nil {
			return err
		}
		return do(w)
	})
}

func bodies[B record.Body](ds []record.Done[B]) []B {
	out := []B{}
	for _, d := range ds {
		out = append(out, d.Body)
	}
	return out
}

func materialShow(a *app) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: "show KEY", Short: "show all that is known of a material",
		Example: `  backleaf material show sealer
  backleaf material show linen-fine --json`,
		Args: wanted(1, 1, "one key"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.shelf(c, func(w *record.Workshop) error {
				m, err := shelf.Material(w, record.Key(args[0]))
				if err != nil {
					return err
				}
				if a.asJSON {
					return a.sayJSON(m)
				}
				t := a.table()
				t.rows(a.words(w.Studio).Rows(m))
				return t.done()
			})
		},
	})
}
