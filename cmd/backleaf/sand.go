package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newSand(a *app) *cobra.Command {
	var b record.Sanded
	return onPanels(a, &cobra.Command{
		Use: "sand " + panelWords, Short: "write down a sanding",
		Long: `Write down a sanding. The scale belongs to the grit: P180 (ISO 6344) and CAMI 180
are not the same paper. Wear a dust mask, use extraction, and never dry-sand
anything that holds lead; local rules come first.`,
		Example: `  backleaf sand batch:may --on front --grit P180 --dusted yes
  backleaf sand 0142 --on front,edges --grit "CAMI 220" --through no`,
	}, "the panels that were sanded", &b, func(f *actFlags) {
		f.faces(&b.Faces, "on", "faces", "front")
		grit := f.c.Flags().String("grit", "", "scale and number: P180, \"CAMI 220\"")
		f.reads = append(f.reads, func(r *typed.Reader) { b.Scale, b.Grit = r.Grit("grit", *grit) })
		word(f, &b.Wet, "wet", "sanded wet: yes, no, unknown")
		word(f, &b.Through, "through", "sanded through to fibre or board: yes, no, unknown")
		word(f, &b.Dusted, "dusted", "dust taken off: yes, no, unknown")
		f.text(&b.Note, "note", "remark")
	})
}
