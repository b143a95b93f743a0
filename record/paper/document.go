package paper

import (
	"compress/zlib"
	"fmt"
	"net/url"
	"runtime"
	"slices"
	"sync"
	"time"

	"backleaf/record/pdf"
)

// Info says what a file is. It is written twice, for readers old and new (the
// information dictionary and XMP), and both are equal.
type Info struct {
	Title    string
	Author   string
	Subject  string
	Keywords string
	Language string // BCP 47 tag; "en" if empty
	// Created and Modified come from the record. Modified is Created if zero.
	Created, Modified time.Time
}

// A Document is pages on their way to a PDF file; it begins without any.
type Document struct {
	Info Info
	// Step is told of each page that was painted, from 1, and may end the work
	// with an error; nil: nobody asks.
	Step  func(page, pages int) error
	pages []*Page
	marks []mark
}

// A mark is a bookmark: a line of the outline that leads to a place.
type mark struct {
	page  int
	topMM float64
	title string
}

// A Page holds shapes in the order in which they are drawn.
type Page struct {
	WidthMM, HeightMM float64
	shapes            []Shape
}

// Limits of a page side: what PDF 1.4 readers accept at 1 unit = 1/72 inch.
const (
	minPageMM = 3 * mmPerPt
	maxPageMM = 14400 * mmPerPt
)

// Page adds an empty page at the end. Earlier pages can still be drawn on.
func (d *Document) Page(widthMM, heightMM float64) *Page {
	p := &Page{WidthMM: widthMM, HeightMM: heightMM}
	d.pages = append(d.pages, p)
	return p
}

// Mark makes a bookmark that leads to a height of a page of the document.
func (d *Document) Mark(p *Page, topMM float64, title string) {
	d.marks = append(d.marks, mark{slices.Index(d.pages, p), topMM, OneLine(title)})
}

// Pages returns how many pages there are.
func (d *Document) Pages() int { return len(d.pages) }

// Draw puts shapes on the page, above those already there.
func (p *Page) Draw(shapes ...Shape) { p.shapes = append(p.shapes, shapes...) }

// Finish writes the document as a PDF file of the kind asked for. Attachments
// are allowed in [A3b] only. Nothing is returned if anything is wrong.
func (d *Document) Finish(kind Kind, attachments ...pdf.Attachment) ([]byte, error) {
	if len(d.pages) == 0 {
		return nil, fmt.Errorf("cannot write PDF: the document has no page")
	}
	for i, p := range d.pages {
		if !(p.WidthMM >= minPageMM && p.WidthMM <= maxPageMM && p.HeightMM >= minPageMM && p.HeightMM <= maxPageMM) {
			return nil, fmt.Errorf("cannot write PDF: page %d is %g × %g mm, sides must be %.0f to %.0f mm", i+1, p.WidthMM, p.HeightMM, minPageMM, maxPageMM)
		}
	}
	s, contents := newSurface(), make([]*pdf.Stream, len(d.pages))
	if err := d.paint(s, contents); err != nil {
		return nil, err
	}
	raw, err := s.bytes()
	if err != nil {
		return nil, err
	}
	return finish(raw, contents, d, kind, attachments)
}

// paint fills the contents of the pages. The drawing library paints one after
// the other; before that they are made ready, and after it packed, on all cores.
func (d *Document) paint(s *surface, contents []*pdf.Stream) error {
	cores := runtime.GOMAXPROCS(0)
	ready, room := make(chan chan []Shape, 2*cores), make(chan bool, cores)
	ended := make(chan bool)
	defer close(ended)
	go func() {
		for _, p := range d.pages {
			page := make(chan []Shape, 1)
			select {
			case ready <- page:
			case <-ended:
				return
			}
			go func() { page <- readied(p.shapes) }()
		}
	}()
	var packing sync.WaitGroup
	defer packing.Wait()
	for i, p := range d.pages {
		content := s.page(p, <-<-ready)
		room <- true
		packing.Go(func() { contents[i] = pdf.Deflated(zlib.BestSpeed, content); <-room })
		if d.Step != nil {
			if err := d.Step(i+1, len(d.pages)); err != nil {
				return err
			}
		}
	}
	return nil
}

// checkLink accepts web addresses that can stand in a PDF and in markup as they are.
func checkLink(link string) error {
	u, err := url.Parse(link)
	if err != nil {
		return fmt.Errorf("cannot link to %q: not a web address", link)
	}
	if s := u.Scheme; (s != "http" && s != "https") || u.Host == "" {
		return fmt.Errorf("cannot link to %q: not an http or https address", link)
	}
	for _, r := range link {
		if r <= ' ' || r > '~' {
			return fmt.Errorf("cannot link to %q: U+%04X must be percent-encoded", link, r)
		}
	}
	return nil
}
