package main

import (
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newCoat(a *app) *cobra.Command {
	var o moment
	var w coating
	var on, extra []string
	var as string
	c := &cobra.Command{
		Use: "coat " + panelWords, Short: "write down a coat on one or more faces",
		Example: `  backleaf coat batch:may --with sealer-3 --as sealer --on all --extra edges --amount "310 g"
  backleaf coat 0142-0155 --except 0147 --with "3 primer + 1 sealer" --on front --as ground --at 14:05`,
		Args: wanted(1, -1, "the panels that were coated"),
		RunE: func(c *cobra.Command, args []string) error {
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.Coat {
				coat := record.Coat{Coating: w.read(r), Faces: r.Faces("on", on), Extra: r.Faces("extra", extra)}
				typed.Word(r, "as", as, &coat.Purpose)
				return coat
			})
		},
	}
	o.flags(c)
	o.coatFlags(c)
	w.flags(c)
	c.Flags().StringSliceVar(&on, "on", nil, "faces: front, back, edges, all")
	c.Flags().StringSliceVar(&extra, "extra", nil, "faces that were given more")
	c.Flags().StringVar(&as, "as", "", "what the coat is for: "+strings.Join(record.Words("Purpose"), ", ")+" (default: what the material is for, if that is one thing)")
	return c
}
