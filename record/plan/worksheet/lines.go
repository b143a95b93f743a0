package worksheet

import (
	"math"
	"strconv"

	"backleaf/record/paper"
	"backleaf/record/plan"
	"backleaf/record/tell"
)

// cuts draws the cut lines: the earlier the wider, with their numbers.
func (d *drawer) cuts() {
	k := d.p.Order.Kerf
	steps := d.p.Steps(d.sheet)
	letters := map[plan.Do]map[int64]string{}
	for i, l := range marks(steps) {
		m := letters[steps[i].Do]
		if m == nil {
			m = map[int64]string{}
			letters[steps[i].Do] = m
		}
		m[steps[i].Set] = l
	}
	u, v := d.c.Length, d.c.Width
	if !d.c.Across {
		u, v = v, u
	}
	var atU int64
	for i, s := range d.c.Strips {
		end := atU + s.Size
		if end < u {
			d.cut(end, 0, v, false, wide)
			d.ring(d.beyond(end+k/2), strconv.Itoa(i+1))
		}
		if name := d.Words.Plan.T("strip").With("n", strconv.Itoa(i+1)); d.at(s.Size) > 20 {
			p := d.beyond(atU + s.Size/2)
			t := d.text(0, 0, paper.LabelSmall, name)
			turn := 0.0
			if !d.c.Across {
				turn = -90
			}
			d.add(paper.Group{X: p.X, Y: p.Y, Degrees: turn, Shapes: []paper.Shape{t}})
		}
		var atV int64
		for _, b := range s.Blocks {
			right := atV + b.Size
			if right < v {
				d.cut(right, atU, end, true, middle)
				d.ringIn(right, atU, end, true, letters[plan.SecondCuts][b.Size])
			}
			at := atU
			for _, l := range b.Pieces {
				du, dv := d.sidesOf(l)
				if at+du < end {
					d.cut(at+du, atV, right, false, narrow*1.4)
					d.ringIn(at+du, atV, right, false, letters[plan.ThirdCuts][du])
				}
				if dv < b.Size {
					d.cut(atV+dv, at, at+du, true, narrow*1.4)
					d.ringIn(atV+dv, at, at+du, true, letters[plan.TrimCuts][dv])
				}
				at += du + k
			}
			atV = right + k
		}
		atU = end + k
	}
}

// sidesOf are the sides of a piece along the way of the first cuts and across.
func (d *drawer) sidesOf(l plan.Laid) (u, v int64) {
	p := d.p.Order.Pieces[l.Piece]
	if l.Upright == d.c.Across {
		return p.Height, p.Width
	}
	return p.Width, p.Height
}

// point places u and v of the sheet.
func (d *drawer) point(u, v int64) paper.Point {
	if d.c.Across {
		return paper.Point{X: d.x(u), Y: d.y(v)}
	}
	return paper.Point{X: d.x(v), Y: d.y(u)}
}

// cut draws a cut that begins at a place and runs from one place to another; of
// second cuts the place is along v. A kerf that can be seen is two lines.
func (d *drawer) cut(at, from, to int64, second bool, weight float64) {
	places := []int64{at + d.p.Order.Kerf/2}
	if d.at(d.p.Order.Kerf) >= kerfShown {
		places = []int64{at, at + d.p.Order.Kerf}
	}
	for _, x := range places {
		a, b := d.point(x, from), d.point(x, to)
		if second {
			a, b = d.point(from, x), d.point(to, x)
		}
		d.add(paper.Line{X1: a.X, Y1: a.Y, X2: b.X, Y2: b.Y, WeightMM: weight})
	}
}

// beyond is a place beyond the far edge, where the first cuts end.
func (d *drawer) beyond(u int64) paper.Point {
	if d.c.Across {
		p := d.point(u, d.c.Width)
		return paper.Point{X: p.X, Y: p.Y + ringRadius + 0.8}
	}
	p := d.point(u, d.c.Length)
	return paper.Point{X: p.X + ringRadius + 0.8, Y: p.Y}
}

// ringIn marks a later cut on its line, near its far end, if there is room.
func (d *drawer) ringIn(at, from, to int64, second bool, mark string) {
	long := d.at(to - from)
	if long < 6*ringRadius || mark == "" {
		return
	}
	end := to - int64(2*ringRadius/d.um)
	p := d.point(at+d.p.Order.Kerf/2, end)
	if second {
		p = d.point(end, at+d.p.Order.Kerf/2)
	}
	d.ring(p, mark)
}

func (d *drawer) ring(p paper.Point, mark string) {
	var points []paper.Point
	for i := range 32 {
		sin, cos := math.Sincos(float64(i) / 32 * 2 * math.Pi)
		points = append(points, paper.Point{X: p.X + ringRadius*cos, Y: p.Y + ringRadius*sin})
	}
	d.rings = append(d.rings, paper.Polygon{Points: points, WeightMM: narrow, Fill: paper.White}, d.text(p.X, p.Y, paper.LabelSmall, mark))
}

