package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func panelReuse(a *app) *cobra.Command {
	var o moment
	var u record.UsedAgain
	var over string
	c := &cobra.Command{
		Use: "reuse " + panelWords, Short: "begin another work on a panel that carried one before",
		Long: `Begin another work on a panel that carried one before. What was described and issued
before is of the earlier work; layers stay until "backleaf remove" says otherwise.`,
		Example: `  backleaf panel reuse 0142 --over-earlier-paint yes --earlier "harbour study, 2024"
  backleaf panel reuse 0143 --over-earlier-paint no`,
		Args: wanted(1, -1, "the panels that are used again"),
		RunE: func(c *cobra.Command, args []string) error {
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.UsedAgain {
				typed.Word(r, "over-earlier-paint", over, &u.Over)
				return u
			})
		},
	}
	o.flags(c)
	c.Flags().StringVar(&over, "over-earlier-paint", "", "the earlier paint is still below: yes, no, unknown")
	c.Flags().StringVar(&u.Earlier, "earlier", "", "the earlier work")
	c.Flags().StringVar(&u.Note, "note", "", "remark")
	return c
}
