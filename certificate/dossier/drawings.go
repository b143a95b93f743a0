package dossier

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"backleaf/record"
	"backleaf/record/paper"
)

func (b *builder) drawings() []Item {
	out := []Item{b.figure(b.d.T("figures-section"), b.sections)}
	if s, ok := b.EdgeSection(); ok {
		out = append(out, b.figure(b.d.T("figures-edge"), func(w, h float64) ([]paper.Drawing, error) {
			s.Name, s.Detail, s.Head = paper.Small, drawingDetail, drawingHead
			return s.Draw(w-scaleMM, h)
		}))
	}
	if _, ok := b.p.Size().AreaSquareMillimeters(); ok {
		caption := b.d.T("figures-plan")
		if record.Each[record.Feature](b.p) != nil {
			caption = b.d.T("figures-plan-found")
		}
		out = append(out, b.figure(caption, b.plan))
	}
	for i, f := range record.Each[record.Feature](b.p) {
		out = append(out, Text{Text: b.found(i+1, f), Small: true})
	}
	return append(out, b.pictures(func(r record.PhotoRole) bool { return r != record.PhotoFront }, 70)...)
}

var drawingDetail, drawingHead = paper.Small.Scaled(0.9), paper.Heading.Scaled(0.82)

// scaleMM is the width of the section that is to scale, beside the other.
const scaleMM = 36.0

// sections draws the build-up with all its layers, and beside it to scale.
func (b *builder) sections(w, h float64) ([]paper.Drawing, error) {
	s := b.Section()
	s.Name, s.Detail, s.Head, s.Numbered = paper.Small, drawingDetail, drawingHead, true
	all, err := s.Draw(w-scaleMM-6, h)
	if err != nil || len(all) != 1 {
		return all, err
	}
	one := all[0]
	scaled, ok, err := s.ToScale(scaleMM, one.HeightMM)
	if ok {
		one.Shapes = append(one.Shapes, scaled.At(w-scaleMM, 0))
		one.WidthMM, one.HeightMM, one.Desc = w, math.Max(one.HeightMM, scaled.HeightMM), one.Desc+" "+scaled.Desc
	}
	return []paper.Drawing{one}, err
}

// found tells what was found at a place of the board, as on the plan.
func (b *builder) found(n int, f record.Done[record.Feature]) string {
	m := b.d.T("figures-mark")
	if has(f.Body.Left) && has(f.Body.Top) {
		m = b.d.T("figures-mark-at")
	}
	return b.c.Fill(m, record.With("n", n), record.With("what", f.Body.What), record.With("face", f.Body.Face), record.With("left", f.Body.Left), record.With("top", f.Body.Top),
		record.With("size", f.Body.Size), record.With("note", f.Body.Note), record.With("entry", record.EntryRef(f.Seq)))
}

// marks sets a cross with its number where something was found on a face.
func (b *builder) marks(p *plot, face record.Face, x, y, scale, w, h float64) {
	for i, f := range record.Each[record.Feature](b.p) {
		left, ok := f.Body.Left.Micrometers()
		top, too := f.Body.Top.Micrometers()
		if f.Body.Face != face || !ok || !too {
			continue
		}
		cx, cy := x+math.Min(float64(left)*scale, w), y+math.Min(float64(top)*scale, h)
		const arm = 1.3
		p.add(paper.Strokes{WeightMM: 0.25, Lines: [][]paper.Point{{{X: cx - arm, Y: cy}, {X: cx + arm, Y: cy}}, {{X: cx, Y: cy - arm}, {X: cx, Y: cy + arm}}}},
			paper.Text{X: cx + 1, Y: cy + 0.6, Block: p.set(paper.Small.Bold(), strconv.Itoa(i+1), "number of a feature")})
	}
}