// edges draws the outline, the reference edges, and the running dimensions:
// along the first cuts their lines, on the other side the second cuts of the
// first strip.
func (d *drawer) edges() {
	l, w := d.at(d.c.Length), d.at(d.c.Width)
	d.add(paper.Rect{X: sideLeft, Y: sideTop, W: l, H: w, WeightMM: wide},
		paper.Line{X1: sideLeft - wide, Y1: sideTop, X2: sideLeft + l, Y2: sideTop, WeightMM: 2 * wide},
		paper.Line{X1: sideLeft, Y1: sideTop - wide, X2: sideLeft, Y2: sideTop + w, WeightMM: 2 * wide})
	k := d.p.Order.Kerf
	var us, vs []int64
	var at int64
	for _, s := range d.c.Strips {
		us = append(us, at+s.Size)
		at += s.Size + k
	}
	at = 0
	for _, b := range d.c.Strips[0].Blocks {
		vs = append(vs, at+b.Size)
		at += b.Size + k
	}
	if !d.c.Across {
		us, vs = vs, us
	}
	d.running(append(us, d.c.Length), true)
	d.running(append(vs, d.c.Width), false)
}

// running writes distances from the reference edge, each at its line, where
// there is room beside the one before.
func (d *drawer) running(at []int64, along bool) {
	const room = 3.4
	last := -room
	for i, um := range at {
		p := d.at(um)
		if p-last < room || i+1 < len(at) && d.at(at[len(at)-1])-p < room {
			continue
		}
		last = p
		text := paper.Span{Style: d.figures(), Text: d.length(um)}
		if along {
			x := sideLeft + p
			d.add(paper.Line{X1: x, Y1: sideTop - 2, X2: x, Y2: sideTop, WeightMM: narrow})
			d.lying(x, sideTop-2.4, -90, text)
		} else {
			y := sideTop + p
			d.add(paper.Line{X1: sideLeft - 2, Y1: y, X2: sideLeft, Y2: y, WeightMM: narrow})
			d.lying(sideLeft-2.4, y, 0, text)
		}
	}
}

// lying sets a figure that ends at a place, or begins there when turned.
func (d *drawer) lying(x, y, degrees float64, span paper.Span) {
	b, err := paper.Compose(0, span)
	if err != nil {
		d.err = err
		return
	}
	t := paper.Text{Y: -b.HeightMM() / 2, Block: b, Align: paper.Right}
	if degrees != 0 {
		t.Align = 0
	}
	d.add(paper.Group{X: x, Y: y, Degrees: degrees, Shapes: []paper.Shape{t}})
}

// foot draws the scale bar, names scale and reference edges, and shows the run
// of the grain of the whole sheet.
func (d *drawer) foot(scale float64, grain tell.Message) {
	step := 100_000.0
	name := func(n int) string { return d.length(int64(float64(n) * step)) }
	if d.Inches {
		step = 25_400 * 4
	}
	for d.um*step*5 > 60 {
		step /= 2
	}
	for d.um*step*5 < 20 {
		step *= 2
	}
	y := sideTop + d.at(d.c.Width) + sideFoot - 3
	x := sideLeft
	for n := 0; n <= 5; n++ {
		at := x + float64(n)*step*d.um
		d.add(paper.Line{X1: at, Y1: y, X2: at, Y2: y - 1.5, WeightMM: narrow}, d.text(at, y-3, paper.LabelSmall, name(n)))
		if n%2 == 0 && n < 5 {
			d.add(paper.Rect{X: at, Y: y - 0.8, W: step * d.um, H: 0.8, Fill: paper.Black})
		}
	}
	d.add(paper.Line{X1: x, Y1: y, X2: x + 5*step*d.um, Y2: y, WeightMM: narrow})
	x += 5*step*d.um + 6
	w := d.Words.Plan
	put := func(text string) {
		b, err := paper.Compose(0, paper.Span{Style: paper.LabelSmall, Text: text})
		if err != nil {
			d.err = err
		}
		d.add(paper.Text{X: x, Y: y - b.HeightMM()/2 - 0.5, Block: b})
		x += b.WidthMM() + 6
	}
	put(w.T("scale").With("n", d.Words.Number.Number(strconv.FormatFloat(scale, 'f', -1, 64))))
	put(d.fill(w.T("units")))
	d.add(paper.Line{X1: x, Y1: y - 0.5, X2: x + 7, Y2: y - 0.5, WeightMM: 2 * wide})
	x += 9
	put(string(w.T("reference")))
	if g := d.p.Order.Sheets[d.c.Sheet].Grain; g != plan.Free {
		from, to := paper.Point{X: x, Y: y - 0.5}, paper.Point{X: x + 7, Y: y - 0.5}
		if g == plan.Second {
			from, to = paper.Point{X: x + 5, Y: y + 2}, paper.Point{X: x + 5, Y: y - 5}
		}
		d.add(paper.Line{X1: from.X, Y1: from.Y, X2: to.X, Y2: to.Y, WeightMM: narrow}, arrowHead(from, to, 1.2), arrowHead(to, from, 1.2))
		x += 9
		put(string(grain))
	}
}
