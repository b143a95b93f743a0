package certificate

import "backleaf/record/paper"

// A sheet is the paper and its margins, in millimetres.
type sheet struct {
	width, height float64
	side          float64 // margins
	top, bottom   float64
}

// Sizes of paper: ISO 216 A4, and US Letter.
var papers = map[string]sheet{
	"a4":     {width: 210, height: 297, side: 24, top: 19, bottom: 16},
	"letter": {width: 215.9, height: 279.4, side: 25, top: 16, bottom: 14},
}

// inner is the width between the margins, room the height.
func (s sheet) inner() float64  { return s.width - 2*s.side }
func (s sheet) room() float64   { return s.height - s.top - s.bottom }
func (s sheet) middle() float64 { return s.width / 2 }

// The styles of both sides. Text to be read is 9 pt at least.
var (
	heading = sized(paper.Heading, 9)
	capital = tracked(sized(paper.Heading, 9.5), 0.085)
	body    = sized(paper.Body, 10)
	text    = sized(paper.Body, 9)
	name    = text.Italic()
	strong  = text.Bold()
	note    = sized(paper.Body, 7.5)
	digest  = sized(paper.Digest, 7)
)

func sized(s paper.Style, pt float64) paper.Style { return s.Scaled(pt / s.SizePt) }

func tracked(s paper.Style, em float64) paper.Style {
	s.TrackEm = em
	return s
}
