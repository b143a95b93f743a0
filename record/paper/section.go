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
	switch b.Certainty {
	case Measured:
		return Thickness(b.ThicknessMicrons) + ", " + s.Words.Measured
	case Estimated:
		return Thickness(b.ThicknessMicrons) + ", " + s.Words.Estimated
	}
	return s.Words.NotRecorded
}

// Sizes of the drawing, in millimetres.
const (
	stripShare     = 0.36 // of the width
	leaderMM       = 9.0
	headMM         = 4.0 // room for the words above and below the strip
	minBandMM      = 0.9
	boardMM        = 14.0
	clothMM        = 4.5
	coatMM         = 3.0
	calloutGapMM   = 0.9
	smallestBandBy = 0.76 // smallest scale of the callouts
	minSectionMM   = 50.0 // narrowest drawing
)

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

// drawParts draws the layers in so many drawings, or reports that they do not fit.
func (s Section) drawParts(parts int, width, height float64) ([]Drawing, bool, error) {
	n := len(s.Bands)
	var out []Drawing
	for p := range parts {
		l := sectionLayout{section: s, first: p * n / parts, last: (p + 1) * n / parts, width: width}
		if ok, err := l.fit(height); !ok || err != nil {
			return nil, false, err
		}
		d, err := l.draw()
		if err != nil {
			return nil, false, err
		}
		out = append(out, d)
	}
	return out, true, nil
}

// A sectionLayout sets the layers from first up to last in one drawing.
type sectionLayout struct {
	section     Section
	first, last int
	width       float64
	callouts    []Block
	gap         float64
	heights     []float64 // of the bands
	body        float64   // height of strip and callouts
}

func (l *sectionLayout) bands() []Band { return l.section.Bands[l.first:l.last] }

func (l *sectionLayout) stripWidth() float64 { return l.width * stripShare }

func (l *sectionLayout) calloutX() float64 { return l.stripWidth() + leaderMM }

// foot is the height below the strip: the words, and a line for the part.
func (l *sectionLayout) foot() float64 {
	if l.last-l.first < len(l.section.Bands) {
		return 2 * headMM
	}
	return headMM
}

// fit chooses the callouts: on lines of their own, then run on, then smaller.
func (l *sectionLayout) fit(height float64) (bool, error) {
	room := height - headMM - l.foot()
	for _, runOn := range []bool{false, true} {
		for scale := 1.0; scale >= smallestBandBy-1e-9; scale -= 0.04 {
			if scale < 1 && !runOn {
				break
			}
			if l.section.Detail.SizePt*scale < SmallestPt {
				break
			}
			if err := l.compose(scale, runOn); err != nil {
				return false, err
			}
			if l.place(room) {
				return true, nil
			}
		}
	}
	return false, nil
}

func (l *sectionLayout) compose(scale float64, runOn bool) error {
	s := l.section
	name, detail := s.Name.Scaled(scale), s.Detail.Scaled(scale)
	l.gap = calloutGapMM * scale
	l.callouts = nil
	for i, b := range l.bands() {
		field := fmt.Sprintf("layer %d", l.first+i+1)
		rest := l.together(detail, s.thickness(b))
		if b.Note != "" {
			rest = l.together(detail, OneLine(b.Note)) + " · " + rest
		}
		between := "\n"
		if runOn {
			between = " · "
		}
		c, err := Compose(l.width-l.calloutX(), Span{name, OneLine(b.Label), field}, Span{detail, between + rest, field})
		if err != nil {
			return err
		}
		l.callouts = append(l.callouts, c)
	}
	return nil
}

// together keeps a date or a thickness on one line, if a line can hold it.
func (l *sectionLayout) together(style Style, text string) string {
	b, err := Compose(0, Span{Style: style, Text: text})
	if err != nil || b.WidthMM() > l.width-l.calloutX() {
		return text // what is wrong with it will be said where it is set
	}
	return strings.ReplaceAll(text, " ", NoBreakSpace)
}

// place chooses the heights of the bands, so that a level line leads to most
// callouts where there is room for that.
func (l *sectionLayout) place(room float64) bool {
	text := -l.gap
	for _, c := range l.callouts {
		text += c.HeightMM() + l.gap
	}
	natural := 0.0
	l.heights = nil
	for i, b := range l.bands() {
		h := coatMM
		switch b.Kind {
		case BoardBand:
			h = boardMM
		case ClothBand:
			h = clothMM
		}
		// A band as high as its callout needs no bent line.
		h = math.Max(h, l.callouts[i].HeightMM()+l.gap)
		l.heights = append(l.heights, h)
		natural += h
	}
	l.body = math.Min(room, math.Max(text, natural))
	if text > l.body+1e-6 {
		return false
	}
	for i := range l.heights {
		if l.heights[i] *= l.body / natural; l.heights[i] < minBandMM {
			return false
		}
	}
	return true
}

