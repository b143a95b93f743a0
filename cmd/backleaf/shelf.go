package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
)

func newMaterial(a *app) *cobra.Command {
	return folder("material", "products: boards, cloths, sealers, grounds, paints, varnishes",
		materialAdd(a), materialStarter(a), materialList(a), materialShow(a))
}

func materialAdd(a *app) *cobra.Command {
	var m record.Material
	var like, binder, water, removable, gloss, toxic, board, fibre, weave, sized string
	var uses, pigments []string
	var plies int64
	var q [16]string
	c := &cobra.Command{
		Use: "add KEY", Short: "describe a material, or describe it again",
		Long: `Describe a material under a short key of your own: lower-case letters, digits,
points and hyphens. With --like, everything not given is taken from a material of
the starter shelf, with values that are typical, common practice, and no more.
Describing the same key again replaces the description; both stay readable.`,
		Example: `  backleaf material add sealer --like acrylic-sealer --name "water-borne sealer, matt" --cure "24 h..36 h"
  backleaf material add birch3 --use board --board plywood --plies 3 --thickness "3 mm" --formaldehyde "E1"`,
		Args: wanted(1, 1, "one key"),
		RunE: func(c *cobra.Command, args []string) error {
			base := record.Material{}
			if like != "" {
				i := slices.IndexFunc(starterShelf, func(s record.Material) bool { return string(s.Key) == like })
				if i < 0 {
					return usage("\"backleaf material starter\" lists them", "there is no %q on the starter shelf", like)
				}
				base = starterShelf[i]
			}
			base.Key = record.Key(strings.ToLower(args[0]))
			for _, f := range []struct{ to, from *string }{{&base.Name, &m.Name}, {&base.Maker, &m.Maker}, {&base.Basis, &m.Basis},
				{&base.Thinner, &m.Thinner}, {&base.RemovedWith, &m.RemovedWith}, {&base.Resin, &m.Resin}, {&base.Hazard, &m.Hazard},
				{&base.Board.Species, &m.Board.Species}, {&base.Board.Formaldehyde, &m.Board.Formaldehyde}} {
				if *f.from != "" {
					*f.to = *f.from
				}
			}
			base.Name = orElse(base.Name, args[0])
			if len(uses) > 0 {
				base.Uses = nil
				for _, u := range uses {
					w, err := word[record.Use]("--use", u, "Use")
					if err != nil {
						return err
					}
					base.Uses = append(base.Uses, w)
				}
			}
			if len(base.Uses) == 0 {
				return usage("one or more of "+strings.Join(record.Words("Use"), ", "), "what is it for? say --use")
			}
			if len(pigments) > 0 {
				base.Pigments = parsePigments(pigments)
			}
			if plies > 0 {
				base.Board.Plies = plies
			}
			if err := words(
				wordFor("--binder", binder, "Binder", &base.Binder), wordFor("--waterborne", water, "Answer", &base.Waterborne),
				wordFor("--removable", removable, "Answer", &base.Removable), wordFor("--gloss", gloss, "Gloss", &base.Gloss),
				wordFor("--toxic-dry", toxic, "Answer", &base.Toxic), wordFor("--board", board, "BoardKind", &base.Board.Kind),
				wordFor("--fibre", fibre, "Fibre", &base.Cloth.Fibre), wordFor("--weave", weave, "Weave", &base.Cloth.Weave),
				wordFor("--sized", sized, "Answer", &base.Cloth.Sized)); err != nil {
				return err
			}
			dryFrom, dryTo := span(q[3])
			cureFrom, cureTo := span(q[4])
			return a.atBench(c.Context(), &bench{}, nil, func(s *benchState) ([]record.Body, string, error) {
				if err := s.texts(text{"--solids-mass", q[0], &base.SolidsMass}, text{"--solids-volume", q[1], &base.SolidsVolume}, text{"--density", q[2], &base.Density},
					text{"--touch-dry", dryFrom, &base.TouchDryFrom}, text{"--touch-dry", dryTo, &base.TouchDryTo},
					text{"--cure", cureFrom, &base.CureFrom}, text{"--cure", cureTo, &base.CureTo}, text{"--film-above", q[5], &base.MinFilm},
					text{"--thickness", q[6], &base.Board.Thickness}, text{"--board-density", q[7], &base.Board.Density},
					text{"--warp", q[8], &base.Cloth.Warp}, text{"--weft", q[9], &base.Cloth.Weft}, text{"--weight", q[10], &base.Cloth.Mass},
					text{"--width", q[11], &base.Cloth.Width}); err != nil {
					return nil, "", err
				}
				return []record.Body{base}, fmt.Sprintf("material %s, %s", base.Key, base.Name), nil
			})
		},
	}
	f := c.Flags()
	f.StringVar(&like, "like", "", "take what is not given from this material of the starter shelf")
	f.StringVar(&m.Name, "name", "", "name as on the tin")
	f.StringVar(&m.Maker, "producer", "", "who makes it")
	f.StringVar(&m.Basis, "basis", "", "where the values come from: a data sheet and its date, or your own measuring")
	f.StringSliceVar(&uses, "use", nil, strings.Join(record.Words("Use"), ", "))
	f.StringVar(&binder, "binder", "", strings.Join(record.Words("Binder"), ", "))
	f.StringVar(&water, "waterborne", "", "yes, no, unknown")
	f.StringVar(&q[0], "solids-mass", "", "solids by mass: 55%")
	f.StringVar(&q[1], "solids-volume", "", "solids by volume: 40%")
	f.StringVar(&q[2], "density", "", "\"1.35 g/mL\"")
	f.StringVar(&q[3], "touch-dry", "", "window: \"20 min..30 min\"")
	f.StringVar(&q[4], "cure", "", "window: \"24 h..36 h\"")
	f.StringVar(&q[5], "film-above", "", "lowest temperature at which a film forms: \"10 °C\"")
	f.StringVar(&m.Thinner, "thinner", "", "what thins it")
	f.StringVar(&removable, "removable", "", "can it be taken off when dry: yes, no, unknown")
	f.StringVar(&m.RemovedWith, "removed-with", "", "what takes it off")
	f.StringVar(&m.Resin, "resin", "", "class of resin, of a varnish")
	f.StringVar(&gloss, "gloss", "", "matt, satin, gloss")
	f.StringArrayVar(&pigments, "pigment", nil, "pigment it holds: \"titanium white=PW 6\"")
	f.StringVar(&m.Hazard, "hazard", "", "hazard text as on the tin or sheet")
	f.StringVar(&toxic, "toxic-dry", "", "harmful when sanded or cleaned later: yes, no, unknown")
	f.StringVar(&board, "board", "", strings.Join(record.Words("BoardKind"), ", "))
	f.StringVar(&m.Board.Species, "species", "", "wood or veneer")
	f.Int64Var(&plies, "plies", 0, "number of plies")
	f.StringVar(&q[6], "thickness", "", "of the sheet: \"3 mm\"")
	f.StringVar(&q[7], "board-density", "", "\"680 kg/m3\"")
	f.StringVar(&m.Board.Formaldehyde, "formaldehyde", "", "class as printed on the sheet")
	f.StringVar(&fibre, "fibre", "", strings.Join(record.Words("Fibre"), ", "))
	f.StringVar(&weave, "weave", "", strings.Join(record.Words("Weave"), ", "))
	f.StringVar(&q[8], "warp", "", "threads: \"14 /cm\" or \"36 /in\"")
	f.StringVar(&q[9], "weft", "", "threads: \"14 /cm\"")
	f.StringVar(&q[10], "weight", "", "weight of the cloth: \"190 g/m2\"")
	f.StringVar(&q[11], "width", "", "width of the bolt: \"2.1 m\"")
	f.StringVar(&sized, "sized", "", "came sized or primed: yes, no, unknown")
	return c
}

