// Package section draws a build-up cut through, from front to back, with a
// hatching for each kind of layer and a callout that says what is known of it.
// It knows nothing of panels and prints no word of its own.
//
// The hatchings differ in black and white; a thickness is called measured or
// estimated, what no callout says is said once not to be recorded, and the
// drawing is not to scale;
// [Section.ToScale] is, of the layers whose thickness is known.
// TestCalloutsDoNotOverlap reads drawings back and looks for text over text.
package section

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"backleaf/record/paper"
)

// A Section is the drawing of a build-up cut through: bands from the front, on
// top, to the back, each with its callout. It is not to scale and says so.
type Section struct {
	Bands []Band
	Words Words
	// Name and Detail are the styles of the callouts, Head that of the words
	// above and below the strip: LabelBody, LabelSmall and LabelHead if left zero.
	Name, Detail, Head paper.Style
	// Title and Desc are for readers who cannot see the drawing. An empty Desc
	// is made from the callouts.
	Title, Desc string
	// Numbered puts the number of each layer, from the front, before its label,
	// and beside it in the drawing to scale.
	Numbered bool
}

// A Band is one layer.
type Band struct {
	Kind   BandKind
	Board  BoardKind // of a board
	Plies  int       // of plywood; 0 if not known, drawn as three
	Coats  int       // so many alike, one on the other; 0 is one
	Label  string    // what it is
	Detail string    // what else is to be said of that, if anything
	Note   string    // when; empty: not recorded

	ThicknessMicrons int64 // of all coats
	Certainty        Certainty
	Recorded         string // the thickness as it was written down, printed instead of it
}

// A BandKind is what a layer is for; each has a hatching of its own.
type BandKind int

// The kinds of layers.
const (
	Other BandKind = iota
	Board
	Cloth
	Sealer // size or sealer
	Adhesive
	Ground
	Paint
	Varnish
)

// A BoardKind is the make of a board.
type BoardKind int

// The makes of boards. Hardboard that is rough on one side shows which.
const (
	OtherBoard BoardKind = iota
	Plywood
	MDF
	Hardboard           // smooth on both sides, or not known
	HardboardRoughBack  // rough side to the back
	HardboardRoughFront // rough side to the front
	SolidWood
	Honeycomb
)

// A Certainty says how a thickness is known.
type Certainty int

// The certainties. Unknown is the zero value: nothing is claimed by default.
const (
	Unknown Certainty = iota
	Estimated
	Measured
)

// Words are the words that the drawing itself prints.
type Words struct {
	Front, Back string
	Measured    string // a thickness; it has a place {t}
	Estimated   string // the most that it can be
	NotToScale  string
	NotRecorded string // behind it, where a callout lacks a note or a thickness
	ToScale     string // of the drawing that is: it has a place {times}
	LeftOut     string // layers that it leaves out; it has a place {layers}
	// Part says which layers a drawing shows that is one of several; it has
	// places for numbers: {first}, {last} and {all}.
	Part string
}

// Thickness writes micrometres as people read them: in µm below a millimetre,
// else in mm, without rounding.
func Thickness(microns int64) string {
	if microns < 1000 {
		return strconv.FormatInt(microns, 10) + paper.ThinSpace + "µm"
	}
	s := fmt.Sprintf("%d.%03d", microns/1000, microns%1000)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".") + paper.ThinSpace + "mm"
}

// label is the first line of a callout.
func (s Section) label(i int) string {
	if text := paper.OneLine(s.Bands[i].Label); !s.Numbered {
		return text
	} else {
		return strconv.Itoa(i+1) + "\u2002" + text
	}
}

// known is what a callout says below the label: nothing of what is not recorded.
func (s Section) known(b Band) (out []string) {
	if b.Note != "" {
		out = append(out, paper.OneLine(b.Note))
	}
	switch {
	case b.Recorded != "":
		out = append(out, b.Recorded)
	case b.Certainty == Measured:
		out = append(out, strings.ReplaceAll(s.Words.Measured, "{t}", Thickness(b.ThicknessMicrons)))
	case b.Certainty == Estimated:
		out = append(out, strings.ReplaceAll(s.Words.Estimated, "{t}", Thickness(b.ThicknessMicrons)))
	}
	return out
}

// said is all that a callout says below the label.
func (s Section) said(b Band) []string {
	if b.Detail == "" {
		return s.known(b)
	}
	return append([]string{paper.OneLine(b.Detail)}, s.known(b)...)
}

