package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func panelBrace(a *app) *cobra.Command {
	var b record.Braced
	return onPanels(a, &cobra.Command{
		Use: "brace " + panelWords, Short: "write down a cradle, battens or a strainer on the back",
		Example: `  backleaf panel brace 0142 --with cradle --fixing sliding
  backleaf panel brace 0143 --with battens --fixing rigid --run across-grain`,
	}, "the panels that were braced", &b, func(f *actFlags) {
		word(f, &b.Bracing, "with", oneOf("Bracing"))
		word(f, &b.Fixing, "fixing", "rigid, or sliding so that the board can move")
		word(f, &b.Run, "run", "against the face grain: along-grain, across-grain")
		f.text(&b.Note, "note", "remark")
	})
}
