package main

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/typed"
)

func newRemove(a *app) *cobra.Command {
	var o moment
	var t record.Removed
	var what, extent string
	var on, means, layers []string
	var notOnRecord bool
	c := &cobra.Command{
		Use: "remove " + panelWords, Short: "write down that a layer was taken off, wholly or in part",
		Long: `Write down that a layer was taken off: a varnish, retouching, a ground, a cloth. The
record keeps the layer and what became of it. Without --layer all layers of that sort
on those faces are meant. It is a record, no advice: what to do is for a conservator.`,
		Example: `  backleaf remove 0142 --what varnish --means solvent --with "white spirit" --done-by "R. Invented, paintings conservator"
  backleaf remove 0143 --what ground --extent reduced --means sanding --on front
  backleaf remove 0144 --what varnish --not-on-record --extent in-part --where "sky" --at 2031`,
		Args: wanted(1, -1, "the panels a layer was taken off"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.atBench(c.Context(), &o, args, func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (w studio.Written, err error) {
				t.Faces, t.Means = r.Faces("on", on), typed.Words[record.Means](r, "means", means)
				typed.Word(r, "what", what, &t.What)
				typed.Word(r, "extent", extent, &t.Extent)
				for _, l := range layers {
					seq, err := typed.Entry(l)
					r.Fail(err)
					t.Layers = append(t.Layers, seq)
				}
				if r.Err() != nil {
					return w, r.Err()
				}
				return bench.Remove(ctx, v, at, t, notOnRecord)
			})
		},
	}
	o.flags(c)
	f := c.Flags()
	f.StringVar(&what, "what", "", strings.Join(record.Words("Stratum"), ", "))
	f.StringVar(&extent, "extent", "whole", "whole; reduced: thinned all over; in-part: off some places")
	f.StringSliceVar(&on, "on", nil, "faces (default all on which it lies)")
	f.StringSliceVar(&layers, "layer", nil, "entry by which it was laid, like E12")
	f.BoolVar(&notOnRecord, "not-on-record", false, "the layer itself was never written down")
	f.StringVar(&t.Where, "where", "", "which places, of a removal in part")
	f.StringSliceVar(&means, "means", nil, strings.Join(record.Words("Means"), ", "))
	f.StringVar(&t.With, "with", "", "the product it was taken off with")
	f.StringVar(&t.By, "done-by", "", "who did it, if not the studio")
	f.StringVar(&t.Because, "because", "", "why")
	f.StringVar(&t.Note, "note", "", "remark")
	return c
}
