package main

import (
	"cmp"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/shelf"
	"backleaf/record/studio/typed"
)

func materialAdd(a *app) *cobra.Command {
	var m record.Material
	var like, binder, water, removable, gloss, toxic, board, fibre, weave, sized string
	var uses, pigments []string
	var plies int64
	var q [13]string
	var o moment
	c := &cobra.Command{
		Use: "add KEY", Short: "describe a material, or describe it again",
		Long: `Describe a material under a short key of your own: lower-case letters, digits,
points and hyphens. With --like, everything not given is taken from a material of
the starter shelf, with values that are typical, common practice, and no more.
Describing the same key again holds from its date on (--at): what was done before
stays as the material was then. To put a mistake right, amend the entry.`,
		Example: `  backleaf material add sealer --like acrylic-sealer --name "water-borne sealer, matt" --cure "24 h..36 h"
  backleaf material add birch3 --use board --board plywood --plies 3 --thickness "3 mm" --formaldehyde "E1"`,
		Args: wanted(1, 1, "one key"),
		RunE: func(c *cobra.Command, args []string) error {
			base := record.Material{}
			if like != "" {
				var err error
				if base, err = shelf.Generic(like); err != nil {
					return err
				}
			}
			base.Key = record.Key(strings.ToLower(args[0]))
			for _, f := range []struct{ to, from *string }{{&base.Name, &m.Name}, {&base.Maker, &m.Maker}, {&base.Basis, &m.Basis},
				{&base.Thinner, &m.Thinner}, {&base.RemovedWith, &m.RemovedWith}, {&base.Resin, &m.Resin}, {&base.Hazard, &m.Hazard},
				{&base.Board.Species, &m.Board.Species}, {&base.Board.Formaldehyde, &m.Board.Formaldehyde}} {
				*f.to = cmp.Or(*f.from, *f.to)
			}
			base.Name = cmp.Or(base.Name, args[0])
			base.Board.Plies = cmp.Or(plies, base.Board.Plies)
			if len(pigments) > 0 {
				base.Pigments = typed.Pigments(pigments)
			}
			if len(uses) > 0 {
				base.Uses = make([]record.Use, len(uses))
			} else if len(base.Uses) == 0 {
				return usage("one or more of "+strings.Join(record.Words("Use"), ", "), "what is it for? say --use")
			}
			err := act(a, c.Context(), &o, nil, func(r *typed.Reader) record.Material {
				for i, u := range uses {
					typed.Word(r, "use", u, &base.Uses[i])
				}
				typed.Word(r, "binder", binder, &base.Binder)
				typed.Word(r, "waterborne", water, &base.Waterborne)
				typed.Word(r, "removable", removable, &base.Removable)
				typed.Word(r, "gloss", gloss, &base.Gloss)
				typed.Word(r, "toxic-dry", toxic, &base.Toxic)
				typed.Word(r, "board", board, &base.Board.Kind)
				typed.Word(r, "fibre", fibre, &base.Cloth.Fibre)
				typed.Word(r, "weave", weave, &base.Cloth.Weave)
				typed.Word(r, "sized", sized, &base.Cloth.Sized)
				dryFrom, dryTo := typed.Span(q[3])
				cureFrom, cureTo := typed.Span(q[4])
				for _, t := range []struct {
					field, text string
					into        typed.Value
				}{{"solids-mass", q[0], &base.SolidsMass}, {"solids-volume", q[1], &base.SolidsVolume}, {"density", q[2], &base.Density},
					{"touch-dry", dryFrom, &base.TouchDryFrom}, {"touch-dry", dryTo, &base.TouchDryTo},
					{"cure", cureFrom, &base.CureFrom}, {"cure", cureTo, &base.CureTo}, {"film-above", q[5], &base.MinFilm},
					{"thickness", q[6], &base.Board.Thickness}, {"board-density", q[7], &base.Board.Density},
					{"warp", q[8], &base.Cloth.Warp}, {"weft", q[9], &base.Cloth.Weft}, {"weight", q[10], &base.Cloth.Mass},
					{"width", q[11], &base.Cloth.Width}, {"core-veneer", q[12], &base.Board.CoreVeneer}} {
					r.Text(t.field, t.text, t.into)
				}
				return base
			})
			if err != nil {
				return err
			}
			t := a.table() // what was read, with its units
			t.rows(a.catalogue().Rows(base))
			return t.done()
		},
	}
	o.timeFlag(c)
	f := c.Flags()
	f.StringVar(&q[12], "core-veneer", "", "thickness of one inner veneer of plywood: \"1.4 mm\"")
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
