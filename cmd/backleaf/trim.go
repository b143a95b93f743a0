package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newTrim(a *app) *cobra.Command {
	var o moment
	var t record.Trimmed
	var eased string
	c := &cobra.Command{
		Use: "trim " + panelWords, Short: "write down cloth trimmed flush",
		Example: `  backleaf trim batch:may --tool "fresh blade" --eased yes
  backleaf trim 0142-0155 --at 15:20`,
		Args: wanted(1, -1, "the panels that were trimmed"),
		RunE: func(c *cobra.Command, args []string) error {
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.Trimmed {
				typed.Word(r, "eased", eased, &t.Eased)
				return t
			})
		},
	}
	o.flags(c)
	c.Flags().StringVar(&t.Tool, "tool", "", "blade, scissors …")
	c.Flags().StringVar(&eased, "eased", "", "edges eased with sandpaper: yes, no, unknown")
	c.Flags().StringVar(&t.Note, "note", "", "remark")
	return c
}
