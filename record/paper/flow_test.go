package paper_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"backleaf/record/paper"
	"backleaf/record/toolcheck"
)

func flow(d *paper.Document, w, h float64) *paper.Flow {
	return &paper.Flow{Next: func() paper.Frame {
		return paper.Frame{Page: d.Page(w, h), X: 20, Y: 20, W: w - 40, H: h - 40}
	}}
}

func TestFlowOverPages(t *testing.T) {
	d := &paper.Document{Info: paper.Info{Title: "Flow", Created: day}}
	f := flow(d, 120, 150)
	body := func(s string) []paper.Span { return []paper.Span{{Style: paper.Body, Text: s}} }
	f.Text(paper.Span{Style: paper.Title, Text: "What a conservator asks"})
	for i := range 12 {
		f.Heading(6, 1, paper.Span{Style: paper.Heading, Text: fmt.Sprintf("Section %d", i+1)})
		f.Row([]paper.Column{{WidthMM: 22}, {}, {WidthMM: 16, Align: paper.Right, Indent: 2}},
			[]paper.Span{{Style: paper.Aside, Text: "support"}}, body(strings.Repeat("thin birch plywood ", i+1)), body(fmt.Sprintf("%d"+paper.ThinSpace+"mm", i*i+1)))
		f.Text(body(strings.Repeat("word ", 15*i))...)
	}
	f.Rule()
	f.Drawing(paper.Drawing{WidthMM: 80, HeightMM: 100, Shapes: []paper.Shape{
		paper.Text{Block: compose(t, 80, paper.Span{Style: paper.LabelBody, Text: "plywood"})}}})
	if f.Done() != nil {
		t.Fatal(f.Done())
	}
	path := save(t, "flow.pdf", finish(t, d, paper.A1b))
	text := toolcheck.Run(t, "pdftotext", "-layout", path, "-")
	if n := strings.Count(text, "word"); n != 15*66 {
		t.Errorf("%d words on the pages, want %d", n, 15*66)
	}
	if n := strings.Count(text, "plywood"); n != 78+1 { // one in the drawing
		t.Errorf("%d times plywood, want 79", n)
	}
	for i, page := range strings.Split(text, "\f") {
		if last := strings.TrimSpace(page); strings.HasPrefix(last[strings.LastIndex(last, "\n")+1:], "SECTION") {
			t.Errorf("page %d ends in a heading", i+1)
		}
	}
}

func TestFlowRefuses(t *testing.T) {
	span := paper.Span{Style: paper.Title, Text: "x"}
	for name, set := range map[string]func(*paper.Flow){
		"a line higher than the page":    func(f *paper.Flow) { f.Text(paper.Span{Style: paper.Title.Scaled(20), Text: "x"}) },
		"columns wider than the page":    func(f *paper.Flow) { f.Row([]paper.Column{{WidthMM: 500}}, []paper.Span{span}) },
		"more texts than columns":        func(f *paper.Flow) { f.Row([]paper.Column{{}}, nil, nil) },
		"a drawing larger than the page": func(f *paper.Flow) { f.Drawing(paper.Drawing{WidthMM: 10, HeightMM: 500}) },
		"a character without a face":     func(f *paper.Flow) { f.Text(paper.Span{Style: paper.Body, Text: "\u1200"}) },
	} {
		f := flow(&paper.Document{Info: paper.Info{}}, 100, 100)
		set(f)
		first := f.Done()
		f.Text(span)
		if first == nil || !errors.Is(f.Done(), first) {
			t.Errorf("%s: %v, then %v", name, first, f.Done())
		}
	}
}
