package dossier

import (
	"strconv"

	"backleaf/record"
	"backleaf/record/tell"
)

func (b *builder) support() []Item {
	n := b.d.Names
	cut, _ := record.Latest[record.Cut](b.p)
	c := cut.Body
	m, _ := b.w.Material(c.Board, c.BoardAs)
	ps := &pairs{b: b}
	ps.add(n.Board, b.Board())
	ps.add(n.Product, b.productName(c.Board, c.BoardAs))
	ps.add(n.Producer, m.Maker)
	ps.add(n.Lot, b.lotName(c.Lot))
	ps.quantity(n.Thickness, b.p.Size().Depth)
	if m.Board.Kind == record.Plywood || m.Board.Kind == record.SolidWood {
		ps.add(n.Species, m.Board.Species)
		ps.word(n.Grain, c.Grain)
	}
	if m.Board.Plies > 0 {
		ps.add(n.Plies, b.AsProduct(strconv.FormatInt(m.Board.Plies, 10), m))
	}
	if has(m.Board.Density) {
		ps.add(n.Density, b.AsProduct(b.Quantity(m.Board.Density), m))
	}
	class := m.Board.Formaldehyde
	if known(class) {
		class = b.AsProduct(class, m)
	}
	ps.add(n.Formaldehyde, class)
	hardboard := m.Board.Kind == record.Hardboard || m.Board.Kind == record.TemperedHardboard
	for _, x := range []struct {
		name tell.Message
		word string
	}{{n.RoughSide, wordOf(b, c.Rough)}, {n.Degreased, wordOf(b, c.Degreased)}, {n.Keyed, wordOf(b, c.Keyed)}} {
		if hardboard || x.word != "" {
			ps.add(x.name, x.word)
		}
	}
	ps.quantity(n.Settled, c.Settled)
	ps.add(n.Cut, b.Moment(cut.At)+" ("+b.Entry(cut.Seq)+")")
	ps.add(n.Sealed, b.SealedFaces())
	for _, br := range record.Each[record.Braced](b.p) {
		ps.add(n.Bracing, b.sentence(b.Word(br.Body.Bracing), wordOf(b, br.Body.Fixing), wordOf(b, br.Body.Run), br.Body.Note, b.Entry(br.Seq)))
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
	n := b.d.Names
	var out []Item
	if b.p.ClothIntended() == record.No {
		out = append(out, Text{Text: string(b.d.NoClothMeant)})
	}
	for _, e := range record.Each[record.ClothLaid](b.p) {
		c := e.Body
		m, _ := b.w.Material(c.Cloth, c.ClothAs)
		ps := &pairs{b: b}
		ps.add(n.Product, b.productName(c.Cloth, c.ClothAs))
		ps.add(n.Lot, b.lotName(c.ClothLot))
		ps.word(n.Fibre, m.Cloth.Fibre)
		ps.word(n.Weave, m.Cloth.Weave)
		ps.add(n.Threads, b.threads(m))
		if has(m.Cloth.Mass) {
			ps.add(n.Mass, b.AsProduct(b.Quantity(m.Cloth.Mass), m))
		} else {
			ps.quantity(n.Mass, m.Cloth.Mass)
		}
		ps.word(n.Came, m.Cloth.Sized)
		ps.add(n.OnFaces, b.Faces(c.Faces)+", "+b.Moment(e.At)+" ("+b.Entry(e.Seq)+")")
		ps.word(n.Run, c.Run)
		ps.word(n.WetThrough, c.WetThrough)
		ps.word(n.Pressed, c.EdgesPressed)
		ps.quantity(n.Weighted, c.Weighted)
		ps.quantity(n.Oversize, c.Oversize)
		for _, t := range record.Each[record.Trimmed](b.p) {
			ps.add(n.Trimmed, b.sentence(b.Moment(t.At)+" ("+b.Entry(t.Seq)+")", b.tool(t.Body.Tool, t.Body.ToolIs), b.eased(t.Body)))
		}
		if l, ok := b.clothOf(e.Seq); ok && len(l.Losses) > 0 {
			ps.add(n.Today, b.Layer(l))
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
	return b.d.Steps.Eased.With("answer", b.Word(t.Eased))
}
