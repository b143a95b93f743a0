package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func newTreat(a *app) *cobra.Command {
	var b record.Treatment
	return onPanels(a, &cobra.Command{
		Use: "treat " + panelWords + " [TEXT]", Short: "write down a treatment: who, what, with what, why",
		Long: `Write down what was done to a panel after it was finished, also years later and by
somebody else. It is a record, no advice: what to do is for a conservator.`,
		Example: `  backleaf treat 0142 "surface cleaned dry" --by "R. Invented, paintings conservator" --with "soft brush" --because "before a loan"
  backleaf treat 0142 --by "R. Invented" --text "scratch toned" --with "watercolour over the varnish" --on front --at 2031-02-24`,
	}, "the panel, and what was done to it", &b, func(f *actFlags) {
		f.text(&b.By, "by", "who did it; stands in the journal and in papers: no private name without leave")
		f.need("by", "name and calling, like --by \"R. Invented, paintings conservator\"", "who did it?")
		f.said(&b.Text, "what was done")
		f.text(&b.With, "with", "with what")
		f.text(&b.Why, "because", "why")
		f.faces(&b.Faces, "on", "faces")
	})
}
