package tell

import (
	"math"

	"backleaf/record"
	"backleaf/record/measure"
	"backleaf/record/paper"
)

// Thickness returns the dry thickness of a layer in micrometres and how it is
// known: measured, or computed from what was used of it, which is an estimate.
func (t *Teller) Thickness(l record.Layer) (microns int64, c paper.Certainty) {
	if l.Coating == nil {
		return 0, paper.Unknown
	}
	if um, ok := l.Coating.DryFilm.Micrometers(); ok && um > 0 {
		return um, paper.Measured
	}
	wet, ok := t.wetMicrons(l)
	if !ok {
		return 0, paper.Unknown
	}
	solids, ok := t.volumeSolids(l.Coating)
	if !ok {
		return 0, paper.Unknown
	}
	thinner := 0.0
	if mp, ok := l.Coating.Thinned.Millipercent(); ok {
		thinner = float64(mp) / 1e5
	}
	dry, err := measure.DryMicrons(wet, solids, thinner)
	if err != nil || dry < 0.5 {
		return 0, paper.Unknown
	}
	return int64(math.Round(dry)), paper.Estimated
}

// wetMicrons is the wet thickness, by gauge or from the amount and the area.
func (t *Teller) wetMicrons(l record.Layer) (float64, bool) {
	c := l.Coating
	if um, ok := c.WetFilm.Micrometers(); ok && um > 0 {
		return float64(um), true
	}
	amount, area, ok := c.WetEach, 0.0, true
	if known(amount) {
		area, ok = t.coated(t.p, l.Seq)
	} else {
		amount = c.WetTotal
		for _, n := range t.named(l.Seq) {
			p := t.w.Panel(n)
			if p == nil {
				return 0, false // another part of the journal knows how large it is
			}
			a, fits := t.coated(p, l.Seq)
			area, ok = area+a, ok && fits
		}
	}
	if !ok || area <= 0 {
		return 0, false
	}
	if ul, ok := amount.Microliters(); ok {
		return float64(ul) / 1e3 / area, true // mL/m² is µm
	}
	mg, ok := amount.Milligrams()
	if !ok {
		return 0, false
	}
	density, ok := t.mixed(c, func(m record.Material) (float64, bool) {
		d, ok := m.Density.MilligramsPerMilliliter()
		return float64(d) / 1e3, ok
	})
	if !ok {
		return 0, false
	}
	wet, err := measure.WetMicrons(float64(mg)/1e3, density, area)
	return wet, err == nil
}

// named returns the panels that an entry names.
func (t *Teller) named(seq int64) []record.Number {
	for _, e := range t.p.Events {
		if e.Seq == seq {
			return e.Panels
		}
	}
	return nil
}

// coated is the area in m² that an entry coats on a panel.
func (t *Teller) coated(p *record.Panel, seq int64) (area float64, ok bool) {
	ok = true
	seen := map[record.Face]bool{}
	for _, l := range p.Layers() {
		if l.Seq != seq || seen[l.Face] {
			continue
		}
		seen[l.Face] = true
		mm2, fits := p.Size().AreaSquareMillimeters()
		if l.Face == record.Edges {
			mm2, fits = p.Size().EdgeSquareMillimeters()
		}
		area, ok = area+float64(mm2)/1e6, ok && fits
	}
	return area, ok
}

func (t *Teller) volumeSolids(c *record.Coating) (float64, bool) {
	return t.mixed(c, func(m record.Material) (float64, bool) {
		if mp, ok := m.SolidsVolume.Millipercent(); ok {
			return float64(mp) / 1e5, true
		}
		mass, ok := m.SolidsMass.Millipercent()
		density, ok2 := m.Density.MilligramsPerMilliliter()
		if !ok || !ok2 || m.Waterborne != record.Yes {
			return 0, false
		}
		vs, err := measure.VolumeSolids(float64(mass)/1e5, float64(density)/1e3)
		return vs, err == nil
	})
}

// mixed is the mean over the parts of a mix, which are measured by volume.
func (t *Teller) mixed(c *record.Coating, of func(record.Material) (float64, bool)) (float64, bool) {
	sum, parts := 0.0, 0.0
	for _, part := range c.Mix {
		m, ok := t.w.Material(part.Material)
		if !ok {
			return 0, false
		}
		v, ok := of(m)
		if !ok {
			return 0, false
		}
		sum, parts = sum+v*float64(part.Parts), parts+float64(part.Parts)
	}
	return sum / parts, parts > 0
}
