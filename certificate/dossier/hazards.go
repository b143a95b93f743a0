package dossier

import (
	"slices"

	"backleaf/record"
	"backleaf/record/trade"
)

func (b *builder) hazards() []Item {
	w := b.d
	var out []Item
	say := func(s string) {
		if !slices.ContainsFunc(out, func(i Item) bool { return i == Item(Text{Text: s}) }) {
			out = append(out, Text{Text: s})
		}
	}
	found := trade.PanelDangers(b.w, b.p).Found
	for _, d := range found {
		switch d.Risk {
		case trade.Stated:
			say(w.T("hazards-toxic").With("product", d.Product))
		case trade.HazardText:
			say(w.T("hazards-recorded").With("product", d.Product, "hazard", d.Text))
		case trade.OilyRags:
			say(string(w.T("hazards-oil")))
		case trade.Solvents:
			say(string(w.T("hazards-solvent")))
		case trade.WoodDust:
			say(string(w.T("hazards-board")))
		case trade.Formaldehyde:
			say(w.T("hazards-formaldehyde").With("class", b.Said(d.Text)))
		default:
			m := w.T("hazards-pigment-may")
			if d.Sure {
				m = w.T("hazards-pigment")
			}
			say(m.With("pigment", d.Pigment.Name, "index", b.Said(d.Pigment.Index), "metal", b.List(b.metals(found, d))))
		}
	}
	return append(out, Text{Text: string(w.T("hazards-local")), Strong: true}, Text{Text: string(w.T("hazards-sources")), Small: true})
}

// metals names what a pigment holds, or may hold, as one danger says.
func (b *builder) metals(found []trade.Danger, d trade.Danger) []string {
	var names []string
	for _, x := range found {
		if name := b.Word(record.Code(x.Risk)); x.Pigment == d.Pigment && x.Sure == d.Sure && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}
