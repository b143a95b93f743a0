package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func panelIntend(a *app) *cobra.Command {
	var o moment
	var t record.Intended
	var cloth string
	c := &cobra.Command{
		Use: "intend " + panelWords, Short: "say whether panels are meant to carry cloth",
		Example: `  backleaf panel intend 0142-0144 --cloth no
  backleaf panel intend 0143 --cloth yes --note "after all"`,
		Args: wanted(1, -1, "the panels that are meant"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needs(cloth, "--cloth yes or --cloth no", "are they meant to carry cloth?"); err != nil {
				return err
			}
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.Intended {
				typed.Word(r, "cloth", cloth, &t.Cloth)
				return t
			})
		},
	}
	o.flags(c)
	c.Flags().StringVar(&cloth, "cloth", "", "yes, no, unknown")
	c.Flags().StringVar(&t.Note, "note", "", "remark")
	return c
}
