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

func panelResize(a *app) *cobra.Command {
	var o moment
	var t record.Resized
	var to, from, how string
	c := &cobra.Command{
		Use: "resize " + panelWords, Short: "write down that a panel was cut down or enlarged",
		Example: `  backleaf panel resize 0142 --to "28 x 40 cm x 3 mm" --because "a split corner"
  backleaf panel resize 0143 --to "32 x 42 cm" --how enlarged --done-by "R. Invented, conservator" --at 2031`,
		Args: wanted(1, -1, "the panels that have another size now"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.atBench(c.Context(), &o, args, func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (w studio.Written, err error) {
				r.Text("to", to, &t.Size)
				r.Text("from", from, &t.Before)
				if typed.Word(r, "how", how, &t.How); r.Err() != nil {
					return w, r.Err()
				}
				return bench.Resize(ctx, v, at, t)
			})
		},
	}
	o.flags(c)
	f := c.Flags()
	f.StringVar(&to, "to", "", "size now: height x width x depth")
	f.StringVar(&from, "from", "", "size before (default: as recorded)")
	f.StringVar(&how, "how", "", strings.Join(record.Words("Resizing"), ", ")+" (default: as the sizes tell)")
	f.StringVar(&t.By, "done-by", "", "who did it, if not the studio")
	f.StringVar(&t.Because, "because", "", "why")
	f.StringVar(&t.Note, "note", "", "remark")
	return c
}
