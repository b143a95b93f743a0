package dossier

import (
	"cmp"
	"errors"
	"fmt"

	"backleaf/record/paper"
)

// The page, in millimetres.
const (
	marginLeft   = 25.0
	marginRight  = 22.0
	marginTop    = 26.0
	marginBottom = 19.0
	nameColumn   = 42.0
	columnGap    = 2.5
)

var (
	cell     = paper.Small
	cellHead = paper.Small.Italic()
	inside   = paper.Strong.Scaled(0.95)
)

// PDF sets the dossier as PDF/A-1b.
func (d *Document) PDF() ([]byte, error) {
	out := &paper.Document{Info: paper.Info{Title: d.Running, Author: d.Author, Subject: d.Kind, Language: d.Language, Created: d.Made}}
	s := &setter{doc: d, out: out, width: 210, height: 297}
	if d.Letter {
		s.width, s.height = 215.9, 279.4
	}
	s.flow = &paper.Flow{Next: s.page, Mark: out.Mark}
	s.front()
	for i, sec := range append([]Section{d.Glance}, d.Sections...) {
		title := fmt.Sprintf("%d\u2002%s", i, sec.Title)
		if i == 0 {
			title = sec.Title
		}
		s.flow.Heading(8, 2.2, paper.Span{Style: paper.Heading, Text: title})
		s.flow.Bookmark(sec.Title)
		s.title = title
		if f, ok := sec.Items[0].(Figure); ok && i == 0 {
			s.beside(f, sec.Items[1].(Pairs))
			continue
		}
		if high := s.wordsHeight(sec.Items); high > 0 && high < 70 {
			s.flow.Keep(high) // a short section stays whole
		}
		for k, item := range sec.Items {
			if k > 0 {
				s.flow.Gap(2)
			}
			s.note = 0
			if next := k + 1; next < len(sec.Items) {
				s.note = s.noteHeight(sec.Items[next])
			}
			s.item(item)
		}
	}
	if err := cmp.Or(s.err, s.flow.Done()); err != nil {
		return nil, fmt.Errorf("cannot set the dossier: %w", err)
	}
	if err := s.heads(); err != nil {
		return nil, fmt.Errorf("cannot set the dossier: %w", err)
	}
	return out.Finish(paper.A1b)
}

type setter struct {
	doc           *Document
	out           *paper.Document
	flow          *paper.Flow
	pages         []*paper.Page
	width, height float64
	title         string  // of the section
	note          float64 // height of a note that stays with the table above it
	err           error   // of a drawing
}

func (s *setter) textWidth() float64 { return s.width - marginLeft - marginRight }

func (s *setter) page() paper.Frame {
	p := s.out.Page(s.width, s.height)
	s.pages = append(s.pages, p)
	return paper.Frame{Page: p, X: marginLeft, Y: marginTop, W: s.textWidth(), H: s.height - marginTop - marginBottom}
}

func (s *setter) front() {
	s.flow.Text(paper.Span{Style: paper.Heading, Text: s.doc.Kind})
	s.flow.Gap(3)
	s.flow.Text(paper.Span{Style: paper.Title, Text: s.doc.Title, Field: "title"})
	s.flow.Gap(1)
	s.flow.Text(paper.Span{Style: paper.Aside, Text: s.doc.By, Field: "maker"})
	s.flow.Gap(5)
	for i, l := range s.doc.Lead {
		if i > 0 {
			s.flow.Gap(1.5)
		}
		s.flow.Text(paper.Span{Style: paper.Body, Text: l})
	}
}

// heads sets the line at the head of every page when all are known.
func (s *setter) heads() error {
	const y = marginTop - 10
	for i, p := range s.pages {
		n, err := paper.Compose(0, paper.Span{Style: paper.Small, Text: s.doc.PageOf(i+1, len(s.pages))})
		if err != nil {
			return err
		}
		// The first page shows the title in large, and a title that does not fit in one line only there.
		running, err := paper.Fit(s.textWidth()-n.WidthMM()-8, cellHead.LeadPt*0.36, 0.8, paper.Span{Style: cellHead, Text: paper.OneLine(s.doc.Running), Field: "title"})
		if i == 0 || errors.Is(err, paper.ErrTooLong) {
			running, err = paper.Compose(0, paper.Span{Style: cellHead, Text: s.doc.Number})
		}
		if err != nil {
			return err
		}
		p.Draw(paper.Text{X: marginLeft, Y: y, Block: running}, paper.Text{X: s.width - marginRight, Y: y, Block: n, Align: paper.Right},
			paper.Line{X1: marginLeft, Y1: y + 4.4, X2: s.width - marginRight, Y2: y + 4.4, WeightMM: 0.1})
	}
	return nil
}

func (s *setter) item(i Item) {
	switch i := i.(type) {
	case Text:
		switch {
		case i.Strong:
			s.flow.Heading(3, 1, paper.Span{Style: inside, Text: i.Text})
		case i.Small:
			s.flow.Text(paper.Span{Style: paper.Small, Text: i.Text})
		default:
			s.flow.Text(paper.Span{Style: paper.Body, Text: i.Text})
		}
	case Pairs:
		s.pairs(i, nameColumn, 0)
	case Table:
		s.table(i)
	case Figure:
		s.figure(i)
	}
}

