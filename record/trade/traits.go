package trade

import "backleaf/record"

// boardTraits are the boards that advice tells apart.
var boardTraits = map[record.BoardKind]string{
	record.Plywood: "plywood", record.MDF: "mdf", record.Hardboard: "hardboard", record.TemperedHardboard: "hardboard",
	record.SolidWood: "solid-wood", record.AluminiumComp: "composite",
}

// paintTraits are the binders of paint that advice tells apart.
var paintTraits = map[record.Binder]string{record.Acrylic: "acrylic-paint", record.PVA: "acrylic-paint", record.Egg: "tempera", record.Wax: "wax"}

// mattBinders make paint that every touch marks and that drinks varnish.
var mattBinders = []record.Binder{"gum", record.Casein, record.AnimalGlue}

// clothTraits are the adhesives of cloth that advice tells apart.
var clothTraits = map[record.Binder]string{record.AnimalGlue: "cloth-glue", "starch": "cloth-paste", record.PVA: "cloth-pva", record.Acrylic: "cloth-acrylic"}

// traitsOf says what a panel is, in the traits of the table of advice. Only
// what is recorded makes a trait; that no varnish is recorded makes paint bare,
// for advice that harms no varnished panel.
func traitsOf(board record.BoardKind, layers []Made) map[string]bool {
	t := map[string]bool{"any": true, boardTraits[board]: true}
	matt := false
	for i, m := range layers {
		bs, _ := m.Binders()
		for _, b := range bs {
			t["oil"] = t["oil"] || b == record.DryingOil
			t["alkyd"] = t["alkyd"] || b == record.Alkyd
			t["acrylic"] = t["acrylic"] || b == record.Acrylic
			switch l := m.Layer; {
			case l.Paint != nil:
				t[paintTraits[b]] = true
				t["oil-on-acrylic"] = t["oil-on-acrylic"] || IsOil(b) == yes && t["acrylic-ground"]
			case l.Purpose == record.Ground:
				t["acrylic-ground"] = t["acrylic-ground"] || b == record.Acrylic
				t["gesso"] = t["gesso"] || b == record.AnimalGlue
			case l.Purpose == record.Adhesive && i+1 < len(layers) && layers[i+1].Layer.Cloth != nil:
				t[clothTraits[b]] = true
			}
		}
		t["cloth"] = t["cloth"] || m.Layer.Cloth != nil
		t["varnished"] = t["varnished"] || m.Layer.Varnish != nil
		matt = matt || m.Layer.Paint != nil && (m.Layer.Paint.Gloss == "matt" || m.Contains(mattBinders...) == yes)
	}
	t["matt-bare"] = matt && !t["varnished"]
	t["brushable"] = !t["matt-bare"]
	t["acrylic-bare"] = t["acrylic-paint"] && !t["varnished"]
	t["acrylic-varnished"] = t["acrylic-paint"] && t["varnished"]
	t["tempera-bare"] = t["tempera"] && !t["varnished"]
	if d := dyes(layers); d != "" {
		t[d] = true
	}
	return t
}

// dyes is the trait of how the paints stand light: by pigment first, and gum
// colours always with care. Empty without paint.
func dyes(layers []Made) string {
	fades, painted := record.No, false
	for _, m := range layers {
		if m.Layer.Paint == nil {
			continue
		}
		painted = true
		a := Among(m.Pigments(), Fugitive)
		if a == no && !m.Told() {
			a = maybe
		}
		fades = Some(fades, a, m.gum())
	}
	switch {
	case !painted:
		return ""
	case fades == yes:
		return "dyes"
	case fades == no:
		return "no-dyes"
	}
	return "dyes-open"
}

func (m Made) gum() record.Answer {
	if m.Contains("gum") == yes {
		return yes
	}
	return no
}
