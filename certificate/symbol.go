package certificate

import (
	"math"

	"backleaf/record/paper"
)

// Sizes of the symbols, in millimetres. The large one stands in a square that
// is the same whatever it says: that of the longest statement (seal keeps it
// below 900 bytes) with the least module. So a preview can keep its room.
const (
	linkSideMM = 20.0
	bigSideMM  = 52.0
	quietMM    = 1.5 // the least border of the large one
)

// leastModule is the smallest module of whole printer dots.
var leastModule = math.Ceil(paper.MinModuleMM/(25.4/300)) * 25.4 / 300

// A symbol is a QR symbol drawn at 0, 0, of that side with its quiet zone.
type symbol struct {
	shape paper.Shape
	side  float64
	quiet float64 // its empty border, part of side, which may lie over the edge of its column
}

// statementSymbol draws the signed statement, level M.
func statementSymbol(text string) (symbol, error) {
	s, err := paper.NewSymbol(text, paper.LevelM)
	if err != nil {
		return symbol{}, err
	}
	return fitted(s, bigSideMM)
}

// linkSymbol draws the link, level Q as on a label.
func linkSymbol(text string) (symbol, error) {
	s, err := paper.NewSymbol(text, paper.LevelQ)
	if err != nil {
		return symbol{}, err
	}
	return fitted(s, math.Max(linkSideMM, s.SideMM(leastModule)))
}

func fitted(s paper.Symbol, side float64) (symbol, error) {
	shape, side, err := s.Fit(0, 0, side+1e-6)
	return symbol{shape, side, side * 4 / float64(s.Modules()+8)}, err
}
