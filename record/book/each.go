package book

import (
	"cmp"
	"context"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"backleaf/record"
)

// block is how many of them are asked at once, as an answer may be large.
const block = 64

// Each folds some panels at a time, on all cores, asks of each what work says,
// and gives the answers to f in the order of the numbers. The workshop that work
// sees holds studio, makers and shelf, the panel, the readings of the room near
// its layers, and all panels that shared a layer with it, since an amount for a
// batch says nothing of one panel without the sizes of the others. work is called
// from several goroutines.
func Each[T any](ctx context.Context, b *Book, numbers []record.Number, work func(*record.Workshop, *record.Panel) (T, error), f func(T) error) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	shelf, err := b.shelf(ctx)
	if err != nil {
		return err
	}
	type answer struct {
		of  T
		err error
	}
	turns := make(chan chan answer, runtime.GOMAXPROCS(0)-1)
	go func() {
		defer close(turns)
		for part := range slices.Chunk(numbers, folding) {
			turn := make(chan answer, block)
			select {
			case turns <- turn:
			case <-ctx.Done():
				return
			}
			go func() {
				defer close(turn)
				say := func(of T, err error) error {
					select {
					case turn <- answer{of, err}:
						return err
					case <-ctx.Done():
						return ctx.Err()
					}
				}
				if err := each(ctx, b, shelf, part, work, func(t T) error { return say(t, nil) }); err != nil {
					say(*new(T), err)
				}
			}()
		}
	}()
	for turn := range turns {
		for a := range turn {
			err := cmp.Or(a.err, ctx.Err())
			if err == nil {
				err = f(a.of)
			}
			if err != nil {
				return err
			}
		}
	}
	return ctx.Err()
}

// Walk folds some of the panels chosen at a time, as far as they need no shelf
// and no others, and gives each to f, in order of year and number.
func (b *Book) Walk(ctx context.Context, n Narrow, f func(*record.Panel) error) error {
	var ns []record.Number
	if err := b.Panels(ctx, n, func(p Present) error { ns = append(ns, p.Number); return nil }); err != nil {
		return err
	}
	for part := range slices.Chunk(ns, folding) {
		var w *record.Workshop
		err := b.view(ctx, func(s *session) error {
			es, err := s.entries(aboutPanels, jsonList(part))
			if err == nil {
				w, err = record.Fold(es, part...)
			}
			return err
		})
		if err != nil {
			return err
		}
		for _, p := range w.Panels {
			if err := cmp.Or(ctx.Err(), f(p)); err != nil {
				return err
			}
		}
	}
	return nil
}

func each[T any](ctx context.Context, b *Book, shelf []record.Entry, part []record.Number, work func(*record.Workshop, *record.Panel) (T, error), say func(T) error) error {
	es, err := b.about(ctx, part)
	if err != nil {
		return err
	}
	w, err := record.Fold(merged(shelf, es))
	if err != nil {
		return err
	}
	for some := range slices.Chunk(part, block) {
		type said struct {
			there bool
			of    T
			err   error
		}
		all := make([]said, len(some))
		var next atomic.Int64
		var cores sync.WaitGroup
		for range runtime.GOMAXPROCS(0) {
			cores.Go(func() {
				for i := next.Add(1) - 1; i < int64(len(some)); i = next.Add(1) - 1 {
					if p := w.Panel(some[i]); p != nil { // else it came between two looks at the book
						t, err := work(w, p)
						all[i] = said{true, t, err}
					}
				}
			})
		}
		cores.Wait()
		for _, x := range all {
			if err = x.err; err == nil && x.there {
				err = say(x.of)
			}
			if err != nil {
				return err
			}
		}
	}
	return nil
}

// shelf reads what describes the studio, its makers and what is on the shelf.
func (b *Book) shelf(ctx context.Context) (es []record.Entry, err error) {
	err = b.view(ctx, func(s *session) error {
		es, err = s.entries(corrected("SELECT seq FROM described"))
		return err
	})
	return es, err
}

// aboutPanels reads what names panels, and what corrects it.
var aboutPanels = corrected("SELECT seq FROM mention WHERE panel IN (SELECT value FROM json_each(?1))")

// about reads all entries about panels and about those that shared a layer
// with them, and the readings of the room that may speak for their layers.
func (b *Book) about(ctx context.Context, part []record.Number) (es []record.Entry, err error) {
	err = b.view(ctx, func(s *session) error {
		if es, err = s.entries(aboutPanels, jsonList(part)); err != nil {
			return err
		}
		asked := map[record.Number]bool{}
		for _, n := range part {
			asked[n] = true
		}
		var others []record.Number
		for _, e := range es {
			if !e.Kind().Traits().Layer {
				continue
			}
			for _, n := range e.Panels {
				if !asked[n] {
					asked[n], others = true, append(others, n)
				}
			}
		}
		air, err := airOver(s.entries, es)
		if err != nil {
			return err
		}
		more, err := s.entries(aboutPanels, jsonList(others))
		es = merged(merged(es, air), more)
		return err
	})
	return es, err
}

// merged joins two lists of entries, each in order, into one.
func merged(a, b []record.Entry) []record.Entry {
	out := slices.Concat(a, b)
	slices.SortFunc(out, func(x, y record.Entry) int { return cmp.Compare(x.Seq, y.Seq) })
	return slices.CompactFunc(out, func(x, y record.Entry) bool { return x.Seq == y.Seq })
}
