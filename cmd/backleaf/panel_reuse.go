package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func panelReuse(a *app) *cobra.Command {
	var b record.UsedAgain
	return onPanels(a, &cobra.Command{
		Use: "reuse " + panelWords, Short: "begin another work on a panel that carried one before",
		Long: `Begin another work on a panel that carried one before. What was described and issued
before is of the earlier work; layers stay until "backleaf remove" says otherwise.`,
		Example: `  backleaf panel reuse 0142 --over-earlier-paint yes --earlier "harbour study, 2024"
  backleaf panel reuse 0143 --over-earlier-paint no`,
	}, "the panels that are used again", &b, func(f *actFlags) {
		word(f, &b.Over, "over-earlier-paint", "the earlier paint is still below: yes, no, unknown")
		f.text(&b.Earlier, "earlier", "the earlier work")
		f.text(&b.Note, "note", "remark")
	})
}
