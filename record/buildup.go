package record

import "slices"

// Layer is one layer on one face: a coat, a cloth, paint or varnish. Exactly
// one of Cloth, Paint and Varnish is set, or none of them for a coat.
type Layer struct {
	Seq       int64
	At        When
	Place     When     // when the first layer was laid that lay in its place: of a cloth laid again, the cloth before
	ByWriting bool     // see [Done.ByWriting]
	Face      Face     // "unknown": nobody knows on which
	Purpose   Purpose  // of a coat; empty when not recorded
	Coating   *Coating // nil for cloth: its adhesive is the layer below it
	Extra     bool     // this face was given more
	Cloth     *ClothLaid
	Paint     *PaintLayer
	Varnish   *Varnish
	Losses    []Loss // what was taken off it later, in order
}

// Loss is what was taken off a layer: by an entry of removal, or because its
// cloth was laid again.
type Loss struct {
	Seq    int64
	At     When
	Extent Extent
}

// Stands reports that the layer is still there, at least in part. A layer that
// was taken off by an unknown extent may be.
func (l Layer) Stands() bool {
	return !slices.ContainsFunc(l.Losses, func(x Loss) bool { return x.Extent == "whole" })
}

// Layers returns every layer that was ever laid on any face, with what was taken
// off it later: in the order of application, but a cloth that was laid again lies
// where it lay before, under what it carries.
func (p *Panel) Layers() []Layer { return p.layers }

// With returns the panel as other events tell it: as it stood before some of
// them, or as it would stand after more.
func (p *Panel) With(events []Event) *Panel {
	q := *p
	q.Events = events
	q.join()
	return &q
}

// join works out the layers and the size from the events.
func (p *Panel) join() {
	p.layers, p.size = make([]Layer, 0, max(len(p.layers), len(p.Events))+3), p.sizeNow()
	for i := range p.Events {
		e := &p.Events[i]
		l := Layer{Seq: e.Seq, At: e.At, Place: e.At, ByWriting: e.ByWriting}
		again := int64(0) // entry whose layers those that follow lie upon; 0: on all
		on := func(faces []Face, extra []Face) {
			if len(faces) == 0 {
				faces = []Face{Front}
			}
			for _, f := range faces {
				l.Face, l.Extra = f, slices.Contains(extra, f)
				at := len(p.layers)
				if again != 0 {
					for i, x := range p.layers {
						if x.Seq == again && x.Face == f {
							at, l.Place = i+1, x.Place
						}
					}
				}
				p.layers = slices.Insert(p.layers, at, l)
			}
		}
		switch b := e.Body.(type) {
		case Coat:
			l.Purpose, l.Coating = b.Purpose, &b.Coating
			on(b.Faces, b.Extra)
		case ClothLaid:
			l.Purpose, l.Coating = Adhesive, &b.Coating
			again = b.AgainOf
			on(b.Faces, nil)
			if again != 0 {
				p.lose(Loss{e.Seq, e.At, "whole"}, []int64{again}, nil, func(l Layer) bool { return l.Cloth != nil })
				again = e.Seq // the cloth lies on its new adhesive
			}
			l.Purpose, l.Coating, l.Cloth = "", nil, &b
			on(b.Faces, nil)
		case PaintLayer:
			l.Paint, l.Coating = &b, &b.Coating
			on(b.Faces, nil)
		case Varnish:
			l.Varnish, l.Coating = &b, &b.Coating
			on(b.Faces, nil)
		case Removed:
			// Of a cloth and what it was laid into, one may come off alone.
			p.lose(Loss{e.Seq, e.At, b.Extent}, b.Layers, b.Faces, func(l Layer) bool {
				return !p.isCloth(l.Seq) || (l.Cloth != nil) == (b.What == "cloth")
			})
		}
	}
}

func (p *Panel) isCloth(seq int64) bool {
	return slices.ContainsFunc(p.layers, func(l Layer) bool { return l.Seq == seq && l.Cloth != nil })
}

func (p *Panel) lose(x Loss, seqs []int64, faces []Face, fits func(Layer) bool) {
	for i, l := range p.layers {
		if slices.Contains(seqs, l.Seq) && (faces == nil || slices.Contains(faces, l.Face)) && l.Seq != x.Seq && fits(l) {
			p.layers[i].Losses = append(slices.Clip(l.Losses), x)
		}
	}
}

// BuildUp returns the layers that one face carries today, from the board
// outwards.
func (p *Panel) BuildUp(f Face) []Layer {
	var out []Layer
	for _, l := range p.layers {
		if l.Face == f && l.Stands() {
			out = append(out, l)
		}
	}
	return out
}

// Name returns what a layer is for a reader: its purpose, or "cloth", "paint",
// "varnish", "coat".
func (l Layer) Name() string {
	switch {
	case l.Cloth != nil:
		return "cloth"
	case l.Paint != nil:
		return "paint"
	case l.Varnish != nil:
		return "varnish"
	case l.Purpose != "" && l.Purpose != Unknown:
		return string(l.Purpose)
	}
	return "coat"
}
