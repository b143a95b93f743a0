package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func panelDiscard(a *app) *cobra.Command {
	var o moment
	var why string
	c := &cobra.Command{
		Use: "discard " + panelWords, Short: "give a panel up, with the reason; its number is never used again",
		Example: `  backleaf panel discard 0147 --because "cloth lifted along the lower edge"
  backleaf panel discard 0150..0152 --because "numbered by mistake"`,
		Args: wanted(1, -1, "the panels to give up"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needs(why, "", "say --because: a reader will ask"); err != nil {
				return err
			}
			return act(a, c.Context(), &o, args, func(*typed.Reader) record.Discarded { return record.Discarded{Because: why} })
		},
	}
	o.flags(c)
	c.Flags().StringVar(&why, "because", "", "the reason")
	return c
}
