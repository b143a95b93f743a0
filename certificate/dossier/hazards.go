package dossier

import (
	"slices"
	"strings"

	"backleaf/record"
)

// metals of pigments by Colour Index generic name, from memory of the Colour
// Index; only those that harm whoever sands, heats or cleans them.
var metals = map[string]string{
	"PW 1": "lead", "PY 41": "lead", "PR 105": "lead", "PY 42:1": "lead",
	"PY 34": "chromate", "PR 103": "chromate", "PR 104": "chromate", "PY 46": "lead",
	"PY 35": "cadmium", "PY 37": "cadmium", "PO 20": "cadmium", "PR 108": "cadmium",
	"PR 106": "mercury", "PG 21": "arsenic", "PG 22": "arsenic", "PY 39": "arsenic",
}

// metalNames are how a pigment without an index says it itself.
var metalNames = map[string]string{"lead": "lead", "flake white": "lead", "cremnitz": "lead", "naples yellow genuine": "lead", "cadmium": "cadmium",
	"vermilion": "mercury", "emerald green": "arsenic", "orpiment": "arsenic", "realgar": "arsenic", "chrome yellow": "chromate"}

// metalOf returns the harmful metal of a pigment, or nothing. "Hue" in a name
// says that the metal is imitated.
func metalOf(p record.Pigment) string {
	index := strings.ToUpper(strings.Join(strings.Fields(p.Index), " "))
	if i := strings.IndexAny(index, "0123456789"); i > 0 && !strings.Contains(index, " ") {
		index = index[:i] + " " + index[i:]
	}
	if m, ok := metals[index]; ok {
		return m
	}
	name := strings.ToLower(p.Name)
	if known(index) || strings.Contains(name, "hue") || strings.Contains(name, "lead-free") {
		return ""
	}
	for word, m := range metalNames {
		if strings.Contains(name, word) {
			return m
		}
	}
	return ""
}

func (b *builder) hazards() []Item {
	w := b.d.Hazards
	var out []Item
	say := func(s string) {
		if !slices.ContainsFunc(out, func(i Item) bool { return i == Item(Text{Text: s}) }) {
			out = append(out, Text{Text: s})
		}
	}
	pigment := func(p record.Pigment) {
		if m := metalOf(p); m != "" {
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
