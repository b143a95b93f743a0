package check

import (
	"slices"
	"strings"

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
	Why        string // why something is unknown
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
	for i, l := range layers {
		films[i] = film(w, p, l)
	}
	return films
}

func film(w *record.Workshop, p *record.Panel, l record.Layer) Film {
	f := Film{Layer: l, Wet: Unknown, Dry: Unknown}
	if l.Coating == nil {
		f.Why = "a cloth is no film"
		return f
	}
	c := l.Coating
	if um, ok := c.WetFilm.Micrometers(); ok && um > 0 {
		f.WetMicrons, f.Wet = float64(um), Measured
	} else if um, why := spread(w, p, l); why == "" {
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
	b, why := blendOf(w, c)
	if why == "" && b.solids == 0 {
		why = "the solids of " + b.names + " are not recorded"
	}
	if why != "" {
		f.Why = why
		return f
	}
	dry, err := measure.DryMicrons(f.WetMicrons, b.solids, b.thinned)
	if err != nil {
		f.Why = err.Error()
		return f
	}
	f.DryMicrons, f.Dry = dry, Estimated
	return f
}

// spread estimates a wet film from the amount laid.
func spread(w *record.Workshop, p *record.Panel, l record.Layer) (microns float64, why string) {
	a, why := amountOn(w, p, l.Seq)
	if why != "" {
		return 0, why
	}
	all := weighedArea(w, p, l.Seq)
	if all == 0 {
		return 0, "the size of the panel is not recorded"
	}
	volume := a.microliters
	if volume == 0 {
		b, why := blendOf(w, l.Coating)
		if why != "" {
			return 0, why
		}
		if b.density == 0 {
			return 0, "the density of " + b.names + " is not recorded"
		}
		volume = a.milligrams / b.laidDensity()
	}
	share := 1.0
	if l.Extra {
		share = extraShare
	}
	// 1 µL over 1 mm² stands 1000 µm high.
	return volume * share / all * 1000, ""
}

// extraShare is how much more a face counts that was given extra.
const extraShare = 2

// amount is what one panel took of an application: a mass or a volume.
type amount struct{ milligrams, microliters float64 }

// amountOn returns what of one entry's amount is on a panel.
func amountOn(w *record.Workshop, p *record.Panel, seq int64) (amount, string) {
	c, at := coatingOf(p, seq)
	if c == nil {
		return amount{}, "no amount is recorded"
	}
	share, total := 1.0, c.WetEach
	if total.IsZero() {
		total = c.WetTotal
		var all float64
		for _, n := range at.Panels {
			q := w.Panel(n)
			if q == nil {
				return amount{}, "the amount was for several panels, of which " + string(n) + " is not at hand"
			}
			if qc, _ := coatingOf(q, seq); qc == nil {
				continue // withdrawn for that panel
			}
			area := weighedArea(w, q, seq)
			if area == 0 {
				return amount{}, "the amount was for several panels, and the size of " + string(n) + " is not recorded"
			}
			all += area
		}
		if all == 0 {
			return amount{}, "the size of the panel is not recorded"
		}
		share = weighedArea(w, p, seq) / all
	}
	if mg, ok := total.Milligrams(); ok && mg > 0 {
		return amount{milligrams: float64(mg) * share}, ""
	}
	if ul, ok := total.Microliters(); ok && ul > 0 {
		return amount{microliters: float64(ul) * share}, ""
	}
	return amount{}, "no amount is recorded"
}

func coatingOf(p *record.Panel, seq int64) (*record.Coating, record.Event) {
	i := slices.IndexFunc(p.Events, func(e record.Event) bool { return e.Seq == seq })
	if i < 0 {
		return nil, record.Event{}
	}
	e := p.Events[i]
	switch b := e.Body.(type) {
	case record.Coat:
		return &b.Coating, e
	case record.ClothLaid:
		return &b.Coating, e
	case record.PaintLayer:
		return &b.Coating, e
	case record.Varnish:
		return &b.Coating, e
	}
	return nil, e
}

// weighedArea is the area in mm² over which an entry was spread on a panel,
// faces that were given extra counting twice; 0 where it is not known.
func weighedArea(w *record.Workshop, p *record.Panel, seq int64) float64 {
	_, e := coatingOf(p, seq)
	faces, extra := facesOf(e.Body)
	var all float64
	for _, f := range faces {
		a := faceArea(w, p, f)
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

// facesOf returns the faces of a wet application and those given extra. A
// painting without faces is on the front.
func facesOf(b record.Body) (faces, extra []record.Face) {
	front := []record.Face{record.Front}
	switch b := b.(type) {
	case record.Coat:
		return b.Faces, b.Extra
	case record.ClothLaid:
		return b.Faces, nil
	case record.PaintLayer:
		if len(b.Faces) > 0 {
			return b.Faces, nil
		}
	case record.Varnish:
		if len(b.Faces) > 0 {
			return b.Faces, nil
		}
	}
	return front, nil
}

// faceArea is the area of a face in mm²; 0 where it is not known.
func faceArea(w *record.Workshop, p *record.Panel, f record.Face) float64 {
	h, ok1 := p.Size().Height.Micrometers()
	b, ok2 := p.Size().Width.Micrometers()
	if !ok1 || !ok2 {
		return 0
	}
	if f != record.Edges {
		return float64(h) * float64(b) / 1e6
	}
	d, ok := thickness(w, p)
	if !ok {
		return 0
	}
	return 2 * float64(h+b) * d / 1e6
}

// blend is a mix as one liquid. Solids and density are of the undiluted
// product, 0 where a part of it is not recorded.
type blend struct {
	names   string
	solids  float64 // fraction by volume
	density float64 // g/mL, the same as mg/µL
	thinned float64 // thinner added, as a fraction of the undiluted volume
	water   bool    // the thinner is water
}

func blendOf(w *record.Workshop, c *record.Coating) (blend, string) {
	if len(c.Mix) == 0 {
		return blend{}, "the material is not recorded"
	}
	b := blend{water: c.Thinner == "" || strings.EqualFold(c.Thinner, "water") || strings.EqualFold(c.Thinner, "distilled water")}
	if c.Thinned.IsUnknown() {
		return b, "how far it was thinned is recorded as unknown"
	}
	if mp, ok := c.Thinned.Millipercent(); ok {
		b.thinned = float64(mp) / 1e5
	}
	var names []string
	var parts float64
	solid, dense := true, true
	for _, part := range c.Mix {
		m, ok := w.Material(part.Material)
		if !ok {
			return b, "the material is not known"
		}
		names = append(names, m.Name)
		n := float64(part.Parts)
		parts += n
		if rho, ok := m.Density.MilligramsPerMilliliter(); ok {
			b.density += n * float64(rho) / 1000
		} else {
			dense = false
		}
		if v, ok := volumeSolids(m); ok {
			b.solids += n * v
		} else {
			solid = false
		}
	}
	b.names = strings.Join(names, " and ")
	b.solids, b.density = b.solids/parts, b.density/parts
	if !solid {
		b.solids = 0
	}
	if !dense || b.thinned > 0 && !b.water {
		b.density = 0
	}
	return b, ""
}

// laidDensity is the density of the mix with its thinner.
func (b blend) laidDensity() float64 { return (b.density + b.thinned*0.998) / (1 + b.thinned) }

func volumeSolids(m record.Material) (float64, bool) {
	if mp, ok := m.SolidsVolume.Millipercent(); ok && mp > 0 {
		return float64(mp) / 1e5, true
	}
	mass, ok1 := m.SolidsMass.Millipercent()
	rho, ok2 := m.Density.MilligramsPerMilliliter()
	if !ok1 || !ok2 || m.Waterborne != record.Yes {
		return 0, false
	}
	v, err := measure.VolumeSolids(float64(mass)/1e5, float64(rho)/1000)
	return v, err == nil
}
