package main

import (
	"context"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/typed"
)

func newRemove(a *app) *cobra.Command {
	t := record.Removed{Extent: "whole"}
	f := newFlags(&cobra.Command{
		Use: "remove " + panelWords, Short: "write down that a layer was taken off, wholly or in part",
		Long: `Write down that a layer was taken off: a varnish, retouching, a ground, a cloth. The
record keeps the layer and what became of it. Without --layer all layers of that sort
on those faces are meant. It is a record, no advice: what to do is for a conservator.`,
		Example: `  backleaf remove 0142 --what varnish --means solvent --with "white spirit" --done-by "R. Invented, paintings conservator"
  backleaf remove 0143 --what ground --extent reduced --means sanding --on front
  backleaf remove 0144 --what varnish --not-on-record --extent in-part --where "sky" --at 2031`,
		Args: wanted(1, -1, "the panels a layer was taken off"),
	})
	word(f, &t.What, "what", oneOf("Stratum"))
	word(f, &t.Extent, "extent", "whole; reduced: thinned all over; in-part: off some places")
	f.faces(&t.Faces, "on", "faces (default all on which it lies)")
	layers := f.c.Flags().StringSlice("layer", nil, "entry by which it was laid, like E12")
	f.reads = append(f.reads, func(r *typed.Reader) {
		for _, l := range *layers {
			seq, err := typed.Entry(l)
			r.Fail(err)
			t.Layers = append(t.Layers, seq)
		}
	})
	notOnRecord := f.c.Flags().Bool("not-on-record", false, "the layer itself was never written down")
	f.text(&t.Where, "where", "which places, of a removal in part")
	words(f, &t.Means, "means", oneOf("Means"))
	f.text(&t.With, "with", "the product it was taken off with")
	f.text(&t.By, "done-by", "who did it, if not the studio")
	f.text(&t.Because, "because", "why")
	f.text(&t.Note, "note", "remark")
	f.o.flags(f.c)
	return f.does(a, func(ctx context.Context, v *studio.View, _ *typed.Reader, at record.When) (studio.Written, error) {
		return bench.Remove(ctx, v, at, t, *notOnRecord)
	})
}
