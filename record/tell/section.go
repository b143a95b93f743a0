package tell

import (
	"slices"

	"backleaf/record"
	"backleaf/record/section"
)

// Section returns the drawing of the build-up from front to back, without the
// edges. A thickness is measured, computed and then called an estimate, or not
// recorded; nothing else is drawn as known.
func (t *Teller) Section() section.Section {
	s := section.Section{Words: t.c.Section, Title: t.c.Lines.SectionTitle.With("number", t.Number())}
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

// EdgeSection returns the drawing of an edge cut through, from the outside to
// the board; ok is false if no layer on the edges is on record.
func (t *Teller) EdgeSection() (s section.Section, ok bool) {
	layers := t.p.BuildUp(record.Edges)
	slices.Reverse(layers)
	s = section.Section{Words: t.c.Section, Title: t.c.Lines.EdgeTitle.With("number", t.Number())}
	s.Words.Front, s.Words.Back = string(t.c.Lines.Outside), string(t.c.Lines.Inside)
	for _, l := range layers {
		s.Bands = append(s.Bands, t.band(l))
	}
	board := t.boardBand()
	board.Board = section.OtherBoard // its own layers lie the other way
	s.Bands = append(s.Bands, board)
	return s, len(layers) > 0
}

func (t *Teller) band(l record.Layer) section.Band {
	b := section.Band{Kind: bandKind(l), Label: t.c.Capital(t.Layer(l)), Note: t.Day(l.At)}
	b.ThicknessMicrons, b.Certainty = t.Thickness(l)
	return b
}

func bandKind(l record.Layer) section.BandKind {
	switch {
	case l.Cloth != nil:
		return section.Cloth
	case l.Paint != nil:
		return section.Paint
	case l.Varnish != nil:
		return section.Varnish
	}
	switch l.Purpose {
	case record.Sizing, record.Sealer:
		return section.Sealer
	case record.Adhesive:
		return section.Adhesive
	case record.Ground:
		return section.Ground
	}
	return section.Other
}

func (t *Teller) boardBand() section.Band {
	cut, _ := record.Latest[record.Cut](t.p)
	b := section.Band{Kind: section.Board, Label: t.c.Capital(t.Board()), Note: t.Day(cut.At)}
	m, ok := t.w.Material(cut.Body.Board, cut.Body.BoardAs)
	if ok {
		b.Plies = int(m.Board.Plies)
	}
	switch m.Board.Kind {
	case record.Plywood:
		b.Board = section.Plywood
	case record.MDF:
		b.Board = section.MDF
	case record.Hardboard, record.TemperedHardboard:
		b.Board = map[record.Face]section.BoardKind{record.Front: section.HardboardRoughFront, record.Back: section.HardboardRoughBack, "": section.Hardboard}[cut.Body.Rough]
	case record.SolidWood:
		b.Board = section.SolidWood
	case record.Honeycomb:
		b.Board = section.Honeycomb
	}
	depth := t.p.Size().Depth
	if um, ok := depth.Micrometers(); ok && um > 0 {
		b.ThicknessMicrons, b.Certainty, b.Recorded = um, section.Measured, t.Quantity(depth)
	} else if um, ok := m.Board.Thickness.Micrometers(); ok && um > 0 {
		b.ThicknessMicrons, b.Certainty = um, section.Estimated
	}
	return b
}