// pairs sets names and values, and leaves some width free at the right.
func (s *setter) pairs(ps Pairs, names, free float64) {
	columns := []paper.Column{{WidthMM: names - 4}, {Indent: 4}}
	if free > 0 {
		columns = append(columns, paper.Column{WidthMM: free})
	}
	s.flow.Keep(min(3, float64(len(ps))) * 6) // no row or two alone below a heading
	for _, p := range ps {
		if b, err := paper.Compose(s.textWidth()-names-free, paper.Span{Style: paper.Body, Text: p.Value}); err == nil {
			s.flow.Keep(min(b.HeightMM(), 40)) // a short one stays whole
		}
		cells := [][]paper.Span{{{Style: paper.Aside, Text: p.Name}}, {{Style: paper.Body, Text: p.Value, Field: p.Name}}, nil}
		s.flow.Row(columns, cells[:len(columns)]...)
		s.flow.Gap(0.7)
	}
}

// beside sets a picture at the right of what is said of it.
func (s *setter) beside(f Figure, ps Pairs) {
	const wide, high, gap, names = 62.0, 66.0, 7.0, 25.0
	all, err := f.Draw(wide, high)
	caption, cerr := paper.Compose(wide, paper.Span{Style: cellHead, Text: f.Caption})
	if err = cmp.Or(err, cerr); err != nil {
		s.err = cmp.Or(s.err, err)
		return
	}
	height := all[0].HeightMM + 1.5 + caption.HeightMM()
	s.flow.Keep(height)
	at := s.flow.At()
	x := at.X + at.W - all[0].WidthMM
	at.Page.Draw(all[0].At(x, at.Y+1), paper.Text{X: x, Y: at.Y + all[0].HeightMM + 2.5, Block: caption})
	s.pairs(ps, names, all[0].WidthMM+gap)
	if now := s.flow.At(); now.Page == at.Page && now.Y < at.Y+height+2 {
		s.flow.Skip(at.Y + height + 2 - now.Y)
	}
}

// wordsHeight is the height of a section of paragraphs alone.
func (s *setter) wordsHeight(items []Item) (high float64) {
	for _, i := range items {
		t, ok := i.(Text)
		if !ok {
			return 0
		}
		b, _ := paper.Compose(s.textWidth(), paper.Span{Style: paper.Body, Text: t.Text}) // as in noteHeight
		high += b.HeightMM() + 2
	}
	return high
}

// noteHeight is the height of a note below a table.
func (s *setter) noteHeight(i Item) float64 {
	t, ok := i.(Text)
	if !ok || !t.Small {
		return 0
	}
	b, _ := paper.Compose(s.textWidth(), paper.Span{Style: paper.Small, Text: t.Text}) // what is wrong with it will be said where it is set
	return b.HeightMM() + 4
}

// table sets a table with its head again on every page it reaches.
func (s *setter) table(t Table) {
	columns := make([]paper.Column, len(t.Columns))
	total := 0.0
	for _, c := range t.Columns {
		total += c.Share
	}
	for i, c := range t.Columns { // columns of the same shares stand below each other, however many there are
		columns[i].WidthMM = c.Share/total*(s.textWidth()+columnGap) - columnGap
		if i > 0 {
			columns[i].Indent = columnGap
		}
	}
	head := make([][]paper.Span, len(t.Columns))
	for i, c := range t.Columns {
		head[i] = []paper.Span{{Style: cellHead, Text: c.Head}}
	}
	setHead := func() {
		s.flow.Row(columns, head...)
		s.flow.Gap(0.6)
		s.flow.Rule()
		s.flow.Gap(1)
	}
	var on *paper.Page
	rows, high := make([][][]paper.Span, len(t.Rows)), make([]float64, len(t.Rows)+1)
	for k, row := range t.Rows {
		for i, text := range row {
			rows[k] = append(rows[k], []paper.Span{{Style: cell, Text: text, Field: t.Columns[i].Head}})
			if b, err := paper.Compose(columns[i].WidthMM, rows[k][i]...); err == nil {
				high[k] = max(high[k], b.HeightMM()+1)
			}
		}
	}
	for k, spans := range rows {
		room := min(high[k], 60)
		if k == len(rows)-2 { // the last row does not stand alone
			room = min(high[k]+high[k+1], 60)
		}
		if on == nil {
			room += 8 // the head stays with its first row
		}
		if k == len(t.Rows)-1 {
			room += s.note
		}
		s.flow.Keep(room)
		if at := s.flow.At(); at.Page != on {
			if on != nil {
				s.flow.Text(paper.Span{Style: cell, Text: s.doc.Continued(s.title)})
				s.flow.Gap(1.5)
			}
			on = at.Page
			setHead()
		}
		s.flow.Row(columns, spans...)
		s.flow.Gap(1)
	}
	s.flow.Rule()
	s.flow.Gap(2)
}

func (s *setter) figure(f Figure) {
	s.flow.Gap(3)
	// What can be drawn in the room that is left on the page stays on it.
	const caption, least = 10, 60
	all, err := f.Draw(s.textWidth(), s.height-marginTop-marginBottom-14)
	if err == nil { // a heading stays with its figure
		s.flow.Keep(min(all[0].HeightMM, least) + caption)
	}
	if left := s.flow.At().H - caption; err == nil && left >= least && left < all[0].HeightMM {
		if small, serr := f.Draw(s.textWidth(), left); serr == nil && len(small) <= len(all) && small[0].HeightMM <= left {
			all = small
		}
	}
	if err != nil {
		s.err = cmp.Or(s.err, err)
		return
	}
	below, err := paper.Compose(s.textWidth(), paper.Span{Style: cellHead, Text: f.Caption})
	if err != nil {
		s.err = cmp.Or(s.err, err)
		return
	}
	for i, d := range all {
		more := 0.0
		if i == len(all)-1 {
			more = below.HeightMM() + 2 // the caption stays with its figure
		}
		s.flow.Keep(d.HeightMM + more)
		s.flow.Drawing(d)
		s.flow.Gap(2)
	}
	s.flow.Text(paper.Span{Style: cellHead, Text: f.Caption})
	s.flow.Gap(4.5)
}
