package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func newCondition(a *app) *cobra.Command {
	var b record.Condition
	return onPanels(a, &cobra.Command{
		Use: "condition " + panelWords + " [TEXT]", Short: "write down a condition report",
		Example: `  backleaf condition 0142 "no lifting; one scratch in the varnish, 12 mm" --by "R. Invented, paintings conservator" --because "before a loan"
  backleaf condition 0142 --by "the owner" --text "hangs flat" --at 2031`,
	}, "the panel, and how it was found", &b, func(f *actFlags) {
		f.text(&b.By, "by", "who looked; stands in the journal and in papers: no private name without leave")
		f.need("by", "name and calling, like --by \"R. Invented, paintings conservator\"", "who looked?")
		f.said(&b.Text, "how it was found")
		f.text(&b.Why, "because", "why it was examined")
	})
}
