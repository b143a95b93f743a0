package worksheet

import (
	"fmt"
	"slices"
	"strconv"

	"backleaf/record/paper"
)

// The page lies on its side; mm.
const (
	margin    = 14.0
	footRoom  = 8.0
	columnGap = 7.0
	lineGap   = 1.0
)

// PDF sets the job as PDF/A-1b: what is cut from what, a page a sheet with its
// drawing and its list, the cloth, and the rest.
func (j Job) PDF() ([]byte, error) {
	w := j.Words.Plan
	title := w.T("running").With("title", j.Title)
	s := &setter{Job: j, out: &paper.Document{Info: paper.Info{Title: title, Author: j.Maker, Subject: string(w.T("kind")), Language: j.Words.Tag.String(), Created: j.Made}}, width: 297, height: 210}
	if j.Letter {
		s.width, s.height = 279.4, 215.9
	}
	rest := j.rest()
	s.page()
	s.head(title)
	s.columns(2, []Section{j.first()}, last(rest))
	for i := range j.Plan.Sheets {
		s.drawn(j.sheets(i, i+1), func(w, h float64) (paper.Drawing, error) { return j.Drawing(i, w, h) })
	}
	if j.Cloth != nil {
		s.drawn(rest[0], j.ClothDrawing)
	}
	if more := j.more(); len(more) > 0 {
		s.page()
		s.head(title)
		s.columns(2, more, nil)
	}
	s.feet(title)
	if s.err != nil {
		return nil, fmt.Errorf("cannot set the plan: %w", s.err)
	}
	return s.out.Finish(paper.A1b)
}

// last are the cautions, which stand with the summary.
func last(s []Section) []Section {
	if len(s) == 0 {
		return nil
	}
	return s[len(s)-1:]
}

type setter struct {
	Job
	out           *paper.Document
	pages         []*paper.Page
	width, height float64
	y             float64
	err           error
}

func (s *setter) page() {
	s.pages = append(s.pages, s.out.Page(s.width, s.height))
	s.y = margin
}

func (s *setter) now() *paper.Page { return s.pages[len(s.pages)-1] }

func (s *setter) head(text string) {
	b, err := paper.Fit(s.width-2*margin, 40, 0.5, paper.Span{Style: paper.Title.Scaled(0.7), Text: text, Field: "title"})
	if err != nil {
		s.err = err
		return
	}
	s.now().Draw(paper.Text{X: margin, Y: s.y, Block: b})
	s.y += b.HeightMM() + 4
}

// drawn sets a page with a drawing at the top and the list below it. The
// drawing gives way as far as it may, so that both stand on one page.
func (s *setter) drawn(sec Section, draw func(w, h float64) (paper.Drawing, error)) {
	s.page()
	b, err := paper.Compose(s.width-2*margin, paper.Span{Style: paper.Strong, Text: sec.Title})
	if err != nil {
		s.err = err
		return
	}
	s.now().Draw(paper.Text{X: margin, Y: s.y, Block: b})
	s.y += b.HeightMM() + 2
	var d paper.Drawing
	for _, share := range []float64{0.75, 0.68, 0.6, 0.52, 0.45} {
		if d, err = draw(s.width-2*margin, (s.height-2*margin)*share); err != nil {
			s.err = err
			return
		}
		if s.fits(sec.Lines, s.height-margin-footRoom-s.y-d.HeightMM-3) {
			break
		}
	}
	s.now().Draw(d.At(margin, s.y))
	s.y += d.HeightMM + 3
	s.columns(listColumns, []Section{{Lines: sec.Lines}}, nil)
}

const listColumns = 3

// style of the lines of a list.
var item = paper.Small

func (s *setter) columnWidth(n int) float64 {
	return (s.width - 2*margin - float64(n-1)*columnGap) / float64(n)
}

// fits reports that a list stands in its columns.
func (s *setter) fits(lines []string, height float64) bool {
	y, n := 0.0, 1
	for _, l := range lines {
		b, err := paper.Compose(s.columnWidth(listColumns), paper.Span{Style: item, Text: l})
		if err != nil {
			return true // said when it is set
		}
		if y+b.HeightMM() > height {
			y, n = 0, n+1
		}
		y += b.HeightMM() + lineGap
	}
	return n <= listColumns
}

// columns sets sections in columns, on as many pages as they need. What is for
// the right begins at the top of a new column.
func (s *setter) columns(of int, left, right []Section) {
	top, n := s.y, 0
	width := s.columnWidth(of)
	f := &paper.Flow{}
	f.Next = func() paper.Frame {
		if n > 0 && n%of == 0 {
			s.page()
			top = s.y
		}
		n++
		return paper.Frame{Page: s.now(), X: margin + float64((n-1)%of)*(width+columnGap), Y: top, W: width, H: s.height - margin - footRoom - top}
	}
	style := paper.Body
	if of == listColumns {
		style = item
	}
	for i, sec := range slices.Concat(left, right) {
		if i == len(left) {
			f.Keep(f.At().H + 1)
		}
		if sec.Title != "" {
			f.Heading(4, 1.5, paper.Span{Style: paper.Strong, Text: sec.Title})
		}
		for _, l := range sec.Lines {
			f.Text(paper.Span{Style: style, Text: l})
			f.Gap(lineGap)
		}
	}
	if err := f.Done(); err != nil && s.err == nil {
		s.err = err
	}
}

// feet numbers the pages when all are known.
func (s *setter) feet(title string) {
	for i, p := range s.pages {
		n, err := paper.Compose(0, paper.Span{Style: paper.Small, Text: s.Words.Plan.T("page").With("n", strconv.Itoa(i+1), "all", strconv.Itoa(len(s.pages)))})
		if err != nil {
			s.err = err
			return
		}
		running, err := paper.Fit(s.width-2*margin-40, 5, 0.7, paper.Span{Style: paper.Small, Text: paper.OneLine(title), Field: "title"})
		if err != nil {
			running = paper.Block{}
		}
		y := s.height - margin - 1
		p.Draw(paper.Text{X: margin, Y: y, Block: running}, paper.Text{X: s.width - margin, Y: y, Block: n, Align: paper.Right})
	}
}
