package paper

import "math"

// The hatchings of the cross-section. They differ in black and white, at the
// size of a thin coat as well as of a board, and none needs a screen of grey.
// Where a hatching looks random it is the same every time.

// hatchMM is the weight of the lines.
const hatchMM = 0.1

// hatch fills a rectangle; nothing shows outside it.
func hatch(r Rect, shapes ...Shape) Shape {
	return Clip{r.X, r.Y, r.W, r.H, shapes}
}

// slanted draws parallel lines rising to the right at 45°.
func slanted(r Rect, pitch float64) Shape {
	var lines [][]Point
	for x := r.X - r.H; x < r.X+r.W; x += pitch {
		lines = append(lines, []Point{{x, r.Y + r.H}, {x + r.H, r.Y}})
	}
	return Strokes{lines, hatchMM}
}

// counter draws parallel lines falling to the right at 45°.
func counter(r Rect, pitch float64) Shape {
	var lines [][]Point
	for x := r.X - r.H; x < r.X+r.W; x += pitch {
		lines = append(lines, []Point{{x, r.Y}, {x + r.H, r.Y + r.H}})
	}
	return Strokes{lines, hatchMM}
}

// upright draws vertical lines.
func upright(r Rect, pitch float64) Shape {
	var lines [][]Point
	for x := r.X + pitch/2; x < r.X+r.W; x += pitch {
		lines = append(lines, []Point{{x, r.Y}, {x, r.Y + r.H}})
	}
	return Strokes{lines, 0.3}
}

// glints draws pairs of short slanted strokes far apart, the sign for glass:
// a layer that is clear.
func glints(r Rect) Shape {
	const pitch = 9.0
	h := math.Min(r.H*0.55, 2)
	y := r.Y + (r.H+h)/2
	var lines [][]Point
	for x := r.X + 2; x < r.X+r.W; x += pitch {
		lines = append(lines, []Point{{x, y}, {x + h, y - h}}, []Point{{x + 0.9, y}, {x + 0.9 + h, y - h}})
	}
	return Strokes{lines, hatchMM}
}

// dots draws staggered points.
func dots(r Rect) Shape {
	const pitch, size = 0.9, 0.24
	rows := math.Max(1, math.Floor(r.H/pitch*1.2))
	step := r.H / rows
	var areas []Rect
	for i := range int(rows) {
		y := r.Y + (float64(i)+0.5)*step
		for x := r.X + pitch/2*float64(1+i%2); x < r.X+r.W; x += pitch {
			areas = append(areas, Rect{X: x - size/2, Y: y - size/2, W: size, H: size})
		}
	}
	return Rects{areas}
}

// ticks draws short level strokes, staggered like bricks: any other layer.
func ticks(r Rect) Shape {
	const pitch, length = 2.4, 1.2
	rows := math.Max(1, math.Floor(r.H/0.9))
	step := r.H / rows
	var lines [][]Point
	for i := range int(rows) {
		y := r.Y + (float64(i)+0.5)*step
		for x := r.X + pitch/2*float64(i%2); x < r.X+r.W; x += pitch {
			lines = append(lines, []Point{{x, y}, {x + length, y}})
		}
	}
	return Strokes{lines, hatchMM}
}

// weave draws cloth cut along one thread: the cut ends of the others, and the
// thread that goes over and under them.
func weave(r Rect) []Shape {
	radius := math.Min(r.H*0.22, 1.3)
	pitch := radius * 3.4
	mid := r.Y + r.H/2
	amplitude := math.Min(r.H/2-0.3, radius*1.45)
	var ends []Shape
	for i := 0; float64(i)*pitch < r.W+pitch; i++ {
		ends = append(ends, Polygon{Points: circle(r.X+float64(i)*pitch, mid, radius), Fill: Black})
	}
	over, under := []Point{}, []Point{}
	for x := r.X - 0.1; x <= r.X+r.W+0.2; x += pitch / 16 {
		dy := amplitude * math.Cos((x-r.X)/pitch*math.Pi)
		over, under = append(over, Point{x, mid - dy}), append(under, Point{x, mid + dy})
	}
	return append(ends, Strokes{[][]Point{over, under}, 0.22})
}

