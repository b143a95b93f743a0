package worksheet

import (
	"math"
	"strconv"

	"backleaf/record/paper"
	"backleaf/record/plan"
	"backleaf/record/tell"
)

// Line weights and distances on paper, mm.
const (
	wide   = 0.5
	middle = 0.3
	narrow = 0.15

	sideLeft, sideTop   = 15.0, 9.0 // for running dimensions
	sideRight, sideFoot = 8.0, 14.0 // for the numbers of the cuts, and the scale
	ringRadius          = 1.9
	kerfShown           = 0.3 // a narrower kerf is one line
)

// scales are the scales of drawings, 1 : n.
var scales = []float64{1, 2, 2.5, 4, 5, 6, 7.5, 8, 10, 12.5, 15, 20, 25, 30, 40, 50, 75, 100, 200, 500, 1000}

// Drawing draws a sheet of the plan in at most widthMM × heightMM, the
// reference corner at the top left, the sheet's length to the right.
func (j Job) Drawing(sheet int, widthMM, heightMM float64) (paper.Drawing, error) {
	return j.draw(j.Plan, sheet, j.sheetTitle(sheet, sheet+1), j.Words.Plan.T("grain"), widthMM, heightMM)
}

// ClothDrawing draws the cloth likewise, the squared end at the left.
func (j Job) ClothDrawing(widthMM, heightMM float64) (paper.Drawing, error) {
	return j.draw(j.Cloth.Plan, 0, j.ClothName, j.Words.Plan.T("warp"), widthMM, heightMM)
}

// drawer draws one sheet; um is millimetres of paper to a micrometre.
type drawer struct {
	Job
	p      plan.Plan
	sheet  int
	c      plan.Cut
	um     float64
	shapes []paper.Shape
	rings  []paper.Shape // above all else
	err    error
}

func (j Job) draw(p plan.Plan, sheet int, title string, grain tell.Message, widthMM, heightMM float64) (paper.Drawing, error) {
	d := &drawer{Job: j, p: p, sheet: sheet, c: p.Sheets[sheet]}
	scale := scales[len(scales)-1]
	for _, n := range scales {
		if d.mm(d.c.Length)/n <= widthMM-sideLeft-sideRight && d.mm(d.c.Width)/n <= heightMM-sideTop-sideFoot {
			scale = n
			break
		}
	}
	d.um = 0.001 / scale
	d.parts()
	d.cuts()
	d.edges()
	d.foot(scale, grain)
	d.add(d.rings...)
	if d.err != nil {
		return paper.Drawing{}, d.err
	}
	desc := ""
	for _, l := range j.steps(p, sheet, nil) {
		desc += l + "\n"
	}
	return paper.Drawing{WidthMM: sideLeft + d.at(d.c.Length) + sideRight, HeightMM: sideTop + d.at(d.c.Width) + sideFoot,
		Title: title, Desc: desc, Shapes: d.shapes, ID: "sheet" + strconv.Itoa(sheet+1)}, nil
}

func (d *drawer) mm(um int64) float64 { return float64(um) / 1000 }
func (d *drawer) at(um int64) float64 { return float64(um) * d.um }

// x and y place a point of the sheet in the drawing.
func (d *drawer) x(um int64) float64 { return sideLeft + d.at(um) }
func (d *drawer) y(um int64) float64 { return sideTop + d.at(um) }

func (d *drawer) add(s ...paper.Shape) { d.shapes = append(d.shapes, s...) }

// figures is the style of figures: fractions are set small in it.
func (d *drawer) figures() paper.Style {
	if d.Inches {
		return paper.LabelBody
	}
	return paper.LabelSmall
}

// text sets lines around a place.
func (d *drawer) text(x, y float64, style paper.Style, text string) paper.Shape {
	b, err := paper.Compose(0, paper.Span{Style: style, Text: text})
	if err != nil {
		d.err = err
	}
	return paper.Text{X: x, Y: y - b.HeightMM()/2, Block: b, Align: paper.Centre}
}

