package paper

import (
	"fmt"
	"math"
	"strings"
)

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

// dot parts what is said of a layer; it may end a line but does not begin one.
const dot = NoBreakSpace + "· "

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
			if scale < 0.88 && !runOn {
				break // run on is better now than smaller still
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
			rest = l.together(detail, OneLine(b.Note)) + dot + rest
		}
		between := "\n"
		if runOn {
			between = dot
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
	const line = 0.2
	d.Shapes = append(d.Shapes, Rect{X: line / 2, Y: headMM, W: right - line/2, H: l.body, WeightMM: line})
	return d, l.words(&d)
}

// words sets what stands above and below the strip.
func (l *sectionLayout) words(d *Drawing) error {
	s := l.section
	head, aside := LabelHead, s.Detail.With(SansItalic)
	if f := s.Name.Face; f == Serif || f == SerifItalic || f == SerifBold {
		head, aside = Heading.Scaled(0.8), s.Detail.With(SerifItalic)
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
