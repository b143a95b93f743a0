package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func newInspect(a *app) *cobra.Command {
	var b record.Inspection
	return onPanels(a, &cobra.Command{
		Use: "inspect " + panelWords, Short: "write down a look at a panel",
		Example: `  backleaf inspect 0142 --bow "1.5 mm" --span "60 cm" --hollow-to front --edges sound --adhesion sound
  backleaf inspect batch:may --adhesion sound --remarks "tapped all over"`,
	}, "the panels that were looked at", &b, func(f *actFlags) {
		f.value(&b.Bow, "bow", "height of the bow: \"1.5 mm\"")
		f.value(&b.Span, "span", "length it was measured over: \"60 cm\"")
		word(f, &b.Toward, "hollow-to", "front, back, flat")
		word(f, &b.Along, "along", "direction in which the bow was measured: "+oneOf("Along"))
		word(f, &b.Edges, "edges", oneOf("Sound"))
		word(f, &b.Adhesion, "adhesion", "by tapping: "+oneOf("Sound"))
		f.text(&b.By, "by", "who looked")
		f.text(&b.Remarks, "remarks", "anything else")
	})
}
