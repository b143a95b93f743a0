package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newCloth(a *app) *cobra.Command {
	var b record.ClothLaid
	return onPanels(a, &cobra.Command{
		Use: "cloth " + panelWords, Short: "write down cloth laid into adhesive",
		Example: `  backleaf cloth batch:may --cloth linen-1 --with sealer-3 --amount "420 g" --threads along-grain --wet-through yes
  backleaf cloth 0147 --again --with sealer-3
  backleaf cloth 0142 0143 --cloth linen-1 --with sealer-3 --oversize "10 mm" --at "yesterday 15:10"`,
	}, "the panels that cloth was laid on", &b, func(f *actFlags) {
		f.coating(&b.Coating)
		f.faces(&b.Faces, "on", "face the cloth is on", "front")
		f.c.Flags().BoolVar(&f.o.relaid, "again", false, "the cloth that was laid before, lifted and laid again")
		cloth := f.c.Flags().String("cloth", "", "lot or material of the cloth")
		f.reads = append(f.reads, func(r *typed.Reader) { b.Cloth, b.ClothLot = r.OnShelf(*cloth) })
		word(f, &b.Run, "threads", "warp against the board's grain: along-grain, across-grain, bias")
		f.value(&b.Oversize, "oversize", "allowance on each side: \"10 mm\"")
		word(f, &b.WetThrough, "wet-through", "wetted from above until saturated: yes, no, unknown")
		word(f, &b.EdgesPressed, "edges-pressed", "edges pressed down: yes, no, unknown")
		f.value(&b.Weighted, "weighted", "time under weights: \"24 h\"")
	})
}
