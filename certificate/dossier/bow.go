package dossier

import (
	"math"
	"strconv"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/measure"
	"backleaf/record/paper"
	"backleaf/record/tell"
)

func (b *builder) bow() []Item {
	var out []Item
	for _, said := range check.Balance(b.w, b.p) {
		out = append(out, Text{Text: b.c.Capital(tell.Say(b.c, said)) + "."})
	}
	out = append(out, b.movement()...)
	return append(out, b.measured()...)
}

func tenths(microns float64) string {
	s := strconv.FormatFloat(microns/1000, 'f', 1, 64)
	if microns > 0 && microns < 1000 {
		s = strconv.FormatFloat(microns/1000, 'f', 2, 64)
	}
	return strings.TrimSuffix(s, ".0")
}

// millimetres writes a computed length.
func (b *builder) millimetres(microns float64) string {
	return b.c.Measure(tenths(microns), "mm")
}

// movement says how far the board moves in its plane.
func (b *builder) movement() []Item {
	w, c := b.d, b.d
	m, _ := b.w.Material(b.p.Cut().Board, b.p.Cut().BoardAs)
	mv, err := measure.MovementOf(m.Board.Kind)
	switch {
	case m.Board.Kind == record.SolidWood:
		return []Item{Text{Text: string(w.T("bow-solid-wood"))}}
	case err != nil:
		return []Item{Text{Text: string(w.T("bow-no-movement"))}}
	}
	t := Table{Columns: []Column{{string(c.T("columns-side")), 1}, {string(c.T("columns-movement")), 3}, {string(c.T("columns-source")), 3}}}
	source := mv.Source.String()
	if mv.LowConfidence {
		source = b.sentence(source, string(w.T("bow-low-confidence")))
	}
	size := b.p.Size()
	for i, l := range []record.Length{size.Height, size.Width} {
		um, known := l.Micrometers()
		if !known {
			continue
		}
		low, _, high, err := mv.Microns(float64(um), 40, 60)
		if err != nil {
			continue
		}
		t.Rows = append(t.Rows, []string{string(w.Sides[i]), w.T("bow-air").With("low", tenths(low), "high", b.millimetres(high)), source})
	}
	if t.Rows == nil {
		return nil
	}
	return []Item{Text{Text: string(w.T("bow-movement")), Strong: true}, t}
}

// measured tells the bows that were measured, and draws them if there are
// several.
func (b *builder) measured() []Item {
	w, c := b.d, b.d
	t := Table{Columns: []Column{{string(c.T("columns-date")), 2}, {string(c.T("columns-bow")), 1.3}, {string(c.T("columns-span")), 1.3}, {string(c.T("columns-share")), 1.2}, {string(c.T("columns-hollow")), 1.2}, {string(c.T("columns-entry")), 1}}}
	var at []time.Time
	var shares []float64
	var said []string
	for _, e := range record.Each[record.Inspection](b.p) {
		if e.Body.Bow.IsZero() {
			continue
		}
		share := b.Said("")
		bow, ok1 := e.Body.Bow.Micrometers()
		span, ok2 := e.Body.Span.Micrometers()
		if ok1 && ok2 && span > 0 {
			pc := float64(bow) / float64(span) * 100
			share = strconv.FormatFloat(pc, 'f', 2, 64) + paper.ThinSpace + "%"
			sign := map[record.Toward]float64{"front": 1, "back": -1}[e.Body.Toward]
			if t, ok := (step{at: e.At}).timed(); ok && (sign != 0 || bow == 0) {
				at, shares = append(at, t), append(shares, pc*sign)
				said = append(said, b.Day(e.At)+" "+share)
			}
		}
		t.Rows = append(t.Rows, []string{b.Day(e.At), b.Quantity(e.Body.Bow), b.Quantity(e.Body.Span), share, b.Word(e.Body.Toward), b.Entry(e.Seq)})
	}
	if t.Rows == nil {
		return []Item{Text{Text: string(w.T("bow-not-measured"))}}
	}
	out := []Item{Text{Text: string(w.T("bow-measured")), Strong: true}, t}
	if len(at) >= 2 {
		out = append(out, b.figure(b.d.T("figures-bow"), func(width, _ float64) ([]paper.Drawing, error) {
			return b.bowOverTime(at, shares, said, width)
		}))
	}
	return out
}

// bowOverTime draws the measured bows on a true scale of time.
func (b *builder) bowOverTime(at []time.Time, shares []float64, said []string, width float64) ([]paper.Drawing, error) {
	p := &plot{width: width}
	from, all := at[0], at[len(at)-1].Sub(at[0]).Hours()
	var xs []float64
	for _, t := range at {
		x := chartLeft + 2
		if all > 0 {
			x += t.Sub(from).Hours() / all * (width - chartRight - chartLeft - 4)
		}
		xs = append(xs, x)
	}
	y := p.series("%", xs, shares, at, 4, span{0.1, math.Inf(1)}, false)
	y = p.days(b, at, xs, y+1)
	d := paper.Drawing{WidthMM: width, HeightMM: y + 1, Title: string(b.d.T("figures-bow")), Desc: b.d.T("figures-bow-desc").With("steps", strings.Join(said, "; ")), Shapes: p.shapes}
	return []paper.Drawing{d}, p.err
}
