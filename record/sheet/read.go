package sheet

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
)

// Options is what a sheet is read against.
type Options struct {
	Shop  *record.Workshop // the shelf
	Taken Taken            // by the panels already in the book
	Now   time.Time
	Price func(string) error // says why a price cannot be read
	Told  func(Row) error    // says why a row may not stand in the journal
}

// Taken is which of a studio's own references, in small letters, is a panel's.
type Taken map[string]record.Number

// By adds those of a panel.
func (t Taken) By(p *record.Panel) {
	for _, ref := range []string{p.Cut().Owner, p.Description().Owner} {
		t[strings.ToLower(ref)] = p.Number
	}
}

// Sheet is what a table says.
type Sheet struct {
	Rows    []Row
	Refused []Refusal // every cell that is wrong, in order
	Unread  []string  // columns that the mapping does not name
}

// Row is one panel: its entries in the order of the work, without number. The
// first cuts the panel.
type Row struct {
	Line      int // of the file, from 1
	Reference string
	Entries   []record.Entry
	Handover  int // index of the entry that has the private part
	Private   Private
}

// Private is what of a row stands outside the journal, as typed.
type Private struct{ To, Price, Note string }

// Refusal says what of a row cannot be accepted. Column is empty where it is
// the row as a whole.
type Refusal struct {
	Line   int
	Column string
	Value  string
	Why    string
}

func (r Refusal) String() string {
	switch {
	case r.Column == "":
		return fmt.Sprintf("line %d: %s", r.Line, r.Why)
	case r.Value == "":
		return fmt.Sprintf("line %d, %s: %s", r.Line, r.Column, r.Why)
	}
	return fmt.Sprintf("line %d, %s, %q: %s", r.Line, r.Column, clip(r.Value), r.Why)
}

// RefusedRows counts the rows with a refusal.
func (s Sheet) RefusedRows() int {
	n, last := 0, 0
	for _, r := range s.Refused {
		if r.Line != last {
			n, last = n+1, r.Line
		}
	}
	return n
}

// reader reads the rows of one sheet.
type reader struct {
	Options
	mapping Mapping
	header  []string
	column  map[string]int // of a field
	taken   map[string]string
}

// Read reads a sheet by a mapping. The error is about the sheet as a whole;
// what is wrong with single rows is in Refused.
func Read(data []byte, m Mapping, o Options) (Sheet, error) {
	t, err := readTable(data, slices.Sorted(maps.Keys(m.Columns)))
	if err != nil {
		return Sheet{}, err
	}
	r := &reader{Options: o, mapping: m, header: t.header, column: map[string]int{}, taken: map[string]string{}}
	var s Sheet
	if s.Unread, err = r.findColumns(); err != nil {
		return Sheet{}, err
	}
	for ref, n := range o.Taken {
		r.taken[ref] = "it is in the book already, as panel " + string(n)
	}
	for _, tr := range t.rows {
		row := &rowReader{reader: r, line: tr.line, cells: tr.cells, has: map[string]bool{}}
		if tr.wrong != "" {
			s.Refused = append(s.Refused, Refusal{Line: tr.line, Why: tr.wrong})
			continue
		}
		out := row.read()
		if err := r.Told(out); err != nil {
			row.refused = append(row.refused, Refusal{Line: tr.line, Why: err.Error()})
		}
		if len(row.refused) > 0 {
			s.Refused = append(s.Refused, row.refused...)
			continue
		}
		s.Rows = append(s.Rows, out)
	}
	return s, nil
}

// findColumns finds the mapped columns in the header and returns the others.
func (r *reader) findColumns() (unread []string, err error) {
	for _, name := range slices.Sorted(maps.Keys(r.mapping.Columns)) {
		var at []int
		for i, h := range r.header {
			if sameName(h, name) {
				at = append(at, i)
			}
		}
		switch len(at) {
		case 0:
			return nil, fmt.Errorf("the sheet has no column %q%s", clip(name), nearest(name, r.header))
		case 1:
			r.column[r.mapping.Columns[name]] = at[0]
		default:
			return nil, fmt.Errorf("the sheet has %d columns %q", len(at), clip(name))
		}
	}
	for i, h := range r.header {
		used := false
		for _, at := range r.column {
			used = used || at == i
		}
		if !used && h != "" {
			unread = append(unread, h)
		}
	}
	return unread, nil
}

// rowReader reads one row.
type rowReader struct {
	*reader
	line    int
	cells   []string
	refused []Refusal
	has     map[string]bool // what the row has an entry of
	out     Row
}

// cell returns what stands in the sheet for a field.
func (r *rowReader) cell(field string) string {
	if i, ok := r.column[field]; ok && i < len(r.cells) {
		return r.cells[i]
	}
	return ""
}

// get returns the text of a field: the cell, or what it stands for, or the
// constant of an empty one.
func (r *rowReader) get(field string) string {
	text := r.cell(field)
	if text == "" {
		text = strings.TrimSpace(r.mapping.Constants[field])
	} else {
		words := r.mapping.Words[field]
		for _, k := range slices.Sorted(maps.Keys(words)) {
			if sameName(k, text) {
				text = strings.TrimSpace(words[k])
				break
			}
		}
	}
	if slices.Contains([]string{"coats", "cloth", "paint", "varnish", "handover"}, field) && strings.EqualFold(text, "none") {
		return ""
	}
	return text
}

// refuse notes what is wrong with a field.
func (r *rowReader) refuse(field, format string, args ...any) {
	col := "(" + field + ")"
	if i, ok := r.column[field]; ok {
		col = r.header[i]
	}
	value := r.cell(field)
	if value == "" {
		value = r.get(field)
	}
	why := strings.TrimPrefix(fmt.Sprintf(format, args...), strconv.Quote(value)+": ") // it stands beside it
	r.refused = append(r.refused, Refusal{r.line, col, value, why})
}

func (r *rowReader) date(field string) record.When {
	w, err := parseDate(r.get(field), r.mapping.Dates, r.Now)
	if err != nil {
		r.refuse(field, "%v", err)
	}
	return w
}

// word reads one word of a closed list.
func (r *rowReader) word(field, list string) string {
	s := strings.ToLower(r.get(field))
	if s == "" || s == record.Unknown || slices.Contains(record.Words(list), s) {
		return s
	}
	r.refuse(field, "not %s", record.OneOf(s, append(slices.Clone(record.Words(list)), record.Unknown)))
	return ""
}

// add puts an entry on the row after checking it. Names says which field of
// the sheet a field of the entry comes from.
func (r *rowReader) add(at record.When, body record.Body, names map[string]string) {
	e := record.Entry{At: at, Body: body, Panels: []record.Number{"KB26-0001-K"}} // any number, to be checked with
	if err := accept.Check(e); err != nil {
		fe, ok := err.(*record.FieldError)
		field := ""
		if ok {
			field = names[fe.Field]
		}
		if field == "" {
			r.refused = append(r.refused, Refusal{Line: r.line, Why: err.Error()})
		} else {
			r.refuse(field, "%s", fe.Why)
		}
	}
	e.Panels = nil
	r.out.Entries = append(r.out.Entries, e)
}
