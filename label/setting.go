package label

import (
	"math"

	"backleaf/record/paper"
)

// A setting is one way to fill a label: the size of its type and symbols, and
// how its parts stand. All labels of one size on a sheet have the same.
type setting struct {
	bodyPt  float64
	dots    int     // side of a module, in dots of 1/300 inch
	low     bool    // the symbol stands at the foot and not below the number
	columns bool    // headings stand in a column of their own
	list    bool    // the build-up stands line by line
	share   float64 // of the width that what the work is takes beside how it is made; 0: above it
	rough   bool    // words longer than a line may be broken
}

// Type of the text, in points. The largest is easily read at arm's length.
const (
	largestPt  = 9.0
	listPt     = 7.5 // a list is worth room, but no type below this
	columnPt   = 7.0
	smallestPt = paper.SmallestPt
)

// A column of headings, and two columns of text, need a label this wide.
const (
	columnsMM = 78
	twinMM    = 90
)

// settings lists the ways to fill an area, the best first. The last ones have
// the smallest type and symbols; what finds no room in them finds none.
func settings(a Area) []setting {
	var out []setting
	lows := []bool{false, true}
	if a.WidthMM < 50 && a.HeightMM >= 0.8*a.WidthMM {
		lows = []bool{true, false} // lines beside the symbol would be short
	}
	add := func(to float64, s setting) {
		for s.bodyPt = largestPt; s.bodyPt >= to-1e-9; s.bodyPt -= 0.5 {
			for s.dots = mostDots(a); s.dots >= leastDots; s.dots-- {
				for _, s.low = range lows {
					out = append(out, s)
				}
			}
		}
	}
	if a.WidthMM >= columnsMM {
		add(listPt, setting{columns: true, list: true})
		add(columnPt, setting{columns: true})
	}
	if a.WidthMM >= twinMM && a.HeightMM < 0.65*a.WidthMM {
		for _, share := range []float64{0.42, 0.35} {
			add(smallestPt, setting{share: share})
		}
	}
	add(smallestPt, setting{})
	add(smallestPt, setting{rough: true})
	return out
}

// Modules of the symbol: 0.42 mm at least, and 0.59 mm on a label with room.
const leastDots = 5

func mostDots(a Area) int {
	switch side := min(a.WidthMM, a.HeightMM); {
	case a.WidthMM < 45:
		return leastDots
	case side < 50:
		return 6
	}
	return 7
}

// padMM is the white border inside a label.
func padMM(a Area) float64 { return math.Min(4, math.Max(2.3, 0.045*math.Min(a.WidthMM, a.HeightMM))) }

// The styles of a setting. Leading is a fifth more than the type.
func (s setting) style(like paper.Style, times float64) paper.Style {
	like.SizePt = math.Max(s.bodyPt*times, smallestPt)
	like.LeadPt = 1.19 * like.SizePt
	return like
}

// number is set no larger than mostPt, which is such that the longest number
// of all labels of one size finds room.
func (s setting) number(mostPt float64) paper.Style {
	n := paper.LabelNumber
	n.SizePt = math.Min(1.5*s.bodyPt+3, mostPt)
	n.LeadPt = 1.12 * n.SizePt
	return n
}

func (s setting) title() paper.Style  { return s.style(paper.LabelBold, 1.25) }
func (s setting) strong() paper.Style { return s.style(paper.LabelBold, 1) }
func (s setting) body() paper.Style   { return s.style(paper.LabelBody, 1) }
func (s setting) small() paper.Style  { return s.style(paper.LabelBody, 0.8) }
func (s setting) head() paper.Style   { return s.style(paper.LabelHead, 0.76) }