// plan draws front and back side by side, to scale with each other.
func (b *builder) plan(width, _ float64) ([]paper.Drawing, error) {
	size := b.p.Size()
	hm, _ := size.Height.Micrometers()
	wm, _ := size.Width.Micrometers()
	const head, gap, most = 6.0, 16.0, 62.0
	scale := math.Min(most/float64(hm), (width-gap)/2/float64(wm))
	// A very long panel is drawn no thinner than a few millimetres.
	h, w := math.Max(float64(hm)*scale, 4), math.Max(float64(wm)*scale, 4)
	p := &plot{width: width}
	cut := b.p.Cut()
	f := b.d
	for i, side := range []struct {
		name string
		face record.Face
	}{{string(f.T("figures-front-side")), record.Front}, {string(f.T("figures-back-side")), record.Back}} {
		x := 0.15 + float64(i)*(width-w-0.3) // half a line, or it is cut off on a screen
		p.add(paper.Text{X: x, Y: 0, Block: p.set(paper.Small, side.name, "name of a face")})
		p.add(paper.Rect{X: x, Y: head, W: w, H: h, WeightMM: 0.3})
		p.add(paper.Polygon{Points: []paper.Point{{X: x + w/2, Y: head + 1}, {X: x + w/2 - 1, Y: head + 3}, {X: x + w/2 + 1, Y: head + 3}}, Fill: paper.Black})
		p.add(paper.Text{X: x + w/2, Y: head + 3.3, Block: p.set(drawingHead, string(f.T("figures-top")), "top"), Align: paper.Centre})
		if cut.Grain == "height" || cut.Grain == "width" {
			p.arrow(string(f.T("figures-grain-run")), x, head, w, h, cut.Grain == "height", 0.34)
		}
		if run, ok := b.warp(side.face, cut.Grain); ok {
			p.arrow(string(f.T("figures-thread-run")), x, head, w, h, run, 0.68)
		}
		b.marks(p, side.face, x, head, scale, w, h)
	}
	detail := b.SealedFaces()
	for i, f := range record.Each[record.Feature](b.p) {
		detail += ". " + strings.TrimSuffix(b.found(i+1, f), ".")
	}
	d := paper.Drawing{WidthMM: width, HeightMM: head + h + 1, Title: string(f.T("figures-plan")), Desc: f.T("figures-plan-desc").With("size", b.Dimensions(), "detail", detail), Shapes: p.shapes}
	return []paper.Drawing{d}, p.err
}

// warp reports whether the warp of the cloth on a face runs along the height.
func (b *builder) warp(f record.Face, grain record.Grain) (alongHeight, ok bool) {
	for _, c := range record.Each[record.ClothLaid](b.p) {
		if !slices.Contains(c.Body.Faces, f) || grain != "height" && grain != "width" {
			continue
		}
		switch c.Body.Run {
		case "along-grain":
			return grain == "height", true
		case "across-grain":
			return grain == "width", true
		}
	}
	return false, false
}

// arrow draws a line with two heads and its name, if the face is large enough.
func (p *plot) arrow(name string, x, y, w, h float64, upright bool, at float64) {
	blk := p.set(chartSmall, name, "name of a direction")
	if w < 16 || h < 16 {
		return
	}
	cx, cy := x+w*at, y+h*at+3
	half := math.Min(w, h) * 0.14
	d := paper.Point{X: half}
	if upright {
		d = paper.Point{Y: half}
	}
	a, z := paper.Point{X: cx - d.X, Y: cy - d.Y}, paper.Point{X: cx + d.X, Y: cy + d.Y}
	tip := func(at paper.Point, sign float64) []paper.Point {
		if upright {
			return []paper.Point{{X: at.X - 0.8, Y: at.Y + 1.2*sign}, at, {X: at.X + 0.8, Y: at.Y + 1.2*sign}}
		}
		return []paper.Point{{X: at.X + 1.2*sign, Y: at.Y - 0.8}, at, {X: at.X + 1.2*sign, Y: at.Y + 0.8}}
	}
	p.add(paper.Strokes{Lines: [][]paper.Point{{a, z}, tip(a, 1), tip(z, -1)}, WeightMM: 0.2})
	if upright {
		p.add(paper.Text{X: cx + 1.5, Y: cy - blk.HeightMM()/2, Block: blk})
		return
	}
	p.add(paper.Text{X: cx, Y: cy + 0.8, Block: blk, Align: paper.Centre})
}
