package section

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"backleaf/record/paper"
)

// Sizes of the drawing, in millimetres.
const (
	stripShare     = 0.36 // of the width
	leaderMM       = 9.0
	headMM         = 4.0 // room for the words above and below the strip
	noteGapMM      = 0.8
	minBandMM      = 0.9
	boardMM        = 14.0
	clothMM        = 4.5
	coatMM         = 3.0
	calloutGapMM   = 0.9
	smallestBandBy = 0.76 // smallest scale of the callouts
	minSectionMM   = 50.0 // narrowest drawing
)

// drawParts draws the layers in so many drawings, or reports that they do not fit.
func (s Section) drawParts(parts int, width, height float64) ([]paper.Drawing, bool, error) {
	n := len(s.Bands)
	var out []paper.Drawing
	for p := range parts {
		l := layout{section: s, first: p * n / parts, last: (p + 1) * n / parts, width: width}
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
const dot = paper.NoBreakSpace + "· "

// A layout sets the layers from first up to last in one drawing.
type layout struct {
	section     Section
	first, last int
	width       float64
	callouts    []paper.Block
	notes       paper.Block // below the callouts
	gap         float64
	heights     []float64 // of the bands
	body        float64   // height of strip and callouts
}

func (l *layout) bands() []Band { return l.section.Bands[l.first:l.last] }

func (l *layout) stripWidth() float64 { return l.width * stripShare }

func (l *layout) calloutX() float64 { return l.stripWidth() + leaderMM }

// foot is the height below the strip: the notes, and a line for the part.
func (l *layout) foot() float64 {
	if l.last-l.first < len(l.section.Bands) {
		return l.noteHeight() + headMM
	}
	return l.noteHeight()
}

func (l *layout) noteHeight() float64 { return math.Max(headMM, noteGapMM+l.notes.HeightMM()) }

// fit chooses the callouts: on lines of their own, then run on, then smaller.
func (l *layout) fit(height float64) (bool, error) {
	var err error
	if l.notes, err = paper.Compose(l.width-l.calloutX(), paper.Span{Style: l.section.Detail.Italic(), Text: l.section.notes(), Field: "words of the drawing"}); err != nil {
		return false, err
	}
	room := height - headMM - l.foot()
	for _, runOn := range []bool{false, true} {
		for scale := 1.0; scale >= smallestBandBy-1e-9; scale -= 0.04 {
			if scale < 0.88 && !runOn {
				break // run on is better now than smaller still
			}
			if l.section.Detail.SizePt*scale < paper.SmallestPt {
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

func (l *layout) compose(scale float64, runOn bool) error {
	s := l.section
	name, detail := s.Name.Scaled(scale), s.Detail.Scaled(scale)
	l.gap = calloutGapMM * scale
	l.callouts = nil
	for i, b := range l.bands() {
		field := fmt.Sprintf("layer %d", l.first+i+1)
		spans := []paper.Span{{Style: name, Text: s.label(l.first + i), Field: field}}
		between := "\n"
		if runOn {
			between = dot
		}
		for _, text := range s.said(b) {
			spans, between = append(spans, paper.Span{Style: detail, Text: between + l.together(detail, text), Field: field}), dot
		}
		c, err := paper.Compose(l.width-l.calloutX(), spans...)
		if err != nil {
			return err
		}
		l.callouts = append(l.callouts, c)
	}
	return nil
}

// together keeps a date or a thickness on one line, if a line can hold it.
func (l *layout) together(style paper.Style, text string) string {
	b, err := paper.Compose(0, paper.Span{Style: style, Text: text})
	if err != nil || b.WidthMM() > l.width-l.calloutX() {
		return text // what is wrong with it will be said where it is set
	}
	return paper.Held(text)
}

// place chooses the heights of the bands, so that a level line leads to most
// callouts where there is room for that.
func (l *layout) place(room float64) bool {
	text := -l.gap
	for _, c := range l.callouts {
		text += c.HeightMM() + l.gap
	}
	natural := 0.0
	l.heights = nil
	for i, b := range l.bands() {
		h := coatMM
		switch b.Kind {
		case Board:
			h = boardMM
		case Cloth:
			h = clothMM
		}
		h += minBandMM * float64(max(0, b.Coats-1))
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
		if l.heights[i] *= l.body / natural; l.heights[i] < minBandMM*float64(max(1, l.bands()[i].Coats))/2 {
			return false
		}
	}
	return true
}

// tops spreads the callouts: each as near to its band as the others allow, in
// the same order, so that no two overlap and no two lines cross. This is
// isotonic regression by pooling neighbours.
func (l *layout) tops() []float64 {
	type pool struct{ sum, n float64 }
	var pools []pool
	offset, y := 0.0, 0.0
	offsets := make([]float64, len(l.callouts))
	for i, c := range l.callouts {
		offsets[i] = offset
		wish := y + l.heights[i]/2 - c.LineMM()/2 - offset
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

func (l *layout) draw() (paper.Drawing, error) {
	s := l.section
	d := paper.Drawing{WidthMM: l.width, HeightMM: headMM + l.body + l.foot(), Title: s.Title, Desc: s.Desc}
	if d.Desc == "" {
		d.Desc = l.describe()
	}
	if err := l.above(&d); err != nil {
		return d, err
	}
	right := l.stripWidth()
	tops := l.tops()
	y := headMM
	for i, b := range l.bands() {
		r := paper.Rect{X: 0, Y: y, W: right, H: l.heights[i]}
		d.Shapes = append(d.Shapes, b.shapes(r)...)
		if i > 0 {
			d.Shapes = append(d.Shapes, paper.Line{X1: 0, Y1: y, X2: right, Y2: y, WeightMM: 0.2})
		}
		c := l.callouts[i]
		top := headMM + tops[i]
		to := at(l.calloutX()-1.2, top+c.LineMM()/2)
		// The line starts where it can stay level, but well inside a coat.
		coat := r.H / float64(max(1, b.Coats))
		in := y + coat*math.Min(math.Max(math.Floor((to.Y-y)/coat), 0), float64(max(1, b.Coats)-1))
		from := at(right, math.Min(math.Max(to.Y, in+coat*0.3), in+coat*0.7))
		d.Shapes = append(d.Shapes,
			paper.Strokes{Lines: [][]paper.Point{{from, at(from.X+1.5, from.Y), at(to.X-1.5, to.Y), to}}, WeightMM: 0.12},
			paper.Text{X: l.calloutX(), Y: top, Block: c})
		y += r.H
	}
	const line = 0.2
	d.Shapes = append(d.Shapes, paper.Rect{X: line / 2, Y: headMM, W: right - line/2, H: l.body, WeightMM: line})
	return d, l.below(&d)
}

// above sets the word over the strip, below those under it; a reader comes to
// the layers between them.
func (l *layout) above(d *paper.Drawing) error {
	if l.first > 0 {
		return nil
	}
	return put(d, l.section.Head, l.section.Words.Front, 0, 0.4, l.stripWidth())
}

func (l *layout) below(d *paper.Drawing) error {
	s := l.section
	y := headMM + l.body + noteGapMM
	if l.last == len(s.Bands) {
		if err := put(d, s.Head, s.Words.Back, 0, y, l.stripWidth()); err != nil {
			return err
		}
	}
	d.Shapes = append(d.Shapes, paper.Text{X: l.calloutX(), Y: y, Block: l.notes})
	if l.last-l.first == len(s.Bands) {
		return nil
	}
	numbers := strings.NewReplacer("{first}", strconv.Itoa(l.first+1), "{last}", strconv.Itoa(l.last), "{all}", strconv.Itoa(len(s.Bands)))
	return put(d, s.Detail.Italic(), numbers.Replace(s.Words.Part), 0, headMM+l.body+l.noteHeight(), l.width)
}

func put(d *paper.Drawing, style paper.Style, text string, x, y, width float64) error {
	b, err := paper.Fit(width, headMM, 0.5, paper.Span{Style: style, Text: text, Field: "words of the drawing"})
	d.Shapes = append(d.Shapes, paper.Text{X: x, Y: y, Block: b})
	return err
}

// describe puts the drawing into words.
func (l *layout) describe() string {
	var b strings.Builder
	for i, band := range l.bands() {
		fmt.Fprintf(&b, "%d. %s. ", l.first+i+1, strings.Join(append([]string{paper.OneLine(band.Label)}, l.section.said(band)...), ", "))
	}
	return b.String() + strings.TrimSuffix(l.section.notes(), ".") + "."
}
