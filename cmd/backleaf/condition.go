package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newCondition(a *app) *cobra.Command {
	var o moment
	var t record.Condition
	var text string
	c := &cobra.Command{
		Use: "condition " + panelWords + " [TEXT]", Short: "write down a condition report",
		Example: `  backleaf condition 0142 "no lifting; one scratch in the varnish, 12 mm" --by "R. Invented, paintings conservator" --because "before a loan"
  backleaf condition 0142 --by "the owner" --text "hangs flat" --at 2031`,
		Args: wanted(1, -1, "the panel, and how it was found"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needs(t.By, "name and calling, like --by \"R. Invented, paintings conservator\"", "who looked?"); err != nil {
				return err
			}
			terms, said, err := careText(text, args)
			if err != nil {
				return err
			}
			t.Text = said
			return act(a, c.Context(), &o, terms, func(*typed.Reader) record.Condition { return t })
		},
	}
	f := c.Flags()
	f.StringVar(&t.By, "by", "", "who looked; stands in the journal and in papers: no private name without leave")
	f.StringVar(&text, "text", "", "how it was found")
	f.StringVar(&t.Why, "because", "", "why it was examined")
	o.flags(c)
	return c
}
