package record

// Layer is one layer on one face: a coat, a cloth, paint or varnish. Exactly
// one of Cloth, Paint and Varnish is set, or none of them for a coat.
type Layer struct {
	Seq     int64
	At      When
	Face    Face
	Purpose Purpose  // of a coat; empty when not recorded
	Coating *Coating // nil for cloth: its adhesive is the layer below it
	Extra   bool     // this face was given more
	Cloth   *ClothLaid
	Paint   *PaintLayer
	Varnish *Varnish
}

// Layers returns every layer on every face in the order of application.
func (p *Panel) Layers() []Layer {
	var out []Layer
	for _, e := range p.Events {
		l := Layer{Seq: e.Seq, At: e.At}
		on := func(faces []Face, extra []Face) {
			if len(faces) == 0 {
				faces = []Face{Front}
			}
			for _, f := range faces {
				l.Face, l.Extra = f, false
				for _, x := range extra {
					l.Extra = l.Extra || x == f
				}
				out = append(out, l)
			}
		}
		switch b := e.Body.(type) {
		case Coat:
			l.Purpose, l.Coating = b.Purpose, &b.Coating
			on(b.Faces, b.Extra)
		case ClothLaid:
			l.Purpose, l.Coating = Adhesive, &b.Coating
			on(b.Faces, nil)
			l.Purpose, l.Coating, l.Cloth = "", nil, &b
			on(b.Faces, nil)
		case PaintLayer:
			l.Paint, l.Coating = &b, &b.Coating
			on(b.Faces, nil)
		case Varnish:
			l.Varnish, l.Coating = &b, &b.Coating
			on(b.Faces, nil)
		}
	}
	return out
}

// BuildUp returns the layers of one face from the board outwards.
func (p *Panel) BuildUp(f Face) []Layer {
	var out []Layer
	for _, l := range p.Layers() {
		if l.Face == f {
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
