package amount

import (
	"backleaf/record"
	"backleaf/record/measure"
	"backleaf/record/trade"
)

// blend is a mix as one liquid. Solids and density are of the undiluted
// product, 0 where a part of it is not recorded.
type blend struct {
	names   []string
	solids  float64 // fraction by volume
	density float64 // g/mL, the same as mg/µL
	thinned float64 // thinner added, as a fraction of the undiluted volume
	water   bool    // the thinner is water
}

func blendOf(w *record.Workshop, c *record.Coating) (blend, record.Said) {
	if len(c.Mix) == 0 {
		return blend{}, record.Say("mix-open")
	}
	b := blend{water: c.Thinner == "" && c.ThinnerIs == "" || trade.IsWater(c.ThinnerIs) == record.Yes}
	if c.Thinned.IsUnknown() {
		return b, record.Say("thinned-open")
	}
	if mp, ok := c.Thinned.Millipercent(); ok {
		b.thinned = float64(mp) / 1e5
	}
	var parts float64
	solid, dense := true, true
	for _, part := range c.Mix {
		m, ok := w.MaterialMeant(part.Material, part.As)
		if !ok {
			return b, record.Say("mix-open")
		}
		b.names = append(b.names, m.Name)
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
	b.solids, b.density = b.solids/parts, b.density/parts
	if !solid {
		b.solids = 0
	}
	if !dense || b.thinned > 0 && !b.water {
		b.density = 0
	}
	return b, record.Said{}
}

// laidDensity is the density of the mix with its thinner.
func (b blend) laidDensity() float64 { return (b.density + b.thinned*0.998) / (1 + b.thinned) }

func volumeSolids(m *record.Material) (float64, bool) {
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
