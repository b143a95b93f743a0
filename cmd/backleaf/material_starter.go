package main

import (
	"context"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/shelf"
	"backleaf/record/studio/typed"
)

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
				for _, m := range shelf.Starter() {
					t.row(string(m.Key), usesText(m.Uses), m.Name)
				}
				return t.done()
			}
			var ms []record.Material
			for _, k := range args {
				some := shelf.Starter()
				if k != "all" {
					m, err := shelf.Generic(k)
					if err != nil {
						return err
					}
					some = []record.Material{m}
				}
				ms = append(ms, some...)
			}
			return a.atBench(c.Context(), &moment{}, nil, func(ctx context.Context, v *studio.View, _ *typed.Reader, at record.When) (studio.Written, error) {
				return shelf.Take(ctx, v, at, ms)
			})
		},
	}
}
