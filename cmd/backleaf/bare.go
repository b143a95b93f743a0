package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newBare(a *app) *cobra.Command {
	var o moment
	var b record.LeftBare
	var on []string
	c := &cobra.Command{
		Use: "bare " + panelWords, Short: "write down that faces were left without any coat, on purpose",
		Example: `  backleaf bare 0142 --on back
  backleaf bare batch:may --on back,edges --because "to be glued into a frame"`,
		Args: wanted(1, -1, "the panels whose faces were left bare"),
		RunE: func(c *cobra.Command, args []string) error {
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.LeftBare {
				b.Faces = r.Faces("on", on)
				return b
			})
		},
	}
	o.flags(c)
	c.Flags().StringSliceVar(&on, "on", nil, "faces: front, back, edges, all")
	c.Flags().StringVar(&b.Because, "because", "", "why")
	return c
}
