package section

import (
	"math"

	"backleaf/record/paper"
)

// The hatchings of the cross-section. They differ in black and white, at the
// size of a thin coat as well as of a board, and none needs a screen of grey.
// Where a hatching looks random it is the same every time.

// hatchMM is the weight of the lines.
const hatchMM = 0.1

// hatch fills a rectangle; nothing shows outside it.
func hatch(r paper.Rect, shapes ...paper.Shape) paper.Shape {
	return paper.Clip{X: r.X, Y: r.Y, W: r.W, H: r.H, Shapes: shapes}
}

func at(x, y float64) paper.Point { return paper.Point{X: x, Y: y} }

func segment(x1, y1, x2, y2 float64) []paper.Point { return []paper.Point{at(x1, y1), at(x2, y2)} }

// parallel draws lines across the rectangle that go so far to the right from
// its foot to its top: its height for a slope of 45°, nothing for upright ones.
func parallel(r paper.Rect, pitch, right float64) paper.Shape {
	var lines [][]paper.Point
	for x := r.X - math.Abs(right) + pitch/2; x < r.X+r.W+math.Abs(right); x += pitch {
		lines = append(lines, segment(x, r.Y+r.H, x+right, r.Y))
	}
	return paper.Strokes{Lines: lines, WeightMM: hatchMM}
}

// glints draws pairs of short slanted strokes far apart, the sign for glass:
// a layer that is clear.
func glints(r paper.Rect) paper.Shape {
	const pitch = 9.0
	h := math.Min(r.H*0.55, 2)
	y := r.Y + (r.H+h)/2
	var lines [][]paper.Point
	for x := r.X + 2; x+0.9+h < r.X+r.W-0.5; x += pitch {
		lines = append(lines, segment(x, y, x+h, y-h), segment(x+0.9, y, x+0.9+h, y-h))
	}
	return paper.Strokes{Lines: lines, WeightMM: hatchMM}
}

// dots draws staggered points.
func dots(r paper.Rect) paper.Shape {
	const pitch, size = 0.9, 0.24
	rows := math.Max(1, math.Floor(r.H/pitch*1.2))
	step := r.H / rows
	var areas []paper.Rect
	for i := range int(rows) {
		y := r.Y + (float64(i)+0.5)*step
		for x := r.X + pitch/2*float64(1+i%2); x < r.X+r.W; x += pitch {
			areas = append(areas, paper.Rect{X: x - size/2, Y: y - size/2, W: size, H: size})
		}
	}
	return paper.Rects{Areas: areas}
}

// ticks draws short level strokes, staggered like bricks: any other layer.
func ticks(r paper.Rect) paper.Shape {
	const pitch, length = 2.4, 1.2
	rows := math.Max(1, math.Floor(r.H/0.9))
	step := r.H / rows
	var lines [][]paper.Point
	for i := range int(rows) {
		y := r.Y + (float64(i)+0.5)*step
		for x := r.X + pitch/2*float64(i%2); x < r.X+r.W; x += pitch {
			lines = append(lines, segment(x, y, x+length, y))
		}
	}
	return paper.Strokes{Lines: lines, WeightMM: hatchMM}
}

// weave draws cloth cut along one thread: the cut ends of the others, and the
// thread that goes over and under them.
func weave(r paper.Rect) []paper.Shape {
	radius := math.Min(r.H*0.22, 1.3)
	pitch := r.W / math.Max(1, math.Round(r.W/(radius*3.4)))
	mid := r.Y + r.H/2
	amplitude := math.Min(r.H/2-0.3, radius*1.45)
	var ends []paper.Shape
	for x := r.X + pitch/2; x < r.X+r.W; x += pitch {
		ends = append(ends, paper.Polygon{Points: circle(x, mid, radius), Fill: paper.Black})
	}
	over, under := []paper.Point{}, []paper.Point{}
	for x := r.X - 0.1; x <= r.X+r.W+0.2; x += pitch / 16 {
		dy := amplitude * math.Cos((x-r.X-pitch/2)/pitch*math.Pi)
		over, under = append(over, at(x, mid-dy)), append(under, at(x, mid+dy))
	}
	return append(ends, paper.Strokes{Lines: [][]paper.Point{over, under}, WeightMM: 0.22})
}

func circle(x, y, radius float64) []paper.Point {
	var out []paper.Point
	for i := range 16 {
		sin, cos := math.Sincos(float64(i) / 16 * 2 * math.Pi)
		out = append(out, at(x+radius*cos, y+radius*sin))
	}
	return out
}

