package tell

import (
	"slices"

	"backleaf/record"
	"backleaf/record/paper"
)

// Section returns the drawing of the build-up from front to back, without the
// edges. A thickness is measured, computed and then called an estimate, or not
// recorded; nothing else is drawn as known.
func (t *Teller) Section() paper.Section {
	s := paper.Section{Words: t.c.Section, Title: t.c.Lines.SectionTitle.With("number", t.Number())}
	front := t.p.BuildUp(record.Front)
	slices.Reverse(front)
	for _, l := range front {
		s.Bands = append(s.Bands, t.band(l))
	}
	s.Bands = append(s.Bands, t.boardBand())
	for _, l := range t.p.BuildUp(record.Back) {
		s.Bands = append(s.Bands, t.band(l))
	}
	return s
}

func (t *Teller) band(l record.Layer) paper.Band {
	b := paper.Band{Kind: bandKind(l), Label: t.c.Capital(t.Layer(l)), Note: t.Day(l.At)}
	b.ThicknessMicrons, b.Certainty = t.Thickness(l)
	return b
}

func bandKind(l record.Layer) paper.BandKind {
	switch {
	case l.Cloth != nil:
		return paper.ClothBand
	case l.Paint != nil:
		return paper.PaintBand
	case l.Varnish != nil:
		return paper.VarnishBand
	}
	switch l.Purpose {
	case record.Sizing, record.Sealer:
		return paper.SealerBand
	case record.Adhesive:
		return paper.AdhesiveBand
	case record.Ground:
		return paper.GroundBand
	}
	return paper.OtherBand
}

func (t *Teller) boardBand() paper.Band {
	cut, _ := record.Latest[record.Cut](t.p)
	b := paper.Band{Kind: paper.BoardBand, Label: t.c.Capital(t.Board()), Note: t.Day(cut.At)}
	m, ok := t.w.Material(cut.Body.Board)
	if ok {
		b.Plies = int(m.Board.Plies)
	}
	switch m.Board.Kind {
	case record.Plywood:
		b.Board = paper.Plywood
	case record.MDF:
		b.Board = paper.MDF
	case record.Hardboard, record.TemperedHardboard:
		b.Board = map[record.Face]paper.BoardKind{record.Front: paper.HardboardRoughFront, record.Back: paper.HardboardRoughBack, "": paper.Hardboard}[cut.Body.Rough]
	case record.SolidWood:
		b.Board = paper.SolidWood
	case record.Honeycomb:
		b.Board = paper.Honeycomb
	}
	if um, ok := cut.Body.Size.Depth.Micrometers(); ok && um > 0 {
		b.ThicknessMicrons, b.Certainty, b.Recorded = um, paper.Measured, t.Quantity(cut.Body.Size.Depth)
	} else if um, ok := m.Board.Thickness.Micrometers(); ok && um > 0 {
		b.ThicknessMicrons, b.Certainty = um, paper.Estimated
	}
	return b
}
