package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func newCoat(a *app) *cobra.Command {
	var b record.Coat
	return onPanels(a, &cobra.Command{
		Use: "coat " + panelWords, Short: "write down a coat on one or more faces",
		Example: `  backleaf coat batch:may --with sealer-3 --as sealer --on all --extra edges --amount "310 g"
  backleaf coat 0142-0155 --except 0147 --with "3 primer + 1 sealer" --on front --as ground --at 14:05`,
	}, "the panels that were coated", &b, func(f *actFlags) {
		f.coating(&b.Coating)
		f.faces(&b.Faces, "on", "faces: front, back, edges, all")
		f.faces(&b.Extra, "extra", "faces that were given more")
		word(f, &b.Purpose, "as", "what the coat is for: "+oneOf("Purpose")+" (default: what the material is for, if that is one thing)")
	})
}
