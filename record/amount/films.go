package amount

import (
	"backleaf/record"
	"backleaf/record/measure"
)

// Certainty says where a thickness comes from.
type Certainty string

// The certainties, strongest first.
const (
	Measured  Certainty = "measured"
	Estimated Certainty = "estimated"
	Unknown   Certainty = "unknown"
)

// Film is a layer with the thickness of its film in micrometres, wet and dry.
// A thickness of unknown certainty is 0 and means nothing.
type Film struct {
	Layer      record.Layer
	WetMicrons float64
	DryMicrons float64
	Wet, Dry   Certainty
	Why        record.Said // why something is unknown
}

// Films returns the thickness of every layer of a panel, in the order of
// [record.Panel.Layers]. A cloth is no film: its thickness is unknown, its
// adhesive is a layer of its own.
//
// Measured is what a gauge said. Estimated is an amount, shared out by area
// over the faces and the panels of the entry; a face that was given extra
// counts twice. Material left in the tool and drunk by the board counts as
// film. Parts of a mix are parts by volume. A coat with no thinner recorded
// counts as undiluted; the amount is what was laid, thinner included.
//
// The workshop must hold all the panels that the entry names: what one of them
// took is not known without the size of the others, and is then Unknown.
func Films(w *record.Workshop, p *record.Panel) []Film {
	layers := p.Layers()
	films := make([]Film, len(layers))
	s := newShares(w)
	for i, l := range layers {
		films[i] = s.film(p, l)
	}
	return films
}

// FilmOf is the film of one layer, as in [Films].
func FilmOf(w *record.Workshop, p *record.Panel, l record.Layer) Film { return newShares(w).film(p, l) }

func (s *shares) film(p *record.Panel, l record.Layer) Film {
	f := Film{Layer: l, Wet: Unknown, Dry: Unknown}
	if l.Coating == nil {
		f.Why = record.Say("cloth-is-no-film")
		return f
	}
	if len(l.Losses) > 0 {
		f.Why = record.Say("layer-reduced")
		return f
	}
	c := l.Coating
	if um, ok := c.WetFilm.Micrometers(); ok && um > 0 {
		f.WetMicrons, f.Wet = float64(um), Measured
	} else if um, why := s.spread(p, l); why.Code == "" {
		f.WetMicrons, f.Wet = um, Estimated
	} else {
		f.Why = why
	}
	if um, ok := c.DryFilm.Micrometers(); ok && um > 0 {
		f.DryMicrons, f.Dry = float64(um), Measured
		return f
	}
	if f.Wet == Unknown {
		return f
	}
	b, why := blendOf(s.w, c)
	if why.Code == "" && b.solids == 0 {
		why = record.Say("solids-open", record.With("material", b.names))
	}
	if why.Code != "" {
		f.Why = why
		return f
	}
	dry, err := measure.DryMicrons(f.WetMicrons, b.solids, b.thinned)
	if err != nil {
		f.Why = record.Say("film-out-of-range")
		return f
	}
	f.DryMicrons, f.Dry = dry, Estimated
	return f
}
