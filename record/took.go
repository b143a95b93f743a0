package record

import (
	"iter"
	"reflect"
	"slices"
)

// extraShare is how much more a face counts that was given extra (common practice).
const extraShare = 2

// Share is how much of what is laid on a square metre its face is given.
func (l Layer) Share() float64 {
	if l.Extra {
		return extraShare
	}
	return 1
}

// Wet returns what is wet in an act, nil where nothing is, the faces it goes on
// and those that are given more. A painting without faces is on the front.
func (e Entry) Wet() (c *Coating, faces, extra []Face) {
	switch b := e.Body.(type) {
	case Coat:
		return &b.Coating, b.Faces, b.Extra
	case ClothLaid:
		return &b.Coating, b.Faces, nil
	case PaintLayer:
		c, faces = &b.Coating, b.Faces
	case Varnish:
		c, faces = &b.Coating, b.Faces
	default:
		return nil, nil, nil
	}
	if len(faces) == 0 {
		faces = []Face{Front}
	}
	return c, faces, nil
}

// BoardMicrons returns the thickness of a panel's board in µm: as cut, or else
// as stated for the material; false where neither is known.
func (w *Workshop) BoardMicrons(p *Panel) (float64, bool) {
	if um, ok := p.Size().Depth.Micrometers(); ok {
		return float64(um), um > 0
	}
	m, _ := w.Material(p.Cut().Board, p.Cut().BoardAs)
	um, ok := m.Board.Thickness.Micrometers()
	return float64(um), ok && um > 0
}

// Spread is the area in mm² over which a wet act goes on a panel, faces that are
// given extra counting twice; 0 where it is not known.
func (w *Workshop) Spread(p *Panel, b Body) (all float64) {
	_, faces, extra := Entry{Body: b}.Wet()
	h, ok1 := p.Size().Height.Micrometers()
	wide, ok2 := p.Size().Width.Micrometers()
	if !ok1 || !ok2 {
		return 0
	}
	for _, f := range faces {
		a := float64(h) * float64(wide) / 1e6
		if f == Edges {
			deep, _ := w.BoardMicrons(p)
			a = 2 * float64(h+wide) * deep / 1e6
		}
		if a == 0 {
			return 0
		}
		if slices.Contains(extra, f) {
			a *= extraShare
		}
		all += a
	}
	return all
}

// Alike returns an entry as it stands for these of its panels: once for all of
// which it says the same, which are then its panels.
func (w *Workshop) Alike(seq int64, panels []Number) (out []Event) {
	for _, n := range panels {
		e, ok := w.panels[n].Event(seq)
		if !ok {
			continue
		}
		i := slices.IndexFunc(out, func(o Event) bool { return slices.Equal(o.Sharing, e.Sharing) && reflect.DeepEqual(o.Body, e.Body) })
		if i < 0 {
			e.Panels = nil
			i, out = len(out), append(out, e)
		}
		out[i].Panels = append(out[i].Panels, n)
	}
	return out
}

// Laid is how much of what is wet in an event its panels took together, in mg or
// in µL; 0 where it is not known. An amount in all is shared by area among the
// panels of which it was said and for which the entry stands: of which lot each
// had is another matter. Of an event that nothing corrected no workshop is needed.
func (w *Workshop) Laid(e Event) (milligrams, microliters float64) {
	c, _, _ := Entry{Body: e.Body}.Wet()
	if c == nil {
		return 0, 0
	}
	mg, ul := c.Wet(len(e.Panels))
	if !c.WetEach.IsZero() {
		return mg, ul
	}
	share := w.share(e)
	return mg * share, ul * share
}

// Sharers yields the panels among which an amount in all of an event is shared,
// those of which it was said and for which the entry stands, with the area in mm²
// by which it is: 0 where it is not known, or the panel is not there.
func (w *Workshop) Sharers(e Event, panel func(Number) *Panel) iter.Seq2[Number, float64] {
	return func(yield func(Number, float64) bool) {
		for _, n := range e.Sharing {
			p, area := panel(n), 0.0
			x, ok := p.Event(e.Seq)
			switch {
			case ok:
				area = w.Spread(p, x.Body)
			case p != nil:
				continue // withdrawn for that panel
			}
			if !yield(n, area) {
				return
			}
		}
	}
}

// share is how much of an amount in all is of these panels: all of it where
// there are no others, 0 where it is not known.
func (w *Workshop) share(e Event) float64 {
	var mine, all float64
	others, open := false, false
	for n, a := range w.Sharers(e, w.Panel) {
		if all += a; slices.Contains(e.Panels, n) {
			mine += a
		} else {
			others = true
		}
		open = open || a == 0
	}
	switch {
	case !others:
		return 1
	case open:
		return 0
	}
	return mine / all
}
