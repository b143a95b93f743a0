package dossier

import (
	"strconv"

	"backleaf/record"
	"backleaf/record/tell"
)

func (b *builder) support() []Item {
	n := b.d
	cut, _ := record.Latest[record.Cut](b.p)
	c := cut.Body
	m, _ := b.w.Material(c.Board, c.BoardAs)
	ps := &pairs{b: b}
	ps.add(n.T("names-board"), b.Board())
	ps.add(n.T("names-product"), b.productName(c.Board, c.BoardAs))
	ps.add(n.T("names-producer"), m.Maker)
	ps.add(n.T("names-lot"), b.lotName(c.Lot))
	ps.quantity(n.T("names-thickness"), b.p.Size().Depth)
	if m.Board.Kind == record.Plywood || m.Board.Kind == record.SolidWood {
		ps.add(n.T("names-species"), m.Board.Species)
		ps.word(n.T("names-grain"), c.Grain)
	}
	if m.Board.Plies > 0 {
		ps.add(n.T("names-plies"), b.AsProduct(strconv.FormatInt(m.Board.Plies, 10), m))
	}
	if has(m.Board.Density) {
		ps.add(n.T("names-density"), b.AsProduct(b.Quantity(m.Board.Density), m))
	}
	class := m.Board.Formaldehyde
	if known(class) {
		class = b.AsProduct(class, m)
	}
	ps.add(n.T("names-formaldehyde"), class)
	hardboard := m.Board.Kind == record.Hardboard || m.Board.Kind == record.TemperedHardboard
	for _, x := range []struct {
		name tell.Message
		word string
	}{{n.T("names-rough-side"), wordOf(b, c.Rough)}, {n.T("names-degreased"), wordOf(b, c.Degreased)}, {n.T("names-keyed"), wordOf(b, c.Keyed)}} {
		if hardboard || x.word != "" {
			ps.add(x.name, x.word)
		}
	}
	ps.quantity(n.T("names-settled"), c.Settled)
	ps.add(n.T("names-cut"), b.Moment(cut.At)+" ("+b.Entry(cut.Seq)+")")
	ps.add(n.T("names-sealed"), b.SealedFaces())
	for _, br := range record.Each[record.Braced](b.p) {
		ps.add(n.T("names-bracing"), b.sentence(b.Word(br.Body.Bracing), wordOf(b, br.Body.Fixing), wordOf(b, br.Body.Run), br.Body.Note, b.Entry(br.Seq)))
	}
	ps.others(c, "batch", "board", "board_lot", "grain", "rough_side", "settled", "degreased", "keyed", "year")
	return []Item{ps.list}
}

func wordOf[T ~string](b *builder, word T) string {
	if word == "" {
		return ""
	}
	return b.Word(word)
}

// productName is the name of a material as on the tin.
func (b *builder) productName(k record.Key, as []int64) string {
	if m, ok := b.w.Material(k, as); ok {
		return m.Name
	}
	return string(k)
}

// lotName is a lot with the number that its producer gave it.
func (b *builder) lotName(k record.Key) string {
	l, ok := b.w.Lot(k)
	if !ok || !known(l.MakerLot) {
		return string(k)
	}
	return l.MakerLot
}

func (b *builder) cloths() []Item {
	n := b.d
	var out []Item
	if b.p.ClothIntended() == record.No {
		out = append(out, Text{Text: string(b.d.T("no-cloth-meant"))})
	}
	for _, e := range record.Each[record.ClothLaid](b.p) {
		c := e.Body
		m, _ := b.w.Material(c.Cloth, c.ClothAs)
		ps := &pairs{b: b}
		ps.add(n.T("names-product"), b.productName(c.Cloth, c.ClothAs))
		ps.add(n.T("names-lot"), b.lotName(c.ClothLot))
		ps.word(n.T("names-fibre"), m.Cloth.Fibre)
		ps.word(n.T("names-weave"), m.Cloth.Weave)
		ps.add(n.T("names-threads"), b.threads(m))
		if has(m.Cloth.Mass) {
			ps.add(n.T("names-mass"), b.AsProduct(b.Quantity(m.Cloth.Mass), m))
		} else {
			ps.quantity(n.T("names-mass"), m.Cloth.Mass)
		}
		ps.word(n.T("names-came"), m.Cloth.Sized)
		ps.add(n.T("names-on-faces"), b.Faces(c.Faces)+", "+b.Moment(e.At)+" ("+b.Entry(e.Seq)+")")
		ps.word(n.T("names-run"), c.Run)
		ps.word(n.T("names-wet-through"), c.WetThrough)
		ps.word(n.T("names-pressed"), c.EdgesPressed)
		ps.quantity(n.T("names-weighted"), c.Weighted)
		ps.quantity(n.T("names-oversize"), c.Oversize)
		for _, t := range record.Each[record.Trimmed](b.p) {
			ps.add(n.T("names-trimmed"), b.sentence(b.Moment(t.At)+" ("+b.Entry(t.Seq)+")", b.tool(t.Body.Tool, t.Body.ToolIs), b.eased(t.Body)))
		}
		if l, ok := b.clothOf(e.Seq); ok && len(l.Losses) > 0 {
			ps.add(n.T("names-today"), b.Layer(l))
		}
		ps.others(c, "faces", "cloth", "cloth_lot", "threads", "wet_through", "edges_pressed", "weighted", "oversize", "mix", "thinned", "thinned_with", "tool",
			"wet_total", "wet_each", "wet_film", "dry_film", "temperature", "humidity")
		out = append(out, ps.list)
	}
	return out
}

// clothOf finds the cloth that an entry laid.
func (b *builder) clothOf(seq int64) (record.Layer, bool) {
	for _, l := range b.p.Layers() {
		if l.Seq == seq && l.Cloth != nil {
			return l, true
		}
	}
	return record.Layer{}, false
}

func (b *builder) threads(m record.Material) string {
	warp, weft := m.Cloth.Warp, m.Cloth.Weft
	if !has(warp) && !has(weft) {
		return b.Quantity(warp)
	}
	return b.AsProduct(b.Quantity(warp)+" × "+b.Quantity(weft), m)
}

func (b *builder) eased(t record.Trimmed) string {
	if t.Eased == "" {
		return ""
	}
	return b.d.T("steps-eased").With("answer", b.Word(t.Eased))
}
