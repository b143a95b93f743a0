package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func newTrim(a *app) *cobra.Command {
	var b record.Trimmed
	return onPanels(a, &cobra.Command{
		Use: "trim " + panelWords, Short: "write down cloth trimmed flush",
		Example: `  backleaf trim batch:may --tool "fresh blade" --eased yes
  backleaf trim 0142-0155 --at 15:20`,
	}, "the panels that were trimmed", &b, func(f *actFlags) {
		f.text(&b.Tool, "tool", "blade, scissors …")
		word(f, &b.Eased, "eased", "edges eased with sandpaper: yes, no, unknown")
		f.text(&b.Note, "note", "remark")
	})
}
