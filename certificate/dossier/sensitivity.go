package dossier

import (
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/trade"
)

// sensitivity tells what the binders of the panel are sensitive to.
func (b *builder) sensitivity() []Item {
	c, w := b.d, b.d
	t := Table{Columns: []Column{{string(c.T("columns-binder")), 1.5}, {string(c.T("columns-water")), 1.3}, {string(c.T("columns-alcohol")), 1.3}, {string(c.T("columns-hydrocarbon")), 1.5}, {string(c.T("columns-heat")), 1.1}, {string(c.T("columns-alkali")), 1.2}}}
	var sources, unlisted []string
	for _, binder := range b.binders() {
		name := b.Word(binder)
		s, rests, ok := trade.EffectsOn(binder)
		if !ok {
			unlisted = append(unlisted, name)
			continue
		}
		row := []string{name}
		for _, effect := range []string{s.Water, s.Alcohol, s.Hydrocarbon, s.Heat, s.Alkali} {
			row = append(row, string(w.Effects[effect]))
		}
		t.Rows = append(t.Rows, row)
		sources = append(sources, w.T("products-effect-source").With("binder", b.c.Capital(name), "source", w.T("products-memory").With("source", rests.Works[0].Title())))
	}
	if t.Rows == nil && unlisted == nil {
		return []Item{Text{Text: string(w.T("products-no-binder"))}}
	}
	var out []Item
	if t.Rows != nil {
		out = append(out, t)
	}
	out = append(out, Text{Text: string(w.T("products-test-first")), Strong: true})
	if unlisted != nil {
		out = append(out, Text{Text: w.T("products-unlisted").With("binders", b.List(unlisted))})
	}
	if sources != nil {
		out = append(out, Text{Text: strings.Join(sources, " "), Small: true})
	}
	return out
}

// binders lists the binders of all layers, paint among them, in order of use.
func (b *builder) binders() []record.Binder {
	var out []record.Binder
	take := func(x record.Binder) {
		if known(string(x)) && !slices.Contains(out, x) {
			out = append(out, x)
		}
	}
	for _, l := range b.p.Layers() {
		if l.Coating == nil {
			continue
		}
		for _, p := range l.Coating.Mix {
			m, _ := b.w.Material(p.Material, p.As)
			take(m.Binder)
		}
		if l.Paint != nil && len(l.Coating.Mix) == 0 {
			take(trade.BinderOfMedium(l.Paint.Medium))
		}
	}
	return out
}