// span splits "20 min..30 min"; one figure is both ends.
func span(s string) (from, to string) {
	from, to, ok := strings.Cut(s, "..")
	if !ok {
		return s, s
	}
	return strings.TrimSpace(from), strings.TrimSpace(to)
}

// wordFor reads a typed word into a field when one was typed.
func wordFor[T ~string](flag, typed, list string, to *T) func() error {
	return func() error {
		if typed == "" {
			return nil
		}
		w, err := word[T](flag, typed, list)
		if err == nil {
			*to = w
		}
		return err
	}
}

func words(reads ...func() error) error {
	for _, r := range reads {
		if err := r(); err != nil {
			return err
		}
	}
	return nil
}

func materialStarter(a *app) *cobra.Command {
	return &cobra.Command{
		Use: "starter [KEY…]", Short: "list the starter shelf, or put materials from it on yours",
		Long: `Generic materials with values that are typical, common practice. Without keys
they are listed; with keys, or "all", they are put on your shelf as they are. Replace
them with the figures of your own tin's data sheet when you have them.`,
		Example: `  backleaf material starter
  backleaf material starter birch-ply-3mm linen-fine acrylic-sealer`,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				t := a.table()
				for _, m := range starterShelf {
					t.row(string(m.Key), usesText(m.Uses), m.Name)
				}
				return t.done()
			}
			var es []record.Entry
			var names []string
			for _, k := range args {
				found := false
				for _, m := range starterShelf {
					if k == "all" || string(m.Key) == k {
						es, names, found = append(es, record.Entry{Body: m}), append(names, string(m.Key)), true
					}
				}
				if !found {
					return usage("\"backleaf material starter\" lists them", "there is no %q on the starter shelf", k)
				}
			}
			return a.write(c.Context(), func(b *book.Book) error {
				s, err := a.look(c.Context(), b, &bench{}, nil)
				if err != nil {
					return err
				}
				for i := range es {
					es[i].At = s.at
				}
				return a.append(c.Context(), s, "on the shelf: "+strings.Join(names, ", "), es...)
			})
		},
	}
}

func usesText(us []record.Use) string {
	var s []string
	for _, u := range us {
		s = append(s, string(u))
	}
	return strings.Join(s, ", ")
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
					a.talk("the shelf is empty; \"backleaf material starter\" offers generic materials")
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

// shelf hands the studio and the shelf to a reading command.
func (a *app) shelf(c *cobra.Command, do func(*record.Workshop) error) error {
	return a.read(c.Context(), func(b *book.Book) error {
		w, err := b.WorkshopOf(c.Context())
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
				m, ok := w.Material(record.Key(args[0]))
				if !ok {
					return hinted(fmt.Errorf("there is no material %q on the shelf", args[0]), "\"backleaf material list\" shows the shelf")
				}
				if a.asJSON {
					return a.sayJSON(m)
				}
				return a.sayFields(m)
			})
		},
	})
}
