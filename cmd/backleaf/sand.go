package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newSand(a *app) *cobra.Command {
	var o moment
	var t record.Sanded
	var on []string
	var grit, wet, through, dusted string
	c := &cobra.Command{
		Use: "sand " + panelWords, Short: "write down a sanding",
		Long: `Write down a sanding. The scale belongs to the grit: P180 (ISO 6344) and CAMI 180
are not the same paper. Wear a dust mask, use extraction, and never dry-sand
anything that holds lead; local rules come first.`,
		Example: `  backleaf sand batch:may --on front --grit P180 --dusted yes
  backleaf sand 0142 --on front,edges --grit "CAMI 220" --through no`,
		Args: wanted(1, -1, "the panels that were sanded"),
		RunE: func(c *cobra.Command, args []string) error {
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.Sanded {
				t.Faces = r.Faces("on", on)
				t.Scale, t.Grit = r.Grit("grit", grit)
				typed.Word(r, "wet", wet, &t.Wet)
				typed.Word(r, "through", through, &t.Through)
				typed.Word(r, "dusted", dusted, &t.Dusted)
				return t
			})
		},
	}
	o.flags(c)
	f := c.Flags()
	f.StringSliceVar(&on, "on", []string{"front"}, "faces")
	f.StringVar(&grit, "grit", "", "scale and number: P180, \"CAMI 220\"")
	f.StringVar(&wet, "wet", "", "sanded wet: yes, no, unknown")
	f.StringVar(&through, "through", "", "sanded through to fibre or board: yes, no, unknown")
	f.StringVar(&dusted, "dusted", "", "dust taken off: yes, no, unknown")
	f.StringVar(&t.Note, "note", "", "remark")
	return c
}
