package main

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/planning"
	"backleaf/record/studio/typed"
)

func newPanel(a *app) *cobra.Command {
	return folder("panel", "panels: add, list, show, describe, photograph, mark, resize, reuse, discard …",
		panelAdd(a), listAs(a, "panel list"), showAs(a, "panel show"), panelDescribe(a), panelPhoto(a), panelBrace(a), panelMark(a), panelIntend(a), panelResize(a), panelReuse(a), panelPublish(a), panelDiscard(a))
}

func panelAdd(a *app) *cobra.Command {
	var o moment
	var cut record.Cut
	var count int
	var offcuts []string
	var noCloth bool
	var batch, size, boardKey, grain, loss, rough, settled, degreased, keyed string
	var bow, span, hollow, along, bought, recorded string
	c := &cobra.Command{
		Use: "add [\"8 of 30x40 cm\" …]", Short: "number new panels: boards cut to size, one batch",
		Example: `  backleaf panel add --count 14 --batch may --size "30 x 40 cm x 3 mm" --board birch-1 --grain width
  backleaf panel add "8 of 30x40 cm x 3 mm" "6 of 20x20 cm x 3 mm" --batch june --board birch-1 --no-cloth
  backleaf panel add --size "8 x 10 x 1/8 in" --board mdf-3mm --own-reference "old no. 17" --at 1998~`,
		RunE: func(c *cobra.Command, args []string) error {
			switch {
			case size == "" && len(args) == 0:
				return usage("height x width x depth, like --size \"30 x 40 cm x 3 mm\"; --size \"unknown x unknown\" if nobody knows", "how large are they?")
			case size != "" && len(args) > 0:
				return usage("put it in quotes: --size \""+size+" "+strings.Join(args, " ")+"\"", "the size ends at %q", size)
			}
			return a.atBench(c.Context(), &o, nil, func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (studio.Written, error) {
				panels := []bench.Panels{{Count: count}}
				if r.Text("size", size, &panels[0].Size); len(args) > 0 {
					panels = planning.ParsePanels(r, strings.Join(args, " "))
				}
				for i := range panels {
					panels[i].NoCloth = panels[i].NoCloth || noCloth
				}
				r.Text("saw-loss", loss, &cut.SawLoss)
				r.Text("settled", settled, &cut.Settled)
				typed.Word(r, "grain", grain, &cut.Grain)
				typed.Word(r, "rough-side", rough, &cut.Rough)
				typed.Word(r, "degreased", degreased, &cut.Degreased)
				typed.Word(r, "keyed", keyed, &cut.Keyed)
				r.Text("bow", bow, &cut.Bow)
				r.Text("span", span, &cut.BowSpan)
				typed.Word(r, "hollow-to", hollow, &cut.BowToward)
				typed.Word(r, "along", along, &cut.BowAlong)
				typed.Word(r, "bought-ready", bought, &cut.Bought)
				typed.Word(r, "recorded", recorded, &cut.Recorded)
				cut.Board, cut.Lot = r.OnShelf(boardKey)
				cut.Batch = record.Key(batch)
				if r.Err() != nil {
					return studio.Written{}, r.Err()
				}
				lots, err := bench.Offcuts(v.Shop, cut.Lot, typed.Each[record.Size](r, "offcut", offcuts))
				if r.Fail(err); r.Err() != nil {
					return studio.Written{}, r.Err()
				}
				var also []record.Entry
				for _, l := range lots {
					also = append(also, record.Entry{At: at, Body: l})
				}
				return bench.Add(ctx, v, at, cut, panels, also...)
			})
		},
	}
	o.timeFlag(c)
	o.byFlag(c)
	f := c.Flags()
	f.IntVar(&count, "count", 1, "how many")
	f.StringVar(&batch, "batch", "", "name of the batch (default: the day they were cut, or \"older\" if that is not exact)")
	f.StringVar(&size, "size", "", "height x width x depth: \"30 x 40 cm x 3 mm\", \"8 x 10 x 1/8 in\"; without a unit, in the studio's")
	f.StringVar(&boardKey, "board", "", "lot or material of the board")
	f.StringVar(&grain, "grain", "", "run of the face grain: height, width, unknown")
	f.StringVar(&loss, "saw-loss", "", "width of board lost at each cut: \"3 mm\"")
	f.StringArrayVar(&offcuts, "offcut", nil, "what is left of the sheet and goes on the shelf: \"21 x 122 cm\"")
	f.StringVar(&rough, "rough-side", "", "screen side of a hardboard: front or back")
	f.StringVar(&settled, "settled", "", "time the board stood open in the workroom: \"3 d\"")
	f.StringVar(&degreased, "degreased", "", "yes, no, unknown")
	f.StringVar(&keyed, "keyed", "", "surface roughened: yes, no, unknown")
	f.BoolVar(&noCloth, "no-cloth", false, "they are meant to carry no cloth")
	f.StringVar(&bow, "bow", "", "bow of the board before the first coat: \"1 mm\"")
	f.StringVar(&span, "span", "", "length it was measured over: \"60 cm\"")
	f.StringVar(&hollow, "hollow-to", "", "front, back, flat")
	f.StringVar(&along, "along", "", "direction in which the bow was measured: "+strings.Join(record.Words("Along"), ", "))
	f.StringVar(&bought, "bought-ready", "", "the panel was bought made: yes, no, unknown")
	f.StringVar(&recorded, "recorded", "", "as-made, or afterwards: what is absent is then only not recorded (default: by how long ago it was)")
	f.StringVar(&cut.Owner, "own-reference", "", "your own older number")
	f.StringVar(&cut.Note, "note", "", "remark")
	return c
}
