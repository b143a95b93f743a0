package record

import "slices"

// Gap is something a reader would need that nobody recorded, or that was
// looked for and could not be learned.
type Gap struct {
	Topic   string // where a conservator would look: "support", "cloth", "ground" …
	What    string // what is missing, in words
	Seq     int64  // the entry that could have said it; 0 if there is none
	Unknown bool   // recorded as unknown, not just absent
}

type gaps struct {
	list []Gap
	seq  int64
}

func (g *gaps) need(topic, what, value string) {
	if value == "" || value == Unknown {
		g.list = append(g.list, Gap{topic, what, g.seq, value == Unknown})
	}
}

// known returns the first text that says something, or else the first that
// was recorded as unknown.
func known(texts ...string) string {
	at := slices.IndexFunc(texts, func(s string) bool { return s != "" && s != Unknown })
	if at < 0 {
		at = max(0, slices.Index(texts, Unknown))
	}
	return texts[at]
}

// Gaps lists what a reader of this panel's record would miss, in the order
// in which a conservator asks.
func (w *Workshop) Gaps(p *Panel) []Gap {
	g := &gaps{}
	w.supportGaps(g, p)
	w.layerGaps(g, p)
	if st := p.Stage(); st == StagePainted || st == StageVarnished {
		d := p.Description()
		g.seq = 0
		g.need("identification", "title", d.Title)
		g.need("identification", "date of the work", d.Made.String())
		g.need("identification", "inscription or signature", known(d.Signed, d.Inscription))
		if !hasPhoto(p, PhotoFront) {
			g.need("identification", "photograph of the front", "")
		}
	}
	return g.list
}

func hasPhoto(p *Panel, r PhotoRole) bool {
	for _, ph := range Each[Photograph](p) {
		if ph.Body.Role == r {
			return true
		}
	}
	return false
}

func (w *Workshop) supportGaps(g *gaps, p *Panel) {
	cut, _ := Latest[Cut](p)
	c := cut.Body
	g.seq = cut.Seq
	g.need("support", "size", c.Size.Height.String())
	g.need("support", "thickness", c.Size.Depth.String())
	g.need("support", "kind of board", string(c.Board))
	g.need("support", "lot of the board", string(c.Lot))
	if m, ok := w.Material(c.Board); ok {
		g.need("support", "kind of board", string(m.Board.Kind))
		if m.Board.Kind == Plywood || m.Board.Kind == SolidWood {
			g.need("support", "run of the grain", string(c.Grain))
		}
	}
	g.need("support", "date of cutting", cut.At.String())
	layers := p.Layers()
	for _, f := range Faces {
		sealed := false
		for _, l := range layers {
			sealed = sealed || l.Face == f && w.Seals(l)
		}
		if !sealed {
			g.seq = 0
			g.need("support", "whether the "+faceWord(f)+" sealed", "")
		}
	}
}

func faceWord(f Face) string {
	if f == Edges {
		return "edges are"
	}
	return string(f) + " is"
}

func (w *Workshop) layerGaps(g *gaps, p *Panel) {
	type told struct {
		seq   int64
		cloth bool
	}
	seen := map[told]bool{} // a layer on several faces is told once
	for _, l := range p.Layers() {
		if seen[told{l.Seq, l.Cloth != nil}] {
			continue
		}
		seen[told{l.Seq, l.Cloth != nil}] = true
		g.seq = l.Seq
		name := l.Name()
		if l.Cloth != nil {
			g.need("cloth", "which cloth", string(l.Cloth.Cloth))
			g.need("cloth", "lot of the cloth", string(l.Cloth.ClothLot))
			g.need("cloth", "run of the threads", string(l.Cloth.Run))
			continue
		}
		g.need(name, "date", l.At.String())
		switch {
		case l.Paint != nil:
			g.need("paint", "medium", string(l.Paint.Medium))
			if len(l.Paint.Pigments) == 0 {
				g.need("paint", "pigments", "")
			}
			continue
		case l.Varnish != nil:
			if len(l.Coating.Mix) == 0 {
				g.need("varnish", "resin", l.Varnish.Resin)
			}
			g.need("varnish", "whether it can be removed", w.removable(l))
			continue
		}
		if len(l.Coating.Mix) == 0 {
			g.need(name, "which material", "")
		}
		for _, m := range l.Coating.Mix {
			if m.Material == Unknown {
				g.need(name, "which material", Unknown)
				continue
			}
			g.need(name, "lot of "+string(m.Material), string(m.Lot))
		}
		g.need(name, "amount", amountText(l.Coating))
	}
}

func (w *Workshop) removable(l Layer) string {
	if l.Varnish.Removable != "" {
		return string(l.Varnish.Removable)
	}
	for _, m := range l.Coating.Mix {
		if mat, ok := w.Material(m.Material); ok && mat.Removable != "" {
			return string(mat.Removable)
		}
	}
	return ""
}

func amountText(c *Coating) string {
	return known(c.DryFilm.String(), c.WetFilm.String(), c.WetEach.String(), c.WetTotal.String())
}
