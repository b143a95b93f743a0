package dossier

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/paper"
	"backleaf/record/tell"
)

var chartSmall = paper.Small.Scaled(0.85)

// Sizes of the time line, in millimetres.
const (
	chartLeft  = 12.0
	chartRight = 4.0
	panelMM    = 18.0
)

// timeLine draws the steps at compressed distances, and below them the air
// where it was recorded.
func (b *builder) timeLine(work []step, width float64) ([]paper.Drawing, error) {
	var steps []step
	var at []time.Time
	for _, s := range work {
		if t, ok := s.timed(); ok {
			steps, at = append(steps, s), append(at, t)
		}
	}
	xs := compress(at, chartLeft, width-chartRight)
	p := &plot{width: width}
	// Waiting times above the line, where there is room for them.
	const line = 9.0
	for i := 1; i < len(steps); i++ {
		gap := xs[i] - xs[i-1]
		blk := p.set(chartSmall, b.waited(steps[i-1], steps[i], at[i].Sub(at[i-1])), "waiting time")
		if blk.WidthMM()+1.5 < gap {
			p.add(paper.Text{X: (xs[i] + xs[i-1]) / 2, Y: line - 4, Block: blk, Align: paper.Centre})
		}
	}
	p.add(paper.Line{X1: chartLeft, Y1: line, X2: width - chartRight, Y2: line, WeightMM: 0.3})
	rows := []float64{}
	for i, s := range steps {
		if s.n == 0 {
			p.add(paper.Line{X1: xs[i], Y1: line - 0.7, X2: xs[i], Y2: line + 0.7, WeightMM: 0.15})
			continue
		}
		p.add(paper.Line{X1: xs[i], Y1: line - 1.4, X2: xs[i], Y2: line + 1.4, WeightMM: 0.3})
		blk := p.set(chartSmall, strconv.Itoa(s.n), "number of a step")
		row := 0
		for row < len(rows) && xs[i]-blk.WidthMM()/2 < rows[row]+0.8 {
			row++
		}
		if row == len(rows) {
			rows = append(rows, 0)
		}
		rows[row] = xs[i] + blk.WidthMM()/2
		p.add(paper.Text{X: xs[i], Y: line + 1.9 + float64(row)*2.6, Block: blk, Align: paper.Centre})
	}
	y := line + 2.5 + float64(max(1, len(rows)))*2.6
	y = p.days(b, at, xs, y)
	for _, q := range []struct {
		unit  tell.Message
		value func(step) (float64, bool)
		span  span
		open  bool
	}{
		{b.d.T("figures-temperature"), func(s step) (float64, bool) { return s.celsius, s.hasTemp }, span{2, math.Inf(1)}, false},
		{b.d.T("figures-humidity"), func(s step) (float64, bool) { return s.humidity, s.hasRH }, span{10, 100}, true},
	} {
		var px, py []float64
		var when []time.Time
		for i, s := range steps {
			if v, ok := q.value(s); ok {
				px, py, when = append(px, xs[i]), append(py, v), append(when, at[i])
			}
		}
		if len(px) > 0 {
			y = p.series(string(q.unit), px, py, when, y+3, q.span, q.open)
		}
	}
	var said []string
	for _, s := range steps {
		air := ""
		if s.air != "" {
			air = ", " + s.air
		}
		words := s.words
		if s.n > 0 {
			words = b.d.T("steps-numbered").With("n", strconv.Itoa(s.n), "step", words)
		}
		said = append(said, b.d.T("figures-reading").With("step", words, "date", b.Moment(s.at), "air", air))
	}
	d := paper.Drawing{WidthMM: width, HeightMM: y, Title: string(b.d.T("titles-steps")), Desc: b.d.T("figures-time-desc").With("steps", strings.Join(said, "; ")), Shapes: p.shapes}
	return []paper.Drawing{d}, p.err
}

// days writes the first and the last day below the line.
func (p *plot) days(b *builder, at []time.Time, xs []float64, y float64) float64 {
	day := func(t time.Time) string { return b.Day(record.Moment(t)) }
	first, last := day(at[0]), day(at[len(at)-1])
	p.add(paper.Text{X: xs[0], Y: y, Block: p.set(chartSmall, first, "date")})
	if last != first {
		p.add(paper.Text{X: xs[len(xs)-1], Y: y, Block: p.set(chartSmall, last, "date"), Align: paper.Right})
	}
	return y + 3
}

