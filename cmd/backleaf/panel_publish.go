package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func panelPublish(a *app) *cobra.Command {
	var b record.Published
	return onPanels(a, &cobra.Command{
		Use: "publish " + panelWords, Short: "show panels to those who scan the label, or no longer",
		Example: `  backleaf panel publish batch:may
  backleaf panel publish 0142 --photograph yes
  backleaf panel publish 0143 --withdraw --because "the owner asked"`,
	}, "the panels to show", &b, func(f *actFlags) {
		withdraw := f.c.Flags().Bool("withdraw", false, "take the page away again")
		f.reads = append(f.reads, func(*typed.Reader) {
			if b.Shown = record.Yes; *withdraw {
				b.Shown = record.No
			}
		})
		word(f, &b.Photograph, "photograph", "may the photograph of a sold work be shown: yes, no")
		f.text(&b.Because, "because", "why")
	})
}
