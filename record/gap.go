package record

import "slices"

// Gap is something a reader would need that nobody recorded, or that was
// looked for and could not be learned.
type Gap struct {
	Topic   Topic
	Said    Said  // what is missing
	Seq     int64 // the entry that could have said it; 0 if there is none
	Unknown bool  // recorded as unknown, not just absent
}

// Topic is where a conservator would look for something: a purpose of a coat,
// or one of "support", "cloth", "coat", "paint", "varnish", "identification".
type Topic string

// Say says the whole gap: "ground: lot of the sealer".
func (g Gap) Say() Said {
	code := "gap"
	if g.Unknown {
		code = "gap-unknown"
	}
	return Say(code, append([]Value{With("topic", g.Topic), With("what", Code(g.Said.Code))}, g.Said.Values...)...)
}

type gaps struct {
	list []Gap
	seq  int64
}

// need notes a gap if a value says nothing.
func (g *gaps) need(topic Topic, value, code string, values ...Value) {
	if value == "" || value == Unknown {
		g.list = append(g.list, Gap{topic, Say(code, values...), g.seq, value == Unknown})
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
		g.need("identification", d.Title, "gap-title")
		first, _ := p.PaintedBetween()
		g.need("identification", known(d.Made.String(), first.String()), "gap-date-of-work")
		g.need("identification", known(d.Signed, d.Inscription), "gap-signature")
		if !hasPhoto(p, PhotoFront) {
			g.need("identification", "", "gap-front-photograph")
		}
	}
	return g.list
}

// PaintedBetween returns the first and the last known date of paint on a panel.
func (p *Panel) PaintedBetween() (first, last When) {
	for _, e := range Each[PaintLayer](p) {
		if !e.At.Known() {
			continue
		}
		if last = e.At; first.IsZero() {
			first = e.At
		}
	}
	return first, last
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
	size := p.Size()
	g.need("support", size.Height.String(), "gap-size")
	g.need("support", size.Depth.String(), "gap-thickness")
	g.need("support", string(c.Board), "gap-board")
	g.need("support", string(c.Lot), "gap-board-lot")
	if m, ok := w.Material(c.Board, c.BoardAs); ok {
		g.need("support", string(m.Board.Kind), "gap-board")
		if m.Board.Kind == Plywood || m.Board.Kind == SolidWood {
			g.need("support", string(c.Grain), "gap-grain")
		}
	}
	g.need("support", cut.At.String(), "gap-cutting-date")
	g.seq = 0
	for _, f := range Faces {
		if w.State(p, f) == FaceUnknown {
			g.need("support", "", "gap-sealing", With("face", f))
		}
	}
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
		topic := Topic(l.Name())
		if l.Cloth != nil {
			g.need("cloth", string(l.Cloth.Cloth), "gap-cloth")
			g.need("cloth", string(l.Cloth.ClothLot), "gap-cloth-lot")
			g.need("cloth", string(l.Cloth.Run), "gap-thread-run")
			continue
		}
		g.need(topic, l.At.String(), "gap-date")
		switch {
		case l.Paint != nil:
			g.need("paint", string(l.Paint.Medium), "gap-medium")
			if len(l.Paint.Pigments) == 0 {
				g.need("paint", "", "gap-pigments")
			}
			continue
		case l.Varnish != nil:
			if len(l.Coating.Mix) == 0 {
				g.need("varnish", l.Varnish.Resin, "gap-resin")
			}
			if l.Stands() {
				g.need("varnish", w.removable(l), "gap-removability")
			}
			continue
		}
		if len(l.Coating.Mix) == 0 {
			g.need(topic, "", "gap-material")
		}
		for _, m := range l.Coating.Mix {
			if m.Material == Unknown {
				g.need(topic, Unknown, "gap-material")
				continue
			}
			g.need(topic, string(m.Lot), "gap-material-lot", With("material", m.Material), With("product", w.productName(m)))
		}
		g.need(topic, amountText(l.Coating), "gap-amount")
	}
}

// productName names what a part of a mix is, as on its tin.
func (w *Workshop) productName(p Part) string {
	if m, ok := w.Material(p.Material, p.As); ok {
		return m.Name
	}
	return string(p.Material)
}

func (w *Workshop) removable(l Layer) string {
	if l.Varnish.Removable != "" {
		return string(l.Varnish.Removable)
	}
	for _, m := range l.Coating.Mix {
		if mat, ok := w.Material(m.Material, m.As); ok && mat.Removable != "" {
			return string(mat.Removable)
		}
	}
	return ""
}

func amountText(c *Coating) string {
	return known(c.DryFilm.String(), c.WetFilm.String(), c.WetEach.String(), c.WetTotal.String())
}