// compress places moments between two ends so that a wait of days does not
// squeeze the minutes of an afternoon: each wait takes width by its logarithm.
func compress(at []time.Time, from, to float64) []float64 {
	xs := make([]float64, len(at))
	for i := 1; i < len(at); i++ {
		wait := math.Max(0, at[i].Sub(at[i-1]).Minutes())
		xs[i] = xs[i-1] + math.Log1p(wait/5)
	}
	all := xs[len(xs)-1]
	for i := range xs {
		if all > 0 {
			xs[i] = from + xs[i]/all*(to-from)
		} else {
			xs[i] = from
		}
	}
	return xs
}

// waited says the time between two steps in one unit: in days where either is
// known by its day alone.
func (b *builder) waited(from, to step, d time.Duration) string {
	f := b.d
	_, exact := from.at.Exact()
	if _, too := to.at.Exact(); !exact || !too {
		d = d.Round(24 * time.Hour)
	}
	n := func(m tell.Message, v float64) string {
		return m.With("n", strconv.FormatFloat(math.Round(v), 'f', -1, 64))
	}
	switch h := d.Hours(); {
	case d < time.Minute:
		return ""
	case h < 2:
		return n(f.T("figures-minutes"), d.Minutes())
	case h < 48 && d%(24*time.Hour) != 0:
		return n(f.T("figures-hours"), h)
	case h < 24*90:
		return n(f.T("figures-days"), h/24)
	default:
		return n(f.T("figures-months"), h/24/30.44)
	}
}

// A plot collects shapes; its first error stays.
type plot struct {
	width  float64
	shapes []paper.Shape
	err    error
}

func (p *plot) add(s ...paper.Shape) { p.shapes = append(p.shapes, s...) }

func (p *plot) set(style paper.Style, text, field string) paper.Block {
	blk, err := paper.Compose(0, paper.Span{Style: style, Text: text, Field: field})
	if err != nil && p.err == nil {
		p.err = err
	}
	return blk
}

// A span is what an axis shows at least, so that a change too small to matter
// fills no chart, and the highest value there is.
type span struct{ least, highest float64 }

// farApart is between readings that say nothing of what lay between them.
const farApart = 28 * 24 * time.Hour

// series draws readings of one quantity over the same line, with a scale of a
// few round figures. Only readings closer than four weeks are joined.
func (p *plot) series(unit string, xs, values []float64, at []time.Time, y float64, s span, open bool) float64 {
	low, high := values[0], values[0]
	for _, v := range values {
		low, high = math.Min(low, v), math.Max(high, v)
	}
	if more := s.least - (high - low); more > 0 {
		low, high = low-more/2, high+more/2
	}
	stepBy := niceStep(high - low)
	low, high = math.Floor(low/stepBy)*stepBy, math.Min(math.Ceil(high/stepBy)*stepBy, s.highest)
	place := func(v float64) float64 { return y + panelMM - (v-low)/(high-low)*panelMM }
	for v := low; v <= high+stepBy/2; v += stepBy {
		p.add(paper.Line{X1: chartLeft, Y1: place(v), X2: p.width - chartRight, Y2: place(v), WeightMM: 0.08, Dash: []float64{0.3, 1.2}})
		p.add(paper.Text{X: chartLeft - 1.5, Y: place(v) - 1.4, Block: p.set(chartSmall, label(v), "scale"), Align: paper.Right})
	}
	p.add(paper.Text{X: 0, Y: y - 3.4, Block: p.set(chartSmall, unit, "unit")})
	var path []paper.Point
	for i := range xs {
		path = append(path, paper.Point{X: xs[i], Y: place(values[i])})
	}
	var lines [][]paper.Point
	for i := 1; i < len(path); i++ {
		if at[i].Sub(at[i-1]) <= farApart {
			lines = append(lines, path[i-1:i+1])
		}
	}
	p.add(paper.Strokes{Lines: lines, WeightMM: 0.15})
	for _, pt := range path {
		r := paper.Rect{X: pt.X - 0.7, Y: pt.Y - 0.7, W: 1.4, H: 1.4, WeightMM: 0.2, Fill: paper.White}
		if !open {
			r.Fill = paper.Black
		}
		p.add(r)
	}
	return y + panelMM + 2
}

func niceStep(span float64) float64 {
	for _, s := range []float64{0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50} {
		if span/s <= 3 {
			return s
		}
	}
	return 100
}

func label(v float64) string {
	if v == math.Trunc(v) {
		return strings.Replace(fmt.Sprintf("%.0f", v), "-", "\u2212", 1)
	}
	return strings.Replace(strings.TrimRight(fmt.Sprintf("%.2f", v), "0"), "-", "\u2212", 1)
}
