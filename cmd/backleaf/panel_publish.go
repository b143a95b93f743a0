package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func panelPublish(a *app) *cobra.Command {
	var o moment
	var p record.Published
	var photograph string
	var withdraw bool
	c := &cobra.Command{
		Use: "publish " + panelWords, Short: "show panels to those who scan the label, or no longer",
		Example: `  backleaf panel publish batch:may
  backleaf panel publish 0142 --photograph yes
  backleaf panel publish 0143 --withdraw --because "the owner asked"`,
		Args: wanted(1, -1, "the panels to show"),
		RunE: func(c *cobra.Command, args []string) error {
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.Published {
				p.Shown = record.Yes
				if withdraw {
					p.Shown = record.No
				}
				typed.Word(r, "photograph", photograph, &p.Photograph)
				return p
			})
		},
	}
	o.flags(c)
	c.Flags().BoolVar(&withdraw, "withdraw", false, "take the page away again")
	c.Flags().StringVar(&photograph, "photograph", "", "may the photograph of a sold work be shown: yes, no")
	c.Flags().StringVar(&p.Because, "because", "", "why")
	return c
}
