package main

import (
	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/planning"
	"backleaf/record/studio/typed"
)

func panelAdd(a *app) {
	var cut record.Cut
	var size string
	var offcuts texts
	var noCloth bool
	var terms []string
	count := 1
	o := &moment{}
	o.terms = func(args []string) ([]string, error) {
		terms = args
		switch {
		case size == "" && len(args) == 0:
			return nil, usage("height x width x depth, like --size \"30 x 40 cm x 3 mm\"; --size \"unknown x unknown\" if nobody knows", "how large are they?")
		case size != "" && len(args) > 0:
			return nil, usage("put it in quotes: --size \""+size+" "+words(args)+"\"", "the size ends at %q", size)
		}
		return nil, nil
	}
	board := func(r *typed.Reader, t ...string) { cut.Board, cut.Lot = r.OnShelf(t[0]) }
	a.acts("panel add", o, func(d *doing) (w studio.Written, err error) {
		panels := []bench.Panels{{Count: count}}
		if d.r.Text("size", size, &panels[0].Size); len(terms) > 0 {
			panels = planning.ParsePanels(d.r, words(terms))
		}
		for i := range panels {
			panels[i].NoCloth = panels[i].NoCloth || noCloth
		}
		lots, err := bench.Offcuts(d.v.Shop, cut.Lot, typed.Each[record.Size](d.r, "offcut", offcuts))
		if d.r.Fail(err); d.r.Err() != nil {
			return w, d.r.Err()
		}
		var also []record.Entry
		for _, l := range lots {
			also = append(also, record.Entry{At: d.at, Body: l})
		}
		return bench.Add(d.ctx, d.v, d.at, cut, panels, also...)
	}, o.when(), flags{"by": &o.by, "count": &count, "batch": &cut.Batch, "size": &size, "board": board, "grain": &cut.Grain, "saw-loss": &cut.SawLoss,
		"offcut": &offcuts, "rough-side": &cut.Rough, "settled": &cut.Settled, "degreased": &cut.Degreased, "keyed": &cut.Keyed, "no-cloth": &noCloth,
		"bow": &cut.Bow, "span": &cut.BowSpan, "hollow-to": &cut.BowToward, "along": &cut.BowAlong, "bought-ready": &cut.Bought,
		"recorded": &cut.Recorded, "own-reference": &cut.Owner, "note": &cut.Note})
}
