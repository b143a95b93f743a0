package dossier

import (
	"time"

	"backleaf/record/paper"
)

// A Document is a dossier before it is set.
type Document struct {
	Language string
	Number   string // of the panel
	Title    string // of the work
	Kind     string // of paper
	Author   string
	By       string // whom the work is by, and of when
	Running  string // at the head of each page
	PageOf   func(n, all int) string
	// Continued heads a table that goes on at a new page.
	Continued func(title string) string
	Letter    bool // US Letter, else A4
	Made      time.Time
	Lead      []string
	Glance    Section // what is asked first, on the first page
	Sections  []Section
}

// A Section is one question and its answer.
type Section struct {
	Title string
	Items []Item
}

// An Item is a part of a section: Text, Pairs, Table or Figure.
type Item interface{ item() }

// Text is a paragraph; small for notes and sources, strong for a heading
// inside a section.
type Text struct {
	Text          string
	Small, Strong bool
}

// Pairs are names with what is recorded under them.
type Pairs []Pair

// Pair is one of them.
type Pair struct{ Name, Value string }

// Table has one cell for each column in every row.
type Table struct {
	Columns []Column
	Rows    [][]string
}

// A Column has a share of the width.
type Column struct {
	Head  string
	Share float64
}

// A Figure is drawn for the width and height of the page, on as many drawings
// as it needs.
type Figure struct {
	Caption string
	Draw    func(widthMM, heightMM float64) ([]paper.Drawing, error)
}

func (Text) item()   {}
func (Pairs) item()  {}
func (Table) item()  {}
func (Figure) item() {}
