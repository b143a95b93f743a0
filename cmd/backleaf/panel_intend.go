package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func panelIntend(a *app) *cobra.Command {
	var b record.Intended
	return onPanels(a, &cobra.Command{
		Use: "intend " + panelWords, Short: "say whether panels are meant to carry cloth",
		Example: `  backleaf panel intend 0142-0144 --cloth no
  backleaf panel intend 0143 --cloth yes --note "after all"`,
	}, "the panels that are meant", &b, func(f *actFlags) {
		word(f, &b.Cloth, "cloth", "yes, no, unknown")
		f.need("cloth", "--cloth yes or --cloth no", "are they meant to carry cloth?")
		f.text(&b.Note, "note", "remark")
	})
}
