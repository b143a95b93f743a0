package deposit

import (
	"bytes"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"backleaf/record"
	"backleaf/record/form"
	"backleaf/record/sheet"
)

// A Table is one table of a deposit. Its first row names the columns; those
// that hold a field of an entry have the name of that field.
type Table struct {
	Name string
	Rows [][]string
}

// CSV returns the table for a spreadsheet.
func (t Table) CSV() ([]byte, error) {
	var b bytes.Buffer
	if err := sheet.Write(&b, sheet.Rows(t.Rows)); err != nil {
		return nil, fmt.Errorf("cannot write table %s: %w", t.Name, err)
	}
	return b.Bytes(), nil
}

// Tables returns the tables of a journal, given folded and as it is stored: panels,
// layers, materials, lots, journal.
func Tables(w *record.Workshop, entries []form.Stored) []Table {
	return []Table{
		{"panels", panels(w)}, {"layers", layers(w)},
		{"materials", shelf(w.Materials)}, {"lots", shelf(w.Lots)}, {"journal", journal(entries)},
	}
}

func journal(entries []form.Stored) [][]string {
	rows := [][]string{{"entry", "written", "at", "kind", "panels", "corrects", "json"}}
	for _, s := range entries {
		e := s.Entry
		var ns []string
		for _, n := range e.Panels {
			ns = append(ns, string(n))
		}
		rows = append(rows, []string{num(e.Seq), e.Written.String(), e.At.String(), string(e.Kind()), strings.Join(ns, " "), num(e.Corrects()), string(s.Bytes)})
	}
	return rows
}

// shelf is the table of materials or of lots, as they stand now.
func shelf[B record.Body](all []record.Done[B]) [][]string {
	columns := fieldsOf(reflect.TypeFor[B](), "")
	rows := [][]string{append(slices.Clone(columns), "at", "entry")}
	for _, d := range all {
		values := valuesOf(d.Body)
		var row []string
		for _, c := range columns {
			row = append(row, values[c])
		}
		rows = append(rows, append(row, d.At.String(), num(d.Seq)))
	}
	return rows
}

func panels(w *record.Workshop) [][]string {
	rows := [][]string{{"number", "own_reference", "batch", "title", "made", "size", "height_um", "width_um", "depth_um", "stage", "where", "where_since",
		"subject", "inscription", "signed", "distinguishing_features", "type_of_object", "medium_line",
		"cut_at", "board", "board_lot", "grain", "certificate_entry", "photographs", "corrections"}}
	for _, p := range w.Panels {
		d, cut, size := p.Description(), p.Cut(), p.Size()
		made, _ := record.Latest[record.Cut](p)
		where, since := whereabouts(p)
		certificate := ""
		if c, ok := p.Certificate(); ok {
			certificate = num(c.Seq)
		}
		var photos []string
		for _, ph := range record.Each[record.Photograph](p) {
			photos = append(photos, PhotographName(ph.Body))
		}
		rows = append(rows, []string{string(p.Number), orElse(d.Owner, cut.Owner), string(p.Batch), d.Title, d.Made.String(),
			size.String(), micrometers(size.Height), micrometers(size.Width), micrometers(size.Depth), string(p.Stage()), where, since.String(),
			d.Subject, d.Inscription, d.Signed, d.Features, d.Type, d.Medium,
			made.At.String(), string(cut.Board), string(cut.Lot), string(cut.Grain), certificate, strings.Join(photos, " "), num(int64(len(p.Corrections)))})
	}
	return rows
}

// whereabouts says where a panel is, as far as that is not private.
func whereabouts(p *record.Panel) (string, record.When) {
	if x, ok := p.Discarded(); ok {
		return "discarded: " + x.Body.Because, x.At
	}
	if h, ok := p.Away(); ok {
		return "away: " + string(h.Body.How), h.At
	}
	return "in the studio", record.When{}
}

// PhotographName is the name of the file of a photograph: its digest.
func PhotographName(p record.Photograph) string {
	return p.SHA256 + strings.Replace(p.Type, "image/", ".", 1)
}

func micrometers(l record.Length) string {
	if um, ok := l.Micrometers(); ok {
		return num(um)
	}
	return ""
}

// num is a whole number; nought is an empty cell.
func num(n int64) string {
	if n == 0 {
		return ""
	}
	return strconv.FormatInt(n, 10)
}

func orElse(s, other string) string {
	if s == "" {
		return other
	}
	return s
}