func circle(x, y, radius float64) []Point {
	var out []Point
	for i := range 16 {
		sin, cos := math.Sincos(float64(i) / 16 * 2 * math.Pi)
		out = append(out, Point{x + radius*cos, y + radius*sin})
	}
	return out
}

// plies draws plywood: by turns grain along the cut and end grain.
func plies(r Rect, n int) []Shape {
	var out []Shape
	h := r.H / float64(n)
	for i := range n {
		ply := Rect{X: r.X, Y: r.Y + float64(i)*h, W: r.W, H: h}
		if i%2 == 0 {
			out = append(out, grain(ply))
		} else {
			out = append(out, endGrain(ply))
		}
		if i > 0 {
			out = append(out, Line{r.X, ply.Y, r.X + r.W, ply.Y, 0.18, nil})
		}
	}
	return out
}

// grain draws long wavy lines, as of wood cut along the fibre.
func grain(r Rect) Shape {
	rows := math.Max(1, math.Round(r.H/1.1))
	step := r.H / rows
	var lines [][]Point
	for i := range int(rows) {
		y := r.Y + (float64(i)+0.5)*step
		var l []Point
		for x := r.X; x <= r.X+r.W+0.5; x += 0.6 {
			l = append(l, Point{x, y + step*0.22*math.Sin(x/3.1+float64(i)*1.7)*math.Sin(x/7.3+float64(i))})
		}
		lines = append(lines, l)
	}
	return Strokes{lines, hatchMM}
}

// endGrain draws short upright strokes in rows, as of wood cut across the fibre.
func endGrain(r Rect) Shape {
	n := noise(7)
	var lines [][]Point
	for x := r.X + 0.4; x < r.X+r.W; x += 0.8 {
		l := r.H * (0.25 + 0.3*n.next())
		y := r.Y + (r.H-l)*n.next()
		lines = append(lines, []Point{{x, y}, {x, y + l}})
	}
	return Strokes{lines, hatchMM}
}

// speckle draws short strokes in all directions: fibreboard.
func speckle(r Rect) Shape {
	const perSquareMM = 1.1
	n := noise(11)
	var lines [][]Point
	for range int(r.W * r.H * perSquareMM) {
		x, y := r.X+r.W*n.next(), r.Y+r.H*n.next()
		sin, cos := math.Sincos(math.Pi * n.next())
		lines = append(lines, []Point{{x - 0.3*cos, y - 0.3*sin}, {x + 0.3*cos, y + 0.3*sin}})
	}
	return Strokes{lines, hatchMM}
}

// fibres draws many level fibres: hardboard, pressed flat.
func fibres(r Rect) Shape {
	const perSquareMM = 0.9
	n := noise(13)
	var lines [][]Point
	for range int(r.W * r.H * perSquareMM) {
		x, y := r.X+r.W*n.next(), r.Y+r.H*n.next()
		lines = append(lines, []Point{{x, y}, {x + 0.6 + 0.8*n.next(), y + 0.2*(n.next()-0.5)}})
	}
	return Strokes{lines, hatchMM}
}

// roughEdge draws the teeth of the screen side of hardboard below or above y.
func roughEdge(r Rect, y, depth float64) Shape {
	const pitch = 1.1
	var l []Point
	for i, x := 0, r.X-pitch; x < r.X+r.W+pitch; i, x = i+1, x+pitch/2 {
		l = append(l, Point{x, y + depth*float64(i%2)})
	}
	return Strokes{[][]Point{l}, 0.2}
}

// cells draws the walls of a honeycomb between its two skins.
func cells(r Rect) []Shape {
	skin := r.H * 0.1
	return []Shape{
		Rects{[]Rect{{X: r.X, Y: r.Y, W: r.W, H: skin}, {X: r.X, Y: r.Y + r.H - skin, W: r.W, H: skin}}},
		upright(Rect{X: r.X, Y: r.Y, W: r.W, H: r.H}, 3.5),
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
