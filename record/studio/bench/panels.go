package bench

import (
	"cmp"
	"context"
	"reflect"
	"slices"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/stock"
)

// MostCut bounds how many panels are numbered at once.
const MostCut = 1000

// Panels is a number of equal panels, as they are asked for.
type Panels struct {
	Count   int
	Size    record.Size
	Grain   record.Grain // the side along which it is to run; empty: either
	NoCloth bool         // they are meant to carry none
}

// Add numbers new panels of several sizes, alike in all else.
func Add(ctx context.Context, v *studio.View, at record.When, common record.Cut, ps []Panels, also ...record.Entry) (studio.Written, error) {
	var cuts []record.Cut
	var bare []bool
	for _, p := range ps {
		common.Size, common.Grain = p.Size, cmp.Or(p.Grain, common.Grain)
		n := min(max(p.Count, 0), MostCut+1)
		cuts, bare = append(cuts, slices.Repeat([]record.Cut{common}, n)...), append(bare, slices.Repeat([]bool{p.NoCloth}, n)...)
	}
	return number(ctx, v, at, cuts, bare, also)
}

// Cut numbers new panels in their order, each as it was cut, all in one go.
// Those that are alike share an entry; all are of the batch of the first,
// which without a name bears that of the day. What else came of it, such as
// offcuts, is written with them; an entry about panels is about all of these.
func Cut(ctx context.Context, v *studio.View, at record.When, cuts []record.Cut, also ...record.Entry) (studio.Written, error) {
	return number(ctx, v, at, cuts, make([]bool, len(cuts)), also)
}

// number is [Cut] for panels of which some are meant to carry no cloth.
func number(ctx context.Context, v *studio.View, at record.When, cuts []record.Cut, bare []bool, also []record.Entry) (studio.Written, error) {
	if len(cuts) < 1 || len(cuts) > MostCut {
		return studio.Written{}, refuse.Unclearly("count", "1 to %d panels are numbered at once", MostCut)
	}
	for _, c := range cuts {
		if err := noSuchBoard(v.Shop, c); err != nil {
			return studio.Written{}, err
		}
	}
	batch := record.Key(strings.ToLower(string(cmp.Or(cuts[0].Batch, record.Key(batchName(v, at))))))
	doubts := doubtCuts(ctx, v, at, batch, cuts)
	w, err := v.Compose(ctx, func(d *book.Draft) ([]record.Entry, map[int]book.Private, error) {
		ns, err := numbers(d, v, len(cuts))
		if err != nil {
			return nil, nil, err
		}
		var es []record.Entry
		var without []record.Number
		for i, c := range cuts {
			if bare[i] {
				without = append(without, ns[i])
			}
			c.Batch = batch
			k := slices.IndexFunc(es, func(e record.Entry) bool { return reflect.DeepEqual(e.Body, c) })
			if k < 0 {
				k, es = len(es), append(es, record.Entry{At: at, Body: c})
			}
			es[k].Panels = append(es[k].Panels, ns[i])
		}
		if without != nil {
			es = append(es, record.Entry{At: at, Panels: without, Body: record.Intended{Cloth: record.No}})
		}
		for _, e := range also {
			if e.Kind().Traits().Least > 0 && e.Panels == nil {
				e.Panels = ns
			}
			es = append(es, e)
		}
		return es, nil, nil
	})
	if err == nil {
		toAmend(doubts, func(int) record.Entry { return w.Entries[0] })
	}
	w.Warnings = append(doubts, w.Warnings...)
	for _, c := range cuts {
		w.Means = append(w.Means, record.Say("size-comes-to", record.With("size", c.Size)))
	}
	if err != nil {
		return w, err
	}
	left, over, err := stock.Left(context.WithoutCancel(ctx), v.Book, v.Shop, cuts[0]) // they are on record
	w.Means, w.Warnings = append(once(w.Means), left...), append(w.Warnings, over...)
	return w, err
}

// numbers gives the next numbers of the year in which they are written down,
// while no other process can take them.
func numbers(d *book.Draft, v *studio.View, count int) ([]record.Number, error) {
	year := v.Local().Year()
	next, err := d.NextSerial(year)
	if err != nil {
		return nil, err
	}
	var ns []record.Number
	for i := range count {
		n, err := record.NewNumber(v.Shop.Studio.Mark, year, next+i, v.Shop.Studio.NAAN)
		if err != nil {
			return nil, err
		}
		ns = append(ns, n)
	}
	return ns, nil
}

// batchName names a batch after the day it was cut. Today's date would say
// something of older panels that nobody recorded.
func batchName(v *studio.View, at record.When) string {
	if at.String() == "" {
		return v.Local().Format(time.DateOnly)
	}
	if at.Date().IsExactDay() {
		day, _, _ := strings.Cut(at.String(), "T")
		return day
	}
	return "older"
}

// Photograph keeps a picture with the panels of a view. It is on the disk
// before the entry that names it.
func Photograph(ctx context.Context, v *studio.View, at record.When, p record.Photograph, data []byte) (studio.Written, error) {
	if err := kept.Keep(v.Book.Path(), kept.Photograph(p), data); err != nil {
		return studio.Written{}, err
	}
	return Do(ctx, v, at, p)
}
