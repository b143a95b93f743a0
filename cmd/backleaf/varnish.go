package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newVarnish(a *app) *cobra.Command {
	var o moment
	var w coating
	var v record.Varnish
	var on []string
	var removable, gloss string
	c := &cobra.Command{
		Use: "varnish " + panelWords, Short: "write down a varnish",
		Example: `  backleaf varnish 0142 --with varnish-1 --tool "flat brush" --amount-each "6 g"
  backleaf varnish 0143 --resin "hydrocarbon resin" --removable yes --removed-with "white spirit"`,
		Args: wanted(1, -1, "the panels that were varnished"),
		RunE: func(c *cobra.Command, args []string) error {
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.Varnish {
				v.Coating, v.Faces = w.read(r), r.Faces("on", on)
				typed.Word(r, "removable", removable, &v.Removable)
				typed.Word(r, "gloss", gloss, &v.Gloss)
				return v
			})
		},
	}
	o.flags(c)
	o.coatFlags(c)
	w.flags(c)
	f := c.Flags()
	f.StringSliceVar(&on, "on", nil, "faces (default front)")
	f.StringVar(&v.Resin, "resin", "", "class of resin")
	f.StringVar(&removable, "removable", "", "can it be taken off: yes, no, unknown")
	f.StringVar(&v.RemovedWith, "removed-with", "", "what takes it off")
	f.StringVar(&gloss, "gloss", "", "matt, satin, gloss")
	return c
}
