package book

import (
	"cmp"
	"context"
	"runtime"
	"slices"

	"backleaf/record"
)

// chunk is how many panels are folded at once where all of them are asked
// for: enough that the shelf is not folded too often, few enough that memory
// stays flat.
const chunk = 1000

// Each folds panels a thousand at a time, on all cores, asks of each what work
// says, and gives the answers to f in the order of the numbers. The workshop
// that work sees holds the whole shelf, the panel, and all panels that shared
// a layer with it, since an amount for a batch says nothing of one panel
// without the sizes of the others. work is called from several goroutines.
func Each[T any](ctx context.Context, b *Book, numbers []record.Number, work func(*record.Workshop, *record.Panel) (T, error), f func(T) error) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	shelf, err := b.shelf(ctx)
	if err != nil {
		return err
	}
	type answers struct {
		all []T
		err error
	}
	turns := make(chan chan answers, runtime.GOMAXPROCS(0))
	go func() {
		defer close(turns)
		for part := range slices.Chunk(numbers, chunk) {
			turn := make(chan answers, 1)
			select {
			case turns <- turn:
			case <-ctx.Done():
				return
			}
			go func() {
				var a answers
				a.all, a.err = each(ctx, b, shelf, part, work)
				turn <- a
			}()
		}
	}()
	for turn := range turns {
		a := <-turn
		for _, t := range a.all {
			a.err = cmp.Or(a.err, ctx.Err())
			if a.err == nil {
				a.err = f(t)
			}
		}
		if a.err != nil {
			return a.err
		}
	}
	return ctx.Err()
}

func each[T any](ctx context.Context, b *Book, shelf []record.Entry, part []record.Number, work func(*record.Workshop, *record.Panel) (T, error)) ([]T, error) {
	es, err := b.about(ctx, part)
	if err != nil {
		return nil, err
	}
	w, err := record.Fold(merged(shelf, es))
	if err != nil {
		return nil, err
	}
	var out []T
	for _, n := range part {
		p := w.Panel(n)
		if p == nil {
			continue // it came between two looks at the book
		}
		t, err := work(w, p)
		if err = cmp.Or(err, ctx.Err()); err != nil {
			return nil, err
		}
		out = append(out, t)
	}
	return out, nil
}

// shelf reads all entries about no panel, with what corrects them.
func (b *Book) shelf(ctx context.Context) (es []record.Entry, err error) {
	err = b.view(ctx, func(s *session) error {
		es, err = s.entries(`WITH RECURSIVE need (seq) AS (
			SELECT seq FROM about WHERE panels = 0 AND kind NOT IN ('amended', 'withdrawn')
			UNION SELECT c.seq FROM correction c JOIN need n ON c.of = n.seq)
			SELECT seq, bytes FROM entry WHERE seq IN need ORDER BY seq`)
		return err
	})
	return es, err
}

// about reads all entries about panels and about those that shared a layer
// with them.
func (b *Book) about(ctx context.Context, part []record.Number) (es []record.Entry, err error) {
	const query = `WITH RECURSIVE need (seq) AS (
		SELECT seq FROM mention WHERE panel IN (SELECT value FROM json_each(?1))
		UNION SELECT c.seq FROM correction c JOIN need n ON c.of = n.seq)
		SELECT seq, bytes FROM entry WHERE seq IN need ORDER BY seq`
	err = b.view(ctx, func(s *session) error {
		if es, err = s.entries(query, jsonList(part)); err != nil {
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
		if others == nil {
			return nil
		}
		more, err := s.entries(query, jsonList(others))
		es = merged(es, more)
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
