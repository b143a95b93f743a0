package paper

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// A Section is the drawing of a build-up cut through: bands from the front, on
// top, to the back, each with its callout. It is not to scale and says so.
type Section struct {
	Bands []Band
	Words SectionWords
	// Name and Detail are the styles of the callouts: LabelBody and
	// LabelSmall if left zero.
	Name, Detail Style
	// Title and Desc are for readers who cannot see the drawing. An empty Desc
	// is made from the callouts.
	Title, Desc string
}

// A Band is one layer.
type Band struct {
	Kind  BandKind
	Board BoardKind // of a board
	Plies int       // of plywood; 0 if not known, drawn as three
	Label string    // what it is
	Note  string    // when, by whom: what else the callout says

	ThicknessMicrons int64
	Certainty        Certainty
	Recorded         string // the thickness as it was written down, printed instead of it
}

// A BandKind is what a layer is for; each has a hatching of its own.
type BandKind int

// The kinds of layers.
const (
	OtherBand BandKind = iota
	BoardBand
	ClothBand
	SealerBand // size or sealer
	AdhesiveBand
	GroundBand
	PaintBand
	VarnishBand
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

// SectionWords are the words that the drawing itself prints.
type SectionWords struct {
	Front, Back string
	Measured    string // behind a thickness
	Estimated   string
	NotRecorded string // instead of one
	NotToScale  string
	// Part says which layers a drawing shows that is one of several; it has
	// three places for numbers: first, last, all.
	Part string
}

// EnglishSection are the words in English.
var EnglishSection = SectionWords{
	Front: "Front", Back: "Back",
	Measured: "measured", Estimated: "estimated", NotRecorded: "thickness not recorded",
	NotToScale: "Not to scale",
	Part:       "Layers %d to %d of %d, counted from the front",
}

// Thickness writes micrometres as people read them: in µm below a millimetre,
// else in mm, without rounding.
func Thickness(microns int64) string {
	if microns < 1000 {
		return strconv.FormatInt(microns, 10) + ThinSpace + "µm"
	}
	s := fmt.Sprintf("%d.%03d", microns/1000, microns%1000)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".") + ThinSpace + "mm"
}

func (s Section) thickness(b Band) string {
	if b.Recorded != "" {
		return b.Recorded
	}
	switch b.Certainty {
	case Measured:
		return Thickness(b.ThicknessMicrons) + ", " + s.Words.Measured
	case Estimated:
		return Thickness(b.ThicknessMicrons) + ", " + s.Words.Estimated
	}
	return s.Words.NotRecorded
}

// Draw draws the section in at most widthMM × heightMM. Callouts become
// tighter, then smaller, before the layers are shared out over several
// drawings, each of which says which layers it shows. A drawing is no higher
// than it needs to be.
func (s Section) Draw(widthMM, heightMM float64) ([]Drawing, error) {
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
	if s.Name == (Style{}) {
		s.Name = LabelBody
	}
	if s.Detail == (Style{}) {
		s.Detail = LabelSmall
	}
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
	return nil, fmt.Errorf("build-up: %w in %.0f × %.0f mm", ErrTooLong, widthMM, heightMM)
}

// shapes draws the inside of a band.
func (b Band) shapes(r Rect) []Shape {
	switch b.Kind {
	case BoardBand:
		return b.boardShapes(r)
	case ClothBand:
		return []Shape{hatch(r, weave(r)...)}
	case SealerBand:
		return []Shape{hatch(r, slanted(r, 1.3))}
	case AdhesiveBand:
		return []Shape{hatch(r, slanted(r, 1.3), counter(r, 1.3))}
	case GroundBand:
		return []Shape{hatch(r, dots(r))}
	case PaintBand:
		return []Shape{hatch(r, upright(r, 0.75))}
	case VarnishBand:
		return []Shape{hatch(r, glints(r))}
	}
	return []Shape{hatch(r, ticks(r))}
}

func (b Band) boardShapes(r Rect) []Shape {
	depth := math.Min(0.9, r.H/5)
	switch b.Board {
	case Plywood:
		n := b.Plies
		if n < 1 || float64(n) > r.H {
			n = 3
		}
		return []Shape{hatch(r, plies(r, n)...)}
	case MDF:
		return []Shape{hatch(r, speckle(r))}
	case Hardboard:
		return []Shape{hatch(r, fibres(r))}
	case HardboardRoughBack:
		r.H -= depth
		return []Shape{hatch(r, fibres(r)), hatch(Rect{X: r.X, Y: r.Y, W: r.W, H: r.H + depth}, roughEdge(r, r.Y+r.H, depth))}
	case HardboardRoughFront:
		r.Y, r.H = r.Y+depth, r.H-depth
		return []Shape{hatch(r, fibres(r)), hatch(Rect{X: r.X, Y: r.Y - depth, W: r.W, H: r.H}, roughEdge(r, r.Y-depth, depth))}
	case SolidWood:
		return []Shape{hatch(r, grain(r))}
	case Honeycomb:
		return []Shape{hatch(r, cells(r)...)}
	}
	return nil
}
