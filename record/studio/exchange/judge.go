package exchange

import (
	"cmp"
	"context"
	"slices"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/handover"
)

// past is what stands before an entry of a file: the book, and what the file
// says before it. Of it only what acts of today are about is held.
type past struct {
	*studio.View
	draft *book.Draft
	last  record.Number
	cut   map[record.Key][]record.Number // by the file

	roll    record.Roll // nil batches: no act was judged yet
	entries []record.Entry
	general []int // about no panel
	of      map[record.Number][]int
	fixes   map[int64][]int
	held    map[int64]bool
	known   map[record.Number]bool
}

// add notes an entry that was written.
func (p *past) add(e record.Entry) {
	if c, ok := e.Body.(record.Cut); ok {
		if p.cut == nil {
			p.cut = map[record.Key][]record.Number{}
		}
		p.cut[c.Batch] = append(p.cut[c.Batch], e.Panels...)
		for _, n := range e.Panels {
			if cmp.Or(cmp.Compare(n.Year(), p.last.Year()), cmp.Compare(n.Serial(), p.last.Serial())) >= 0 {
				p.last = n
			}
		}
		if p.roll.Batches != nil {
			p.roll.Batches[c.Batch] = append(p.roll.Batches[c.Batch], e.Panels...)
		}
	}
	if p.held != nil {
		p.hold(e)
	}
}

func (p *past) hold(e record.Entry) {
	if p.held[e.Seq] {
		return
	}
	p.held[e.Seq] = true
	i := len(p.entries)
	p.entries = append(p.entries, e)
	for _, n := range e.Panels {
		p.of[n] = append(p.of[n], i)
	}
	switch of := e.Corrects(); {
	case of != 0:
		p.fixes[of] = append(p.fixes[of], i)
	case len(e.Panels) == 0:
		p.general = append(p.general, i)
	}
}

// look reads what is there of the shelf, and of the batches of these panels.
func (p *past) look(ns []record.Number) error {
	if p.held == nil {
		p.of, p.fixes, p.held, p.known = map[record.Number][]int{}, map[int64][]int{}, map[int64]bool{}, map[record.Number]bool{}
		p.roll = p.Roll
		p.roll.Batches = map[record.Key][]record.Number{}
		for _, batches := range []map[record.Key][]record.Number{p.Roll.Batches, p.cut} {
			for k, batch := range batches {
				p.roll.Batches[k] = append(p.roll.Batches[k], batch...)
			}
		}
	} else if !slices.ContainsFunc(ns, func(n record.Number) bool { return !p.known[n] }) {
		return nil
	}
	more := slices.Clone(ns)
	for _, batch := range p.roll.Batches {
		if slices.ContainsFunc(ns, func(n record.Number) bool { return slices.Contains(batch, n) }) {
			more = append(more, batch...)
		}
	}
	es, err := p.draft.Needed(more)
	if err != nil {
		return err
	}
	for _, e := range es {
		p.hold(e)
	}
	for _, n := range more {
		p.known[n] = true
	}
	return nil
}

// workshop folds what these panels need.
func (p *past) workshop(ns []record.Number) (*record.Workshop, error) {
	if err := p.look(ns); err != nil {
		return nil, err
	}
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
	slices.SortFunc(es, func(a, b record.Entry) int { return int(a.Seq - b.Seq) })
	return record.Fold(es)
}

// judge says what there is to say of an act by what stands before it, and
// completes it.
func (p *past) judge(ctx context.Context, e record.Entry) (record.Body, []record.Said, error) {
	v := *p.View
	var old record.Entry
	var err error
	if seq := e.Corrects(); seq != 0 {
		if old, _, _, err = p.draft.History(seq); err != nil {
			return e.Body, nil, err
		}
	}
	if v.Shop, err = p.workshop(append(old.Panels, e.Panels...)); err != nil {
		return e.Body, nil, nil // what does not hang together is refused when it is written
	}
	v.Roll, v.Panels, v.Alone = p.roll, e.Panels, e.Panels
	v.Shops = func(_ context.Context, ns ...record.Number) (*record.Workshop, error) { return p.workshop(ns) }
	_, cut := e.Body.(record.Cut)
	if h, ok := e.Body.(record.HandedOver); ok && known(&v) {
		return h, handover.Doubt(&v, e.At, h.How), nil
	}
	if !cut && !known(&v) {
		return e.Body, nil, nil // it is refused when it is written
	}
	return bench.Before(ctx, &v, e.At, e.Body)
}

func known(v *studio.View) bool {
	return !slices.ContainsFunc(v.Panels, func(n record.Number) bool { return v.Shop.Panel(n) == nil })
}
