package main

import (
	"context"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/typed"
)

func newCloth(a *app) *cobra.Command {
	var o moment
	var w coating
	var on []string
	var again bool
	var cloth, run, oversize, wet, pressed, weighted string
	c := &cobra.Command{
		Use: "cloth " + panelWords, Short: "write down cloth laid into adhesive",
		Example: `  backleaf cloth batch:may --cloth linen-1 --with sealer-3 --amount "420 g" --threads along-grain --wet-through yes
  backleaf cloth 0147 --again --with sealer-3
  backleaf cloth 0142 0143 --cloth linen-1 --with sealer-3 --oversize "10 mm" --at "yesterday 15:10"`,
		Args: wanted(1, -1, "the panels that cloth was laid on"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.atBench(c.Context(), &o, args, func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (studio.Written, error) {
				l := record.ClothLaid{Coating: w.read(r), Faces: r.Faces("on", on)}
				l.Cloth, l.ClothLot = r.OnShelf(cloth)
				r.Text("oversize", oversize, &l.Oversize)
				r.Text("weighted", weighted, &l.Weighted)
				typed.Word(r, "threads", run, &l.Run)
				typed.Word(r, "wet-through", wet, &l.WetThrough)
				typed.Word(r, "edges-pressed", pressed, &l.EdgesPressed)
				if again && r.Err() == nil {
					var err error
					l, err = bench.Again(v, l)
					r.Fail(err)
				}
				return o.perform(ctx, v, r, at, l)
			})
		},
	}
	o.flags(c)
	o.coatFlags(c)
	w.flags(c)
	f := c.Flags()
	f.StringSliceVar(&on, "on", []string{"front"}, "face the cloth is on")
	f.BoolVar(&again, "again", false, "the cloth that was laid before, lifted and laid again")
	f.StringVar(&cloth, "cloth", "", "lot or material of the cloth")
	f.StringVar(&run, "threads", "", "warp against the board's grain: along-grain, across-grain, bias")
	f.StringVar(&oversize, "oversize", "", "allowance on each side: \"10 mm\"")
	f.StringVar(&wet, "wet-through", "", "wetted from above until saturated: yes, no, unknown")
	f.StringVar(&pressed, "edges-pressed", "", "edges pressed down: yes, no, unknown")
	f.StringVar(&weighted, "weighted", "", "time under weights: \"24 h\"")
	return c
}
