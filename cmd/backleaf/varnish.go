package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func newVarnish(a *app) *cobra.Command {
	var b record.Varnish
	return onPanels(a, &cobra.Command{
		Use: "varnish " + panelWords, Short: "write down a varnish",
		Example: `  backleaf varnish 0142 --with varnish-1 --tool "flat brush" --amount-each "6 g"
  backleaf varnish 0143 --resin "hydrocarbon resin" --removable yes --removed-with "white spirit"`,
	}, "the panels that were varnished", &b, func(f *actFlags) {
		f.coating(&b.Coating)
		f.faces(&b.Faces, "on", "faces (default front)")
		f.text(&b.Resin, "resin", "class of resin")
		word(f, &b.Removable, "removable", "can it be taken off: yes, no, unknown")
		f.text(&b.RemovedWith, "removed-with", "what takes it off")
		word(f, &b.Gloss, "gloss", "matt, satin, gloss")
	})
}