// plies draws plywood: by turns grain along the cut and end grain.
func plies(r paper.Rect, n int) []paper.Shape {
	var out []paper.Shape
	h := r.H / float64(n)
	for i := range n {
		ply := paper.Rect{X: r.X, Y: r.Y + float64(i)*h, W: r.W, H: h}
		if i%2 == 0 {
			out = append(out, grain(ply))
		} else {
			out = append(out, endGrain(ply))
		}
		if i > 0 {
			out = append(out, paper.Line{X1: r.X, Y1: ply.Y, X2: r.X + r.W, Y2: ply.Y, WeightMM: 0.18})
		}
	}
	return out
}

// grain draws long wavy lines, as of wood cut along the fibre.
func grain(r paper.Rect) paper.Shape {
	rows := math.Max(1, math.Round(r.H/1.1))
	step := r.H / rows
	var lines [][]paper.Point
	for i := range int(rows) {
		y := r.Y + (float64(i)+0.5)*step
		var l []paper.Point
		for x := r.X; x <= r.X+r.W+0.5; x += 0.6 {
			l = append(l, at(x, y+step*0.22*math.Sin(x/3.1+float64(i)*1.7)*math.Sin(x/7.3+float64(i))))
		}
		lines = append(lines, l)
	}
	return paper.Strokes{Lines: lines, WeightMM: hatchMM}
}

// endGrain draws short upright strokes in rows, as of wood cut across the fibre.
func endGrain(r paper.Rect) paper.Shape {
	n := noise(7)
	var lines [][]paper.Point
	for x := r.X + 0.4; x < r.X+r.W; x += 0.8 {
		l := r.H * (0.25 + 0.3*n.next())
		y := r.Y + (r.H-l)*n.next()
		lines = append(lines, segment(x, y, x, y+l))
	}
	return paper.Strokes{Lines: lines, WeightMM: hatchMM}
}

// speckle draws short strokes in all directions: fibreboard.
func speckle(r paper.Rect) paper.Shape {
	return scattered(r, 11, 1.1, func(n *noise) (dx, dy float64) {
		sin, cos := math.Sincos(math.Pi * n.next())
		return 0.6 * cos, 0.6 * sin
	})
}

// fibres draws many level fibres: hardboard, pressed flat.
func fibres(r paper.Rect) paper.Shape {
	return scattered(r, 13, 0.9, func(n *noise) (dx, dy float64) { return 0.6 + 0.8*n.next(), 0.2 * (n.next() - 0.5) })
}

// scattered draws strokes anywhere in a rectangle, so many to the square millimetre.
func scattered(r paper.Rect, seed noise, perSquareMM float64, stroke func(*noise) (dx, dy float64)) paper.Shape {
	var lines [][]paper.Point
	for range int(r.W * r.H * perSquareMM) {
		x, y := r.X+r.W*seed.next(), r.Y+r.H*seed.next()
		dx, dy := stroke(&seed)
		lines = append(lines, segment(x-dx/2, y-dy/2, x+dx/2, y+dy/2))
	}
	return paper.Strokes{Lines: lines, WeightMM: hatchMM}
}

// roughEdge draws the teeth of the screen side of hardboard below or above y.
func roughEdge(r paper.Rect, y, depth float64) paper.Shape {
	const pitch = 1.1
	var l []paper.Point
	for i, x := 0, r.X-pitch; x < r.X+r.W+pitch; i, x = i+1, x+pitch/2 {
		l = append(l, at(x, y+depth*float64(i%2)))
	}
	return paper.Strokes{Lines: [][]paper.Point{l}, WeightMM: 0.2}
}

// cells draws the walls of a honeycomb between its two skins.
func cells(r paper.Rect) []paper.Shape {
	skin := r.H * 0.1
	return []paper.Shape{
		paper.Rects{Areas: []paper.Rect{{X: r.X, Y: r.Y, W: r.W, H: skin}, {X: r.X, Y: r.Y + r.H - skin, W: r.W, H: skin}}},
		parallel(r, 3.5, 0),
	}
}

// noise is a small generator that gives the same numbers on every machine.
type noise uint32

// next returns a number from 0 up to 1 (a linear congruential generator with
// the constants of Numerical Recipes, from memory).
func (n *noise) next() float64 {
	*n = *n*1664525 + 1013904223
	return float64(*n>>8) / (1 << 24)
}
