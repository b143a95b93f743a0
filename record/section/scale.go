package section

import (
	"math"
	"strconv"
	"strings"

	"backleaf/record/paper"
)

// Limits of the magnification, and the height of the words above and below.
const (
	mostTimes    = 60
	scaleFootMM  = 17.0
	scaleStripMM = 14.0
)

// ToScale draws the same layers in their true proportions, magnified a whole
// number of times, with a bar of one millimetre. Layers of unknown thickness are
// left out, and it says which; ok is false if fewer than two are known.
func (s Section) ToScale(widthMM, heightMM float64) (d paper.Drawing, ok bool, err error) {
	var known []Band
	var numbers []paper.Block
	var leftOut []string
	s.usualStyles()
	total := 0.0
	for i, b := range s.Bands {
		if b.Certainty == Unknown {
			leftOut = append(leftOut, strconv.Itoa(i+1))
			continue
		}
		if b.Board == Plywood {
			b.Board = OtherBoard // how thick its plies are nobody knows
		}
		known, total = append(known, b), total+float64(b.ThicknessMicrons)/1000
		n, err := paper.Compose(0, paper.Span{Style: s.Detail, Text: strconv.Itoa(i + 1), Field: "number of a layer"})
		if err != nil {
			return d, false, err
		}
		numbers = append(numbers, n)
	}
	times := math.Min(math.Floor((heightMM-headMM-scaleFootMM)/math.Max(total, 0.001)), mostTimes)
	if len(known) < 2 || times < 2 {
		return d, false, nil
	}
	if err := put(&d, s.Head, s.Words.Front, 0, 0.4, widthMM); err != nil {
		return d, false, err
	}
	y := headMM
	l := layout{section: s, callouts: numbers, body: total * times}
	for _, b := range known {
		l.heights = append(l.heights, float64(b.ThicknessMicrons)/1000*times)
	}
	tops := l.tops()
	for i, b := range known {
		h := l.heights[i]
		if s.Numbered {
			mid, to := y+h/2, headMM+tops[i]+numbers[i].LineMM()/2
			d.Shapes = append(d.Shapes, paper.Strokes{Lines: [][]paper.Point{{at(scaleStripMM, mid), at(scaleStripMM+0.8, mid), at(scaleStripMM+2.2, to), at(scaleStripMM+2.8, to)}}, WeightMM: 0.1},
				paper.Text{X: scaleStripMM + 3.2, Y: headMM + tops[i], Block: numbers[i]})
		}
		d.Shapes = append(d.Shapes, b.shapes(paper.Rect{X: 0, Y: y, W: scaleStripMM, H: h})...)
		if i > 0 {
			d.Shapes = append(d.Shapes, paper.Line{X1: 0, Y1: y, X2: scaleStripMM, Y2: y, WeightMM: 0.1})
		}
		y += h
	}
	d.Shapes = append(d.Shapes, paper.Rect{X: 0, Y: headMM, W: scaleStripMM, H: y - headMM, WeightMM: 0.1})
	bar := scaleStripMM + 9.0
	d.Shapes = append(d.Shapes, paper.Strokes{WeightMM: 0.2, Lines: [][]paper.Point{
		{at(bar-0.8, headMM), at(bar+0.8, headMM)}, {at(bar, headMM), at(bar, headMM+times)}, {at(bar-0.8, headMM+times), at(bar+0.8, headMM+times)}}})
	if err := put(&d, s.Detail, Thickness(1000), bar+1.4, headMM+times/2-1.4, widthMM-bar-1.4); err != nil {
		return d, false, err
	}
	if err := put(&d, s.Head, s.Words.Back, 0, y+noteGapMM, widthMM); err != nil {
		return d, false, err
	}
	y += headMM
	words := strings.NewReplacer("{times}", strconv.Itoa(int(times)), "{layers}", strings.Join(leftOut, ", "))
	lines := []string{words.Replace(s.Words.ToScale)}
	if leftOut != nil {
		lines = append(lines, words.Replace(s.Words.LeftOut))
	}
	b, err := paper.Compose(widthMM, paper.Span{Style: s.Detail.Italic(), Text: strings.Join(lines, "\n"), Field: "words of the drawing"})
	d.Shapes = append(d.Shapes, paper.Text{Y: y + 0.8, Block: b})
	d.WidthMM, d.HeightMM, d.Title, d.Desc = widthMM, y+0.8+b.HeightMM(), s.Title, strings.Join(lines, ". ")+"."
	return d, true, err
}
