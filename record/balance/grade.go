package balance

import "math"

// Grade says how much a bow is for its span.
type Grade int

// The grades; the lower two are no fault. Published limits lie on both sides of
// the steps: door leaves 0.19 % (AS 2688) and about 0.28 %, cabinet doors 0.56
// %, faced board 0.2 % (from memory of EN 14322), 0.20 to 0.26 % called very
// minor by a conservator. What a straightedge and a feeler can tell, 0.5 mm or
// 0.1 %, is common practice.
const (
	Negligible Grade = iota // under 0.5 mm, or under 0.1 % of the span
	Slight                  // 0.1 to under 0.2 %
	Matters                 // 0.2 to 0.5 %
	Strong                  // over 0.5 %
)

// GradeOf grades a bow, of either sign, over the span it was measured or
// reckoned over.
func GradeOf(bowMicrons, spanMicrons float64) Grade {
	// Multiplied out, so that a bow of exactly 0.2 or 0.5 % is not lost to
	// rounding.
	switch bow := math.Abs(bowMicrons); {
	case bow < 500 || bow*1000 < spanMicrons:
		return Negligible
	case bow*1000 < 2*spanMicrons:
		return Slight
	case bow*1000 <= 5*spanMicrons:
		return Matters
	}
	return Strong
}
