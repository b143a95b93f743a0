package balance

// section adds up the layers of a plate: stiffness, and its first and second
// moment about the middle of the board, per width, in N/m, N and N·m.
type section struct{ a, b, d float64 }

// add lays a layer of a plate modulus in Pa with its middle at z, in metres.
func (s *section) add(thickness, z, pa float64) {
	e := pa * thickness
	s.a += e
	s.b += e * z
	s.d += e * (z*z + thickness*thickness/12)
}

// neutral is where the neutral plane lies, z in metres.
func (s *section) neutral() float64 { return s.b / s.a }

// stiffness is that about the neutral plane, in N·m.
func (s *section) stiffness() float64 { return s.d - s.b*s.b/s.a }

// sagitta is the height of the arc over a span, in the unit of the span, κ·L²/8:
// 0.04 % low where it is 1 % of the span. Geometry.
func sagitta(perMetre, spanMicrons float64) float64 {
	return perMetre * 1e-6 * spanMicrons * spanMicrons / 8
}
