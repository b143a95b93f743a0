package label

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/paper"
	"backleaf/record/tell"
)

// Options say how labels are laid on pages.
type Options struct {
	Catalogue *tell.Catalogue
	Size      Size
	// Sheet is nil for pages of the size of one label.
	Sheet *Sheet
	// From is the place of the sheet, from 1, where the first label stands: a
	// sheet from which some were taken can be used again. 0 is 1.
	From      int
	CropMarks bool // plain sheets always have them
	// Ruler asks for a first page that shows whether the printer keeps the
	// scale and, of a bought sheet, whether it meets the places.
	Ruler bool
	Note  bool // a page on paper, print and paste comes last
	Paper Area // of these pages, if there is no sheet
	// Created is when the last entry of the journal was written: no clock is
	// read, so that the same record gives the same bytes.
	Created time.Time
	Author  string
	Units   record.LengthUnit // of figures in errors
	// Step is told how far the work has come, in steps of it, and may end it
	// with an error; nil: nobody asks.
	Step  func(done, total int64) error
	Pages *int // is set to how many pages there are, unless it is nil
}

// ErrNoPlace reports that the first label was to stand beyond the last place
// of its sheet.
var ErrNoPlace = errors.New("there is no place")

// Draw writes labels as one PDF/A-1b file and returns their layouts. Nothing
// is written if any label cannot be drawn.
func Draw(w io.Writer, labels []Input, o Options) ([]Layout, error) {
	step := o.steps(2 * len(labels))
	layouts, err := o.arrange(labels, step)
	if err != nil {
		return nil, err
	}
	doc := &paper.Document{Info: o.info(labels)}
	doc.Step = func(page, pages int) error {
		if o.Pages != nil {
			*o.Pages = pages
		}
		return step(len(labels)*page/pages - len(labels)*(page-1)/pages)
	}
	if o.Ruler {
		if err := ruler(doc, o); err != nil {
			return nil, err
		}
		if o.Sheet != nil && !o.Sheet.plain() {
			if err := align(doc, o); err != nil {
				return nil, err
			}
		}
	}
	if err := o.pages(doc, layouts); err != nil {
		return nil, err
	}
	if o.Note {
		if err := note(doc, o); err != nil {
			return nil, err
		}
	}
	pdf, err := doc.Finish(paper.A1b)
	if err != nil {
		return nil, err
	}
	_, err = w.Write(pdf)
	return layouts, err
}

func (o Options) info(labels []Input) paper.Info {
	words := o.Catalogue.Label
	info := paper.Info{Author: o.Author, Subject: string(words.T("file-subject")), Language: o.Catalogue.Tag.String(), Created: o.Created}
	switch n := len(labels); n {
	case 0:
		info.Title = string(words.T("ruler-title"))
	case 1:
		info.Title = words.T("file-title").With("number", labels[0].Number)
	default:
		info.Title = words.T("file-titles").With("first", labels[0].Number, "last", labels[n-1].Number)
	}
	return info
}

// pages puts layouts on pages in their order, each label followed by those
// that carry it on. On plain paper every size begins a new sheet, the largest
// first.
func (o Options) pages(doc *paper.Document, layouts []Layout) error {
	var all []Layout
	for _, l := range layouts {
		all = append(append(all, l), l.More...)
	}
	if o.Sheet == nil {
		for _, l := range all {
			o.single(doc, l)
		}
		return nil
	}
	from := max(o.From, 1) - 1
	for _, group := range grouped(all, o.Sheet.plain()) {
		sheet, err := o.Sheet.forArea(group[0].Area, o.Units)
		if err != nil {
			return err
		}
		if from >= sheet.places() {
			return fmt.Errorf("%w %d on a sheet of %d", ErrNoPlace, from+1, sheet.places())
		}
		var page *paper.Page
		for i, l := range group {
			at := (from + i) % sheet.places()
			if page == nil || at == 0 {
				page = doc.Page(sheet.Page.WidthMM, sheet.Page.HeightMM)
			}
			x, y := sheet.at(at)
			l.drawAt(page, x, y)
			if o.CropMarks || o.Sheet.plain() {
				cropMarks(page, x, y, l.Area)
			} else if l.Area != sheet.Place {
				cutLines(page, x, y, l.Area, sheet.Place)
			}
		}
		from = 0
	}
	return nil
}

// grouped parts layouts by size, if they must stand on sheets of their own.
func grouped(layouts []Layout, bySize bool) [][]Layout {
	var groups [][]Layout
	for _, l := range layouts {
		i := 0
		if bySize {
			i = slices.IndexFunc(groups, func(g []Layout) bool { return g[0].Area == l.Area })
		}
		if i < 0 || len(groups) == 0 {
			i, groups = len(groups), append(groups, nil)
		}
		groups[i] = append(groups[i], l)
	}
	area := func(g []Layout) float64 { return g[0].Area.WidthMM * g[0].Area.HeightMM }
	slices.SortStableFunc(groups, func(a, b []Layout) int { return cmp.Compare(area(b), area(a)) })
	return groups
}

// single gives a label a page of its own, with room for crop marks if they
// are asked for.
func (o Options) single(doc *paper.Document, l Layout) {
	edge := 0.0
	if o.CropMarks {
		edge = snap(markGapMM + markMM + 1)
	}
	page := doc.Page(l.Area.WidthMM+2*edge, l.Area.HeightMM+2*edge)
	l.drawAt(page, edge, edge)
	if o.CropMarks {
		cropMarks(page, edge, edge, l.Area)
	}
}

func (l Layout) drawAt(page *paper.Page, x, y float64) {
	g := paper.Group{X: x, Y: y}
	for _, b := range l.Boxes {
		g.Shapes = append(g.Shapes, b.shapes...)
	}
	page.Draw(g)
}

// Crop marks stand outside the label, clear of its corners.
const (
	markGapMM = 0.4
	markMM    = 1.5
)

func cropMarks(page *paper.Page, x, y float64, a Area) {
	var lines [][]paper.Point
	for _, cx := range []float64{x, x + a.WidthMM} {
		for _, cy := range []float64{y, y + a.HeightMM} {
			sx, sy := -1.0, -1.0
			if cx > x {
				sx = 1
			}
			if cy > y {
				sy = 1
			}
			lines = append(lines,
				[]paper.Point{{X: cx + sx*markGapMM, Y: cy}, {X: cx + sx*(markGapMM+markMM), Y: cy}},
				[]paper.Point{{X: cx, Y: cy + sy*markGapMM}, {X: cx, Y: cy + sy*(markGapMM+markMM)}})
		}
	}
	page.Draw(paper.Strokes{Lines: lines, WeightMM: 0.1})
}

// cutLines show where to cut a label that is smaller than its place. Marks
// outside it would stand on its neighbours.
func cutLines(page *paper.Page, x, y float64, a, place Area) {
	cut := func(x1, y1, x2, y2 float64) {
		page.Draw(paper.Line{X1: x1, Y1: y1, X2: x2, Y2: y2, WeightMM: 0.1, Dash: []float64{1, 1}})
	}
	if a.WidthMM < place.WidthMM {
		cut(x+a.WidthMM, y, x+a.WidthMM, y+a.HeightMM)
	}
	if a.HeightMM < place.HeightMM {
		cut(x, y+a.HeightMM, x+a.WidthMM, y+a.HeightMM)
	}
}
