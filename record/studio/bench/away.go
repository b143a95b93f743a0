package bench

import (
	"slices"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
)

// atHand leaves out of work that needs panels here those that are not here, and
// out of work with cloth those meant to carry none, and names them.
// One that was named by itself is not left out silently: it is refused, unless
// it is said that those away are meant too.
func atHand(v *studio.View, at record.When, body record.Body) ([]record.Said, error) {
	k := body.Kind()
	var ws []record.Said
	if here := k.Traits().Bench || k == "warm-air" || k == "left-bare" || k == "climate" || k == "used-again"; here && !v.AlsoAway {
		var gone []record.Number
		for _, n := range v.Which(func(p *record.Panel) bool { return wasAway(p, record.When{}) }) {
			switch alone := slices.Contains(v.Alone, n); {
			case !alone:
				gone = append(gone, n)
			case wasAway(v.Shop.Panel(n), at): // what was certainly before it left can be said of it
				return nil, away(v, n)
			}
		}
		if len(gone) > 0 && len(gone) == len(v.Panels) {
			return nil, away(v, gone[0])
		}
		ws = LeaveOut(v, gone)
	}
	if k != "cloth" && k != "trimmed" {
		return ws, nil
	}
	bare := v.Which(func(p *record.Panel) bool { return p.ClothIntended() == record.No })
	named := slices.DeleteFunc(slices.Clone(bare), func(n record.Number) bool { return !slices.Contains(v.Alone, n) })
	bare = slices.DeleteFunc(bare, func(n record.Number) bool { return slices.Contains(named, n) })
	if len(bare) == len(v.Panels) {
		named, bare = append(named, bare...), nil
	}
	leave(v, bare)
	return slices.Concat(ws, about("left-without-cloth", bare), about("meant-without-cloth", named)), nil
}

// LeaveOut leaves panels that are not here out of a view, and names them.
func LeaveOut(v *studio.View, gone []record.Number) []record.Said {
	leave(v, gone)
	given := slices.DeleteFunc(slices.Clone(gone), func(n record.Number) bool { _, up := v.Shop.Panel(n).Discarded(); return !up })
	return append(about("left-out", slices.DeleteFunc(gone, func(n record.Number) bool { return slices.Contains(given, n) })), about("left-out-discarded", given)...)
}

func leave(v *studio.View, out []record.Number) {
	v.Panels = slices.DeleteFunc(slices.Clone(v.Panels), func(n record.Number) bool { return slices.Contains(out, n) })
}

// wasAway reports that a panel had left the studio, or was given up, and that
// this was not certainly after a time.
func wasAway(p *record.Panel, at record.When) bool {
	if d, ok := p.Discarded(); ok && !at.Before(d.At) {
		return true
	}
	var last record.Done[record.HandedOver]
	for _, h := range record.Each[record.HandedOver](p) {
		if !at.Before(h.At) {
			last = h
		}
	}
	return last.Seq != 0 && last.Body.How != "return"
}

func away(v *studio.View, n record.Number) error {
	if d, ok := v.Shop.Panel(n).Discarded(); ok {
		return refuse.Cannot("panel-discarded", "%s was discarded: %s", n, d.Body.Because).With(record.With("panel", n), record.With("entry", record.EntryRef(d.Seq)))
	}
	h, _ := v.Shop.Panel(n).Away()
	return refuse.Cannot("panel-away", "%s is not here", n).With(record.With("panel", n), record.With("how", h.Body.How), record.With("when", h.At), record.With("entry", record.EntryRef(h.Seq)))
}
