package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newWarm(a *app) *cobra.Command {
	var o moment
	var t record.WarmAir
	var on []string
	var long string
	c := &cobra.Command{
		Use: "warm " + panelWords, Short: "write down drying helped by warm air",
		Long: "Write down drying helped by warm air. It drives water out; it hardens nothing.",
		Example: `  backleaf warm batch:may --for "10 min"
  backleaf warm 0142 --on back --for "5 min" --at 15:00`,
		Args: wanted(1, -1, "the panels that were warmed"),
		RunE: func(c *cobra.Command, args []string) error {
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.WarmAir {
				t.Faces = r.Faces("on", on)
				r.Text("for", long, &t.For)
				return t
			})
		},
	}
	o.flags(c)
	c.Flags().StringSliceVar(&on, "on", nil, "faces")
	c.Flags().StringVar(&long, "for", "", "how long: \"10 min\"")
	c.Flags().StringVar(&t.Note, "note", "", "remark")
	return c
}
