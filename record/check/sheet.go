package check

import (
	"cmp"
	"slices"

	"backleaf/record"
	"backleaf/record/amount"
	"backleaf/record/balance"
)

// sheet is the board as it is reckoned with.
func (s *subject) sheet() balance.Board {
	b := s.board()
	t, _ := s.thickness()
	core, _ := b.CoreVeneer.Micrometers()
	return balance.BoardOf(balance.Sheet{Kind: b.Kind, ThicknessMicrons: t, Plies: int(b.Plies), CoreMicrons: float64(core), Species: record.Species(b.Species)})
}

// reckoned describes the panel as it stands for reckoning: once, or where the
// dates do not tell the order of the layers, once for each order that could
// make it pull least and most.
func (s *subject) reckoned() []balance.Panel {
	s.seen |= frontSeen | backSeen
	return s.panels.of(s.reckon)
}

func (s *subject) reckon() []balance.Panel {
	h, _ := s.p.Size().Height.Micrometers()
	w, _ := s.p.Size().Width.Micrometers()
	base := balance.Panel{HeightMicrons: float64(h), WidthMicrons: float64(w), Grain: s.cut.Body.Grain, Board: s.sheet()}
	var out []balance.Panel
	for _, front := range s.orders(record.Front) {
		for _, back := range s.orders(record.Back) {
			p := base
			p.Front, p.Back = front, back
			out = append(out, p)
		}
	}
	return out
}

// orders lists the layers of a face from the board outwards: as they lie, or
// with the hardest pulling ones outermost and innermost.
func (s *subject) orders(face record.Face) [][]balance.Layer {
	films := s.on(face)
	layers := make([]balance.Layer, len(films))
	for i, f := range films {
		layers[i] = f.reckoned()
	}
	if inOrder(films) == record.Yes {
		return [][]balance.Layer{layers}
	}
	outward := slices.Clone(layers)
	stress := func(l balance.Layer) float64 {
		return max(l.NewtonsPerMetre(balance.Along).High, l.NewtonsPerMetre(balance.Across).High) / l.DryMicrons.Typical
	}
	slices.SortStableFunc(outward, func(a, b balance.Layer) int { return cmp.Compare(stress(a), stress(b)) })
	inward := slices.Clone(outward)
	slices.Reverse(inward)
	return [][]balance.Layer{outward, inward}
}

// reckoned is a layer as it is reckoned with. Paint, isolation coat and varnish
// belong to the picture.
func (f film) reckoned() balance.Layer { return f.layer.of(f.reckon) }

func (f film) reckon() balance.Layer {
	l := f.Layer
	if l.Cloth != nil {
		return balance.ClothLayer(l.Cloth.Run, balance.UsualCloth, balance.UsualCloth, balance.Room)
	}
	kind := f.kind()
	usual, how := balance.UsualCoat(l.Purpose, kind), balance.Assumed
	switch {
	case l.Paint != nil:
		usual = balance.UsualPaint(l.Paint.Film)
	case l.Varnish != nil:
		usual = balance.UsualVarnish
	}
	switch f.Dry {
	case amount.Measured:
		usual, how = balance.Exactly(f.DryMicrons), balance.Gauged
	case amount.Estimated:
		usual, how = balance.Exactly(f.DryMicrons), balance.Estimated
	}
	out := balance.Film(kind, l.Purpose == record.Ground || l.Paint != nil && l.Paint.Gloss == "matt", usual, how, balance.Room)
	out.Picture = l.Paint != nil || l.Varnish != nil || l.Purpose == record.Isolation
	return out
}

// kind is what a layer is made of as far as its pull goes. A layer of unknown
// binder is a kind of its own, told by its materials.
func (f film) kind() balance.Kind {
	bs, known := f.made.Binders()
	if !known || len(bs) == 0 {
		kind := "?"
		for _, m := range f.made.Materials {
			kind += " " + string(m.Key)
		}
		return balance.Kind(kind)
	}
	var kinds []balance.Kind
	for _, b := range bs {
		kinds = append(kinds, balance.KindOf(b, f.Layer.Purpose))
	}
	return balance.Strongest(kinds...)
}

// told answers whether the layers of a face are on record: some are, or it was
// left bare, or what is not recorded was not done.
func (s *subject) told(face record.Face) record.Answer {
	if len(s.on(face)) > 0 || s.bare(face) != nil {
		return record.Yes
	}
	return not(s.unless())
}
