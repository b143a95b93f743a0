package main

import (
	"context"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/typed"
)

func newPanel(a *app) *cobra.Command {
	return folder("panel", "panels: cut, list, show, describe, photograph, brace, discard",
		panelAdd(a), listAs(a, "panel list"), showAs(a, "panel show"), panelDescribe(a), panelPhoto(a), panelBrace(a), panelDiscard(a))
}

func panelAdd(a *app) *cobra.Command {
	var o moment
	var cut record.Cut
	var count int
	var batch, size, boardKey, grain, loss, rough, settled, degreased, keyed string
	c := &cobra.Command{
		Use: "add", Short: "number new panels: boards cut to size, one batch",
		Example: `  backleaf panel add --count 14 --batch may --size "30 x 40 cm x 3 mm" --board birch-1 --grain width
  backleaf panel add --size "8 x 10 x 1/8 in" --board mdf-3mm --own-reference "old no. 17" --at 1998~`,
		Args: wanted(0, 0, "no words, only flags"),
		RunE: func(c *cobra.Command, _ []string) error {
			if size == "" {
				return usage("height x width x depth, like --size \"30 x 40 cm x 3 mm\"; --size unknown x unknown if nobody knows", "how large are they?")
			}
			return a.atBench(c.Context(), &o, nil, func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (studio.Written, error) {
				r.Text("size", size, &cut.Size)
				r.Text("saw-loss", loss, &cut.SawLoss)
				r.Text("settled", settled, &cut.Settled)
				typed.Word(r, "grain", grain, &cut.Grain)
				typed.Word(r, "rough-side", rough, &cut.Rough)
				typed.Word(r, "degreased", degreased, &cut.Degreased)
				typed.Word(r, "keyed", keyed, &cut.Keyed)
				cut.Board, cut.Lot = r.OnShelf(boardKey)
				cut.Batch = record.Key(batch)
				if r.Err() != nil {
					return studio.Written{}, r.Err()
				}
				return bench.Cut(ctx, v, at, count, cut)
			})
		},
	}
	o.timeFlag(c)
	f := c.Flags()
	f.IntVar(&count, "count", 1, "how many")
	f.StringVar(&batch, "batch", "", "name of the batch (default: the day they were cut, or \"older\" if that is not exact)")
	f.StringVar(&size, "size", "", "height x width x depth: \"30 x 40 cm x 3 mm\", \"8 x 10 x 1/8 in\"; without a unit, in the studio's")
	f.StringVar(&boardKey, "board", "", "lot or material of the board")
	f.StringVar(&grain, "grain", "", "run of the face grain: height, width, unknown")
	f.StringVar(&loss, "saw-loss", "", "width of board lost at each cut: \"3 mm\"")
	f.StringVar(&rough, "rough-side", "", "screen side of a hardboard: front or back")
	f.StringVar(&settled, "settled", "", "time the board stood open in the workroom: \"3 d\"")
	f.StringVar(&degreased, "degreased", "", "yes, no, unknown")
	f.StringVar(&keyed, "keyed", "", "surface roughened: yes, no, unknown")
	f.StringVar(&cut.Owner, "own-reference", "", "your own older number")
	f.StringVar(&cut.Note, "note", "", "remark")
	return c
}