// tops spreads the callouts: each as near to its band as the others allow, in
// the same order, so that no two overlap and no two lines cross. This is
// isotonic regression by pooling neighbours.
func (l *sectionLayout) tops() []float64 {
	type pool struct{ sum, n float64 }
	var pools []pool
	offset, y := 0.0, 0.0
	offsets := make([]float64, len(l.callouts))
	for i, c := range l.callouts {
		offsets[i] = offset
		wish := y + l.heights[i]/2 - c.lines[0].heightMM()/2 - offset
		pools = append(pools, pool{wish, 1})
		for k := len(pools) - 1; k > 0 && pools[k-1].sum/pools[k-1].n > pools[k].sum/pools[k].n; k-- {
			pools[k-1] = pool{pools[k-1].sum + pools[k].sum, pools[k-1].n + pools[k].n}
			pools = pools[:k]
		}
		y += l.heights[i]
		offset += c.HeightMM() + l.gap
	}
	slack := l.body - (offset - l.gap)
	var tops []float64
	for _, p := range pools {
		for range int(p.n) {
			tops = append(tops, math.Min(math.Max(p.sum/p.n, 0), slack)+offsets[len(tops)])
		}
	}
	return tops
}

func (l *sectionLayout) draw() (Drawing, error) {
	s := l.section
	d := Drawing{WidthMM: l.width, HeightMM: headMM + l.body + l.foot(), Title: s.Title, Desc: s.Desc}
	if d.Desc == "" {
		d.Desc = l.describe()
	}
	right := l.stripWidth()
	tops := l.tops()
	y := headMM
	for i, b := range l.bands() {
		r := Rect{X: 0, Y: y, W: right, H: l.heights[i]}
		d.Shapes = append(d.Shapes, b.shapes(r)...)
		if i > 0 {
			d.Shapes = append(d.Shapes, Line{0, y, right, y, 0.2, nil})
		}
		c := l.callouts[i]
		top := headMM + tops[i]
		to := Point{l.calloutX() - 1.2, top + c.lines[0].heightMM()/2}
		// The line starts where it can stay level, but well inside its band.
		from := Point{right, math.Min(math.Max(to.Y, y+r.H*0.25), y+r.H*0.75)}
		d.Shapes = append(d.Shapes,
			Strokes{[][]Point{{from, {from.X + 1.5, from.Y}, {to.X - 1.5, to.Y}, to}}, 0.12},
			Text{X: l.calloutX(), Y: top, Block: c})
		y += r.H
	}
	d.Shapes = append(d.Shapes, Rect{X: 0, Y: headMM, W: right, H: l.body, WeightMM: 0.2})
	return d, l.words(&d)
}

// words sets what stands above and below the strip.
func (l *sectionLayout) words(d *Drawing) error {
	s := l.section
	head := LabelHead
	aside := LabelSmall.With(SansItalic)
	if s.Name.Face == Serif {
		head = Heading.Scaled(0.8)
		aside = Small.With(SerifItalic).Scaled(0.9)
	}
	put := func(style Style, text string, x, y, width float64) error {
		b, err := Fit(width, headMM, 0.5, Span{style, text, "words of the drawing"})
		d.Shapes = append(d.Shapes, Text{X: x, Y: y, Block: b})
		return err
	}
	below := headMM + l.body + 0.8
	err := put(aside, s.Words.NotToScale, l.calloutX(), below, l.width-l.calloutX())
	if err == nil && l.first == 0 {
		err = put(head, s.Words.Front, 0, 0.4, l.stripWidth())
	}
	if err == nil && l.last == len(s.Bands) {
		err = put(head, s.Words.Back, 0, below, l.stripWidth())
	}
	if err == nil && l.last-l.first < len(s.Bands) {
		err = put(aside, fmt.Sprintf(s.Words.Part, l.first+1, l.last, len(s.Bands)), 0, below+headMM, l.width)
	}
	return err
}

// describe puts the drawing into words.
func (l *sectionLayout) describe() string {
	var b strings.Builder
	for i, band := range l.bands() {
		fmt.Fprintf(&b, "%d. %s", l.first+i+1, OneLine(band.Label))
		if band.Note != "" {
			b.WriteString(", " + OneLine(band.Note))
		}
		b.WriteString(", " + l.section.thickness(band) + ". ")
	}
	b.WriteString(l.section.Words.NotToScale + ".")
	return b.String()
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