// parts draws what lies on the sheet.
func (d *drawer) parts() {
	letters := map[[2]int]string{}
	if d.Cloth == nil || &d.p.Sheets[0] != &d.Cloth.Plan.Sheets[0] {
		letters = keepLetters(d.p)
	}
	for i, part := range d.p.Parts(d.sheet) {
		r := paper.Rect{X: d.x(part.X), Y: d.y(part.Y), W: d.at(part.Length), H: d.at(part.Width)}
		switch {
		case part.Number > 0:
			p := d.p.Order.Pieces[part.Piece]
			d.label(d.arrow(r, p), d.name(part.Number), d.size(p.Height, p.Width))
		case part.Keep && letters[[2]int{d.sheet, i}] != "":
			d.label(r, d.Words.Plan.T("keep").With("letter", letters[[2]int{d.sheet, i}]), d.size(part.Length, part.Width))
		default:
			d.add(hatched(r))
		}
	}
}

// hatched is waste: lines at 45°, evenly spaced.
func hatched(r paper.Rect) paper.Shape {
	const gap = 1.8
	var lines [][]paper.Point
	// Lines stand on one grid for the whole drawing, so that neighbours agree.
	for at := math.Ceil((r.X+r.Y)/gap) * gap; at < r.X+r.Y+r.W+r.H; at += gap {
		x0 := math.Max(r.X, at-r.Y-r.H)
		x1 := math.Min(r.X+r.W, at-r.Y)
		lines = append(lines, []paper.Point{{X: x0, Y: at - x0}, {X: x1, Y: at - x1}})
	}
	return paper.Strokes{Lines: lines, WeightMM: narrow}
}

// label names a rectangle and says its size, turned where it is narrow, smaller
// where there is little room, and the name alone where there is less.
func (d *drawer) label(r paper.Rect, name, size string) {
	lines := [][]paper.Span{
		{{Style: paper.LabelBold, Text: name + "\n"}, {Style: d.figures(), Text: size}},
		{{Style: paper.LabelBold, Text: name + paper.NoBreakSpace}, {Style: d.figures(), Text: size}},
		{{Style: paper.LabelBold, Text: name}},
	}
	for _, spans := range lines {
		for _, turn := range []float64{0, -90} {
			w, h := r.W-1, r.H-1
			if turn != 0 {
				w, h = h, w
			}
			if w <= 0 || h <= 0 {
				continue
			}
			b, err := paper.Fit(w, h, 0.75, spans...)
			if err != nil || b.Lines() > 2 || b.Lines() > 1 && len(spans) == 1 {
				continue
			}
			d.add(paper.Group{X: r.X + r.W/2, Y: r.Y + r.H/2, Degrees: turn, Shapes: []paper.Shape{paper.Text{Y: -b.HeightMM() / 2, Block: b, Align: paper.Centre}}})
			return
		}
	}
}

// arrow shows the run of the grain in a piece: one head where the piece wants
// it so, two where either way will do. A sheet without grain has none. What is
// left of the piece for other marks is returned.
func (d *drawer) arrow(r paper.Rect, p plan.Piece) paper.Rect {
	grain := d.p.Order.Sheets[d.c.Sheet].Grain
	if grain == plan.Free || r.W < 4 || r.H < 4 {
		return r
	}
	const head, band = 1.2, 2.6
	x, y, left := r.X+r.W/2, r.Y+r.H-band/2-0.4, r
	long := math.Min(8, 0.6*r.W)
	from, to := paper.Point{X: x - long/2, Y: y}, paper.Point{X: x + long/2, Y: y}
	left.H -= band
	if grain == plan.Second {
		x, y, left = r.X+r.W-band/2-0.4, r.Y+r.H/2, r
		long = math.Min(8, 0.6*r.H)
		from, to = paper.Point{X: x, Y: y + long/2}, paper.Point{X: x, Y: y - long/2}
		left.W -= band
	}
	d.add(paper.Line{X1: from.X, Y1: from.Y, X2: to.X, Y2: to.Y, WeightMM: narrow}, arrowHead(from, to, head))
	if p.Grain == plan.Free {
		d.add(arrowHead(to, from, head))
	}
	return left
}

func arrowHead(from, to paper.Point, size float64) paper.Shape {
	l := math.Hypot(to.X-from.X, to.Y-from.Y)
	dx, dy := (to.X-from.X)/l*size, (to.Y-from.Y)/l*size
	return paper.Polygon{Points: []paper.Point{to, {X: to.X - dx - dy/3, Y: to.Y - dy + dx/3}, {X: to.X - dx + dy/3, Y: to.Y - dy - dx/3}}, Fill: paper.Black}
}
