package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func newWarm(a *app) *cobra.Command {
	var b record.WarmAir
	return onPanels(a, &cobra.Command{
		Use: "warm " + panelWords, Short: "write down drying helped by warm air",
		Long: "Write down drying helped by warm air. It drives water out; it hardens nothing.",
		Example: `  backleaf warm batch:may --for "10 min"
  backleaf warm 0142 --on back --for "5 min" --at 15:00`,
	}, "the panels that were warmed", &b, func(f *actFlags) {
		f.faces(&b.Faces, "on", "faces")
		f.value(&b.For, "for", "how long: \"10 min\"")
		f.text(&b.Note, "note", "remark")
	})
}
