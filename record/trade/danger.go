package trade

import (
	"cmp"
	"slices"

	"backleaf/record"
)

// Risk is what a danger comes from: one of the [Hazards], or one of these.
type Risk string

// Risks that are no hazard of a pigment.
const (
	Stated       Risk = "stated"       // the material is recorded as harmful when sanded or cleaned
	HazardText   Risk = "hazard-text"  // the tin carries a hazard text, told as recorded
	OilyRags     Risk = "oily-rags"    // rags with drying oil catch fire by themselves
	Solvents     Risk = "solvents"     // it burns and its vapour harms
	WoodDust     Risk = "wood-dust"    // of the board, when sawn or sanded
	Formaldehyde Risk = "formaldehyde" // the board's glue gives it off
)

// Danger is one thing that whoever works on a panel should know of. Seq is 0
// for the board as such.
type Danger struct {
	Risk     Risk
	Sure     bool // false: it may be, by what the pigment's name stands for or in some grades
	Grave    bool // dust of it harms, and a label warns of it
	Seq      int64
	Face     record.Face
	Pigment  record.Pigment // where it comes from a pigment
	Material record.Key     // where it comes from a material
	Product  string         // the material's name, as it was then
	Text     string         // of a hazard text: the text; of a board: its formaldehyde class as printed
}

// Dangers is what is known of the dangers of some layers.
type Dangers struct {
	Found []Danger
	// Harmful answers whether sanding or cleaning any of the layers would set
	// free something harmful. No means that every layer says so.
	Harmful record.Answer
	// Open are the entries of layers of which it cannot be told.
	Open []int64
}

// DangersOf reads the dangers of layers, one or all of a panel.
func DangersOf(layers []Made) Dangers {
	d := Dangers{Harmful: no}
	if len(layers) == 0 {
		d.Harmful = maybe
	}
	for _, m := range layers {
		found := Dangers{}
		harmful := m.harmful(&found)
		if m.gone() == maybe {
			for i := range found.Found {
				found.Found[i].Sure = false
			}
			if harmful == yes {
				harmful = maybe
			}
		}
		for _, x := range found.Found {
			d.add(x)
		}
		if m.Layer.Cloth != nil && harmful != yes { // only a statement makes a cloth harmful
			continue
		}
		if harmful == maybe && !slices.Contains(d.Open, m.Layer.Seq) {
			d.Open = append(d.Open, m.Layer.Seq)
		}
		d.Harmful = Some(d.Harmful, harmful)
		if m.IsOil() == yes {
			d.add(Danger{Risk: OilyRags, Sure: true, Seq: m.Layer.Seq, Face: m.Layer.Face})
		}
		if bs, _ := m.Binders(); m.Layer.Varnish != nil && slices.ContainsFunc(bs, func(b record.Binder) bool { return binders[b].water == no }) {
			d.add(Danger{Risk: Solvents, Sure: true, Seq: m.Layer.Seq, Face: m.Layer.Face})
		}
	}
	slices.SortStableFunc(d.Found, func(a, b Danger) int { return cmp.Compare(a.Risk.rank(), b.Risk.rank()) })
	return d
}

// harmful adds what a layer holds, and answers whether its dust harms.
func (m Made) harmful(d *Dangers) record.Answer {
	at := Danger{Seq: m.Layer.Seq, Face: m.Layer.Face}
	stated := no
	for _, x := range m.Materials {
		if x.Toxic == yes {
			d.add(Danger{Risk: Stated, Sure: true, Grave: true, Seq: at.Seq, Face: at.Face, Material: x.Key, Product: x.Name})
		}
		if x.Hazard != "" {
			d.add(Danger{Risk: HazardText, Sure: true, Seq: at.Seq, Face: at.Face, Material: x.Key, Product: x.Name, Text: x.Hazard})
		}
		stated = Some(stated, cmp.Or(x.Toxic, maybe))
	}
	if !m.All {
		stated = Some(stated, maybe)
	}
	ps := m.Pigments()
	doubt := false // a name may stand for something that harms
	for _, p := range ps {
		dust := HarmfulDust(p)
		holds, may := HazardsOf(p)
		for _, h := range holds {
			d.add(Danger{Risk: Risk(h), Sure: true, Grave: h.grave() && dust == yes, Seq: at.Seq, Face: at.Face, Pigment: p})
		}
		for _, h := range may {
			d.add(Danger{Risk: Risk(h), Grave: h.grave() && dust != no, Seq: at.Seq, Face: at.Face, Pigment: p})
			doubt = doubt || h.grave() && dust != no
		}
	}
	dust := Among(ps, HarmfulDust)
	switch {
	case stated == yes || dust == yes:
		return yes
	case stated == no && !doubt, dust == no && m.Layer.Paint != nil && m.Told():
		return no
	}
	return maybe
}

func (d *Dangers) add(x Danger) {
	if !slices.Contains(d.Found, x) {
		d.Found = append(d.Found, x)
	}
}

func (r Risk) rank() int {
	if i := slices.Index(Hazards, Hazard(r)); i >= 0 {
		return i
	}
	return len(Hazards)
}

// PanelDangers reads the dangers of a whole panel, board included.
func PanelDangers(w *record.Workshop, p *record.Panel) Dangers {
	d := DangersOf(Layers(w, p))
	if m, ok := w.Material(p.Cut().Board, p.Cut().BoardAs); ok {
		b := Danger{Material: m.Key, Product: m.Name, Text: m.Board.Formaldehyde}
		for _, x := range []struct {
			risk Risk
			is   record.Answer
		}{{WoodDust, IsWooden(m.Board.Kind)}, {Formaldehyde, IsGlued(m.Board.Kind)}} {
			if b.Risk, b.Sure = x.risk, x.is == yes; x.is != no {
				d.add(b)
			}
		}
		if b.Risk, b.Sure, b.Text = HazardText, true, m.Hazard; m.Hazard != "" {
			d.add(b)
		}
	}
	return d
}