// notes are the words below the drawing.
func (s Section) notes() string {
	if slices.ContainsFunc(s.Bands, func(b Band) bool { return len(s.known(b)) < 2 }) {
		return s.Words.NotToScale + ". " + s.Words.NotRecorded
	}
	return s.Words.NotToScale
}

// Draw draws the section in at most widthMM × heightMM. Callouts become
// tighter, then smaller, before the layers are shared out over several
// drawings, each of which says which layers it shows. A drawing is no higher
// than it needs to be.
func (s Section) Draw(widthMM, heightMM float64) ([]paper.Drawing, error) {
	if len(s.Bands) == 0 {
		return nil, fmt.Errorf("cannot draw build-up: no layers")
	}
	if widthMM < minSectionMM {
		return nil, fmt.Errorf("cannot draw build-up: %.0f mm is narrower than %.0f mm", widthMM, minSectionMM)
	}
	for i, b := range s.Bands {
		if b.Certainty != Unknown && b.ThicknessMicrons <= 0 {
			return nil, fmt.Errorf("cannot draw build-up: layer %d is said to be %d µm thick", i+1, b.ThicknessMicrons)
		}
	}
	s.usualStyles()
	n := len(s.Bands)
	for parts := 1; parts <= n; parts++ {
		drawings, ok, err := s.drawParts(parts, widthMM, heightMM)
		if err != nil {
			return nil, err
		}
		if ok {
			return drawings, nil
		}
	}
	return nil, fmt.Errorf("build-up: %w", paper.ErrTooLong)
}

// usualStyles fills in the styles that were left zero.
func (s *Section) usualStyles() {
	for style, usual := range map[*paper.Style]paper.Style{&s.Name: paper.LabelBody, &s.Detail: paper.LabelSmall, &s.Head: paper.LabelHead} {
		if *style == (paper.Style{}) {
			*style = usual
		}
	}
}

// shapes draws the inside of a band, and what parts its coats.
func (b Band) shapes(r paper.Rect) []paper.Shape {
	out := b.inside(r)
	const finest = 1.2 // mm; where more lines would only be a grid, the callout counts the coats
	for i := 1; i < b.Coats && r.H >= finest*float64(b.Coats); i++ {
		y := r.Y + r.H*float64(i)/float64(b.Coats)
		out = append(out, paper.Line{X1: r.X, Y1: y, X2: r.X + r.W, Y2: y, WeightMM: hatchMM})
	}
	return out
}

func (b Band) inside(r paper.Rect) []paper.Shape {
	switch b.Kind {
	case Board:
		return b.boardShapes(r)
	case Cloth:
		return []paper.Shape{hatch(r, weave(r)...)}
	case Sealer:
		return []paper.Shape{hatch(r, parallel(r, 1.3, r.H))}
	case Adhesive:
		return []paper.Shape{hatch(r, parallel(r, 1.3, r.H), parallel(r, 1.3, -r.H))}
	case Ground:
		return []paper.Shape{hatch(r, dots(r))}
	case Paint:
		return []paper.Shape{hatch(r, parallel(r, 1.7, 0))}
	case Varnish:
		return []paper.Shape{hatch(r, glints(r))}
	}
	return []paper.Shape{hatch(r, ticks(r))}
}

func (b Band) boardShapes(r paper.Rect) []paper.Shape {
	depth := math.Min(0.9, r.H/5)
	switch b.Board {
	case Plywood:
		n := b.Plies
		if n < 1 || float64(n) > r.H {
			n = 3
		}
		return []paper.Shape{hatch(r, plies(r, n)...)}
	case MDF:
		return []paper.Shape{hatch(r, speckle(r))}
	case Hardboard:
		return []paper.Shape{hatch(r, fibres(r))}
	case HardboardRoughBack:
		r.H -= depth
		return []paper.Shape{hatch(r, fibres(r)), hatch(paper.Rect{X: r.X, Y: r.Y, W: r.W, H: r.H + depth}, roughEdge(r, r.Y+r.H, depth))}
	case HardboardRoughFront:
		r.Y, r.H = r.Y+depth, r.H-depth
		return []paper.Shape{hatch(r, fibres(r)), hatch(paper.Rect{X: r.X, Y: r.Y - depth, W: r.W, H: r.H}, roughEdge(r, r.Y-depth, depth))}
	case SolidWood:
		return []paper.Shape{hatch(r, grain(r))}
	case Honeycomb:
		return []paper.Shape{hatch(r, cells(r)...)}
	}
	return nil
}
