package dossier

import (
	"strconv"

	"backleaf/record"
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
	ps.quantity(n.Thickness, c.Size.Depth)
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
	if m.Board.Kind == record.Hardboard || m.Board.Kind == record.TemperedHardboard {
		ps.word(n.RoughSide, c.Rough)
		ps.word(n.Degreased, c.Degreased)
		ps.word(n.Keyed, c.Keyed)
	}
	ps.quantity(n.Settled, c.Settled)
	ps.add(n.Cut, b.Moment(cut.At)+" ("+b.Entry(cut.Seq)+")")
	ps.add(n.Sealed, b.SealedFaces())
	for _, br := range record.Each[record.Braced](b.p) {
		ps.add(n.Bracing, sentence(b.Word(br.Body.Bracing), wordOf(b, br.Body.Fixing), wordOf(b, br.Body.Run), br.Body.Note, b.Entry(br.Seq)))
	}
	ps.some(n.Note, c.Note)
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
			ps.add(n.Trimmed, sentence(b.Moment(t.At)+" ("+b.Entry(t.Seq)+")", t.Body.Tool, b.eased(t.Body)))
		}
		ps.some(n.Note, c.Note)
		out = append(out, ps.list)
	}
	return out
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
