package dossier

import (
	"slices"

	"backleaf/record"
	"backleaf/record/tell"
	"backleaf/record/trade"
)

func (b *builder) hazards() []Item {
	w := b.d.Hazards
	var out []Item
	say := func(s string) {
		if !slices.ContainsFunc(out, func(i Item) bool { return i == Item(Text{Text: s}) }) {
			out = append(out, Text{Text: s})
		}
	}
	pigment := func(p record.Pigment) {
		holds, may := trade.HazardsOf(p)
		metals := func(m tell.Message, hs []trade.Hazard) {
			var names []string
			for _, h := range hs {
				names = append(names, w.Metals[string(h)].With())
			}
			if names != nil {
				say(m.With("pigment", p.Name, "index", b.Said(p.Index), "metal", b.List(names)))
			}
		}
		metals(w.Pigment, holds)
		metals(w.PigmentMay, may)
	}
	for _, u := range b.p.Used() {
		m, _ := b.w.Material(u.Material, u.As)
		if m.Toxic == record.Yes {
			say(w.Toxic.With("product", m.Name))
		}
		if m.Hazard != "" {
			say(w.Recorded.With("product", m.Name, "hazard", m.Hazard))
		}
		for _, p := range m.Pigments {
			pigment(p)
		}
	}
	oil, solvent := false, false
	for _, l := range b.p.Layers() {
		if l.Paint != nil {
			for _, p := range l.Paint.Pigments {
				pigment(p)
			}
		}
		solvent = solvent || l.Varnish != nil
	}
	oil = slices.Contains(b.binders(), record.DryingOil) || slices.Contains(b.binders(), record.Alkyd)
	if oil {
		say(string(w.Oil))
	}
	if solvent {
		say(string(w.Solvent))
	}
	if m, ok := b.w.Material(b.p.Cut().Board, b.p.Cut().BoardAs); ok && trade.IsWooden(m.Board.Kind) != record.No {
		say(string(w.Board))
		if trade.IsGlued(m.Board.Kind) != record.No {
			say(w.Formaldehyde.With("class", b.Said(m.Board.Formaldehyde)))
		}
	}
	return append(out, Text{Text: string(w.Local), Strong: true}, Text{Text: string(w.Sources), Small: true})
}
