package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func newBare(a *app) *cobra.Command {
	var b record.LeftBare
	return onPanels(a, &cobra.Command{
		Use: "bare " + panelWords, Short: "write down that faces were left without any coat, on purpose",
		Example: `  backleaf bare 0142 --on back
  backleaf bare batch:may --on back,edges --because "to be glued into a frame"`,
	}, "the panels whose faces were left bare", &b, func(f *actFlags) {
		f.faces(&b.Faces, "on", "faces: front, back, edges, all")
		f.text(&b.Because, "because", "why")
	})
}
