package dossier

import (
	"slices"

	"backleaf/record"
	"backleaf/record/tell"
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
		if m := tell.MetalOf(p); m != "" {
			say(w.Pigment.With("pigment", p.Name, "index", b.Said(p.Index), "metal", string(w.Metals[m])))
		}
	}
	keys, _ := b.used()
	for _, k := range keys {
		m, _ := b.w.Material(k)
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
	if m, ok := b.w.Material(b.p.Cut().Board); ok && m.Board.Kind != record.AluminiumComp {
		say(string(w.Board))
		if m.Board.Kind != record.SolidWood {
			say(w.Formaldehyde.With("class", b.Said(m.Board.Formaldehyde)))
		}
	}
	return append(out, Text{Text: string(w.Local), Strong: true}, Text{Text: string(w.Sources), Small: true})
}
