package certificate

import "backleaf/record/paper"

// A sheet is the paper and how large the type on it is.
type sheet struct {
	width, height float64
	left, right   float64 // margins
	top, bottom   float64
	scale         float64 // of all type but the title
}

// Sizes of paper, in millimetres: ISO 216 A4, and US Letter.
var papers = map[string]sheet{
	"a4":     {width: 210, height: 297, left: 22, right: 22, top: 17, bottom: 15},
	"letter": {width: 215.9, height: 279.4, left: 23, right: 23, top: 15, bottom: 13},
}

// inner is the width between the margins.
func (s sheet) inner() float64 { return s.width - s.left - s.right }

func (s sheet) body() paper.Style    { return paper.Body.Scaled(s.scale) }
func (s sheet) small() paper.Style   { return paper.Small.Scaled(s.scale) }
func (s sheet) name() paper.Style    { return paper.Small.Scaled(s.scale).Italic() }
func (s sheet) heading() paper.Style { return paper.Heading.Scaled(0.9 * s.scale) }

// column starts an empty column.
func (s sheet) column(width float64) *column { return &column{width: width} }
