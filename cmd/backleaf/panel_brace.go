package main

import (
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func panelBrace(a *app) *cobra.Command {
	var o moment
	var b record.Braced
	var kind, fixing, run string
	c := &cobra.Command{
		Use: "brace " + panelWords, Short: "write down a cradle, battens or a strainer on the back",
		Example: `  backleaf panel brace 0142 --with cradle --fixing sliding
  backleaf panel brace 0143 --with battens --fixing rigid --run across-grain`,
		Args: wanted(1, -1, "the panels that were braced"),
		RunE: func(c *cobra.Command, args []string) error {
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.Braced {
				typed.Word(r, "with", kind, &b.Bracing)
				typed.Word(r, "fixing", fixing, &b.Fixing)
				typed.Word(r, "run", run, &b.Run)
				return b
			})
		},
	}
	o.flags(c)
	c.Flags().StringVar(&kind, "with", "", strings.Join(record.Words("Bracing"), ", "))
	c.Flags().StringVar(&fixing, "fixing", "", "rigid, or sliding so that the board can move")
	c.Flags().StringVar(&run, "run", "", "against the face grain: along-grain, across-grain")
	c.Flags().StringVar(&b.Note, "note", "", "remark")
	return c
}
