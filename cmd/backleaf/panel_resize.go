package main

import (
	"context"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/typed"
)

func panelResize(a *app) *cobra.Command {
	var t record.Resized
	f := newFlags(&cobra.Command{
		Use: "resize " + panelWords, Short: "write down that a panel was cut down or enlarged",
		Example: `  backleaf panel resize 0142 --to "28 x 40 cm x 3 mm" --because "a split corner"
  backleaf panel resize 0143 --to "32 x 42 cm" --how enlarged --done-by "R. Invented, conservator" --at 2031`,
		Args: wanted(1, -1, "the panels that have another size now"),
	})
	f.value(&t.Size, "to", "size now: height x width x depth")
	f.value(&t.Before, "from", "size before (default: as recorded)")
	word(f, &t.How, "how", oneOf("Resizing")+" (default: as the sizes tell)")
	f.text(&t.By, "done-by", "who did it, if not the studio")
	f.text(&t.Because, "because", "why")
	f.text(&t.Note, "note", "remark")
	f.o.flags(f.c)
	return f.does(a, func(ctx context.Context, v *studio.View, _ *typed.Reader, at record.When) (studio.Written, error) {
		return bench.Resize(ctx, v, at, t)
	})
}
