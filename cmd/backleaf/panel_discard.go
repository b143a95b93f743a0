package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func panelDiscard(a *app) *cobra.Command {
	var b record.Discarded
	return onPanels(a, &cobra.Command{
		Use: "discard " + panelWords, Short: "give a panel up, with the reason; its number is never used again",
		Example: `  backleaf panel discard 0147 --because "cloth lifted along the lower edge"
  backleaf panel discard 0150..0152 --because "numbered by mistake"`,
	}, "the panels to give up", &b, func(f *actFlags) {
		f.text(&b.Because, "because", "the reason")
		f.need("because", "", "say --because: a reader will ask")
	})
}
