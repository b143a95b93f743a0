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
	s := section.Section{Words: t.c.Section, Title: t.c.Lines.T("section-title").With("number", t.Number())}
	s.Bands = append(t.inward(record.Front), t.boardBand())
	back := t.inward(record.Back)
	slices.Reverse(back)
	s.Bands = append(s.Bands, back...)
	return s
}

// EdgeSection returns the drawing of an edge cut through, from the outside to
// the board; ok is false if no layer on the edges is on record.
func (t *Teller) EdgeSection() (s section.Section, ok bool) {
	s = section.Section{Words: t.c.Section, Title: t.c.Lines.T("edge-title").With("number", t.Number())}
	s.Words.Front, s.Words.Back = string(t.c.Lines.T("outside")), string(t.c.Lines.T("inside"))
	s.Bands = t.inward(record.Edges)
	board := t.boardBand()
	board.Board = section.OtherBoard // its own layers lie the other way
	s.Bands = append(s.Bands, board)
	return s, len(s.Bands) > 1
}

// inward are the layers of a face from the outside to the board; coats that say
// the same one after the other are one band.
func (t *Teller) inward(f record.Face) []section.Band {
	var out []section.Band
	var layers []record.Layer // of the last band, the last first
	for _, l := range slices.Backward(t.p.BuildUp(f)) {
		if n := len(out); n > 0 && l.Cloth == nil && t.Layer(l) == t.Layer(layers[0]) && bandKind(l) == out[n-1].Kind && l.At.Known() == layers[0].At.Known() {
			layers = append(layers, l)
			out[n-1] = t.band(layers)
			continue
		}
		layers = []record.Layer{l}
		out = append(out, t.band(layers))
	}
	return out
}

// band draws coats that are alike, the last first, with what is known of all
// of them together.
func (t *Teller) band(coats []record.Layer) section.Band {
	last, first := coats[0], coats[len(coats)-1]
	b := section.Band{Kind: bandKind(last), Coats: len(coats), Label: t.Layer(last), Certainty: section.Measured}
	if last.Cloth != nil {
		b.Label, b.Detail = t.withLosses(last, t.woven(last.Cloth)), t.threads(last.Cloth)
	}
	b.Label = t.c.Capital(t.c.Fill(t.c.Lines.T("coats"), record.With("n", len(coats)), Told("layer", b.Label)))
	if last.At.Known() {
		b.Note = t.c.Span(first.At, last.At)
	}
	for _, l := range coats {
		um, c := t.Thickness(l)
		b.ThicknessMicrons, b.Certainty = b.ThicknessMicrons+um, min(b.Certainty, c)
	}
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
	b := section.Band{Kind: section.Board, Label: t.c.Capital(t.Board())}
	if cut.At.Known() {
		b.Note = t.Day(cut.At)
	}
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
		b.ThicknessMicrons, b.Certainty, b.Recorded = um, section.Estimated, t.AsProduct(t.Quantity(m.Board.Thickness), m)
	}
	return b
}
