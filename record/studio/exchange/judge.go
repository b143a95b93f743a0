package exchange

import (
	"context"
	"slices"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/form"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/handover"
)

// past is what stands before an entry of a file: the book, and what the file
// says before it.
type past struct {
	entries []record.Entry
	general []int // about no panel
	of      map[record.Number][]int
	fixes   map[int64][]int
	roll    record.Roll
}

// before reads of the book what the entries of a file are about.
func before(ctx context.Context, v *studio.View, es []record.Entry) (*past, error) {
	p := &past{of: map[record.Number][]int{}, fixes: map[int64][]int{}, roll: v.Roll}
	p.roll.Batches = map[record.Key][]record.Number{}
	ns := []record.Number{}
	for k, batch := range v.Roll.Batches {
		p.roll.Batches[k] = slices.Clone(batch)
		if slices.ContainsFunc(es, func(e record.Entry) bool {
			return slices.ContainsFunc(e.Panels, func(n record.Number) bool { return slices.Contains(batch, n) })
		}) {
			ns = append(ns, batch...)
		}
	}
	stored, err := v.Book.Entries(ctx, book.Filter{Panels: ns})
	if err != nil {
		return nil, err
	}
	for _, e := range form.Entries(stored) {
		p.add(e)
	}
	return p, nil
}

func (p *past) add(e record.Entry) {
	i := len(p.entries)
	p.entries = append(p.entries, e)
	for _, n := range e.Panels {
		p.of[n] = append(p.of[n], i)
	}
	switch c, isCut := e.Body.(record.Cut); {
	case e.Corrects() != 0:
		p.fixes[e.Corrects()] = append(p.fixes[e.Corrects()], i)
	case len(e.Panels) == 0:
		p.general = append(p.general, i)
	case isCut:
		for _, n := range e.Panels {
			if !slices.Contains(p.roll.Batches[c.Batch], n) {
				p.roll.Batches[c.Batch] = append(p.roll.Batches[c.Batch], n)
			}
		}
	}
}

// workshop folds what these panels need.
func (p *past) workshop(ns []record.Number) (*record.Workshop, error) {
	need := slices.Clone(p.general)
	for _, n := range ns {
		need = append(need, p.of[n]...)
	}
	for i := 0; i < len(need); i++ { // corrections of corrections too
		need = append(need, p.fixes[p.entries[need[i]].Seq]...)
	}
	slices.Sort(need)
	var es []record.Entry
	for _, i := range slices.Compact(need) {
		es = append(es, p.entries[i])
	}
	return record.Fold(es)
}

// judged are entries of a file as they are to be written, each judged by what
// stands before it, and what there is to say of them.
func judged(ctx context.Context, v *studio.View, es []record.Entry, lines []int) (out []record.Entry, noted []Noted, err error) {
	if !slices.ContainsFunc(es, func(e record.Entry) bool { return e.Written.IsZero() }) {
		return es, nil, nil
	}
	size, _, err := v.Book.Tree(ctx)
	if err != nil {
		return nil, nil, err
	}
	p, err := before(ctx, v, es)
	if err != nil {
		return nil, nil, err
	}
	out = slices.Clone(es)
	for i, e := range es {
		if e.Written.IsZero() {
			one := *v
			one.Roll, one.Panels, one.Alone = p.roll, e.Panels, e.Panels
			one.Shops = func(_ context.Context, ns ...record.Number) (*record.Workshop, error) { return p.workshop(ns) }
			if one.Shop, err = p.workshop(e.Panels); err != nil {
				return es, nil, nil // what does not hang together is refused when it is written
			}
			var ws []record.Said
			if out[i].Body, ws, err = judge(ctx, &one, e); err != nil {
				return nil, noted, &book.AppendError{Index: i, Err: err}
			}
			noted = append(noted, at(lines[i], ws)...)
		}
		e.Seq, e.Body = size+int64(i)+1, out[i].Body
		if e.Written.IsZero() {
			e.Written = record.Moment(v.Local())
		}
		p.add(e)
	}
	return out, noted, nil
}

func judge(ctx context.Context, v *studio.View, e record.Entry) (record.Body, []record.Said, error) {
	_, cut := e.Body.(record.Cut)
	if h, ok := e.Body.(record.HandedOver); ok && known(v) {
		return h, handover.Doubt(v, h.How), nil
	}
	if !cut && !known(v) {
		return e.Body, nil, nil // it is refused when it is written
	}
	return bench.Before(ctx, v, e.At, e.Body)
}

func known(v *studio.View) bool {
	return !slices.ContainsFunc(v.Panels, func(n record.Number) bool { return v.Shop.Panel(n) == nil })
}
