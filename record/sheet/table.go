package sheet

import (
	"backleaf/record/pattern"
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"
)

// Bounds of a sheet that is read whole.
const (
	MaxBytes = 16 << 20
	MaxRows  = 50_000
)

const bom = "\uFEFF"

// table is a sheet as text: cells by the names of the header.
type table struct {
	header []string
	rows   []tableRow
}

type tableRow struct {
	line  int // of the file, from 1
	cells []string
	wrong string // why the row cannot be read
}

// readTable reads CSV or tab-separated text; the delimiter is the one with
// which most of the columns asked for are found.
func readTable(data []byte, wanted []string) (table, error) {
	text, err := decode(data)
	if err != nil {
		return table{}, err
	}
	delimiter, best := ',', -1
	for _, d := range []rune{',', ';', '\t'} {
		header, _ := newReader(text, d).Read()
		n := len(header)
		for _, h := range header {
			if slices.ContainsFunc(wanted, func(w string) bool { return sameName(w, h) }) {
				n += 10_000
			}
		}
		if n > best {
			delimiter, best = d, n
		}
	}
	return readRows(text, delimiter)
}

func newReader(text string, delimiter rune) *csv.Reader {
	r := csv.NewReader(strings.NewReader(text))
	r.Comma, r.FieldsPerRecord = delimiter, -1
	return r
}

// readRows reads a line after the other. A quotation mark within a cell is that
// of inches or of a title. Where one begins a cell and ends nothing, that line is
// wrong, and the next is read as a row again.
func readRows(text string, delimiter rune) (table, error) {
	var t table
	r, above := newReader(text, delimiter), 0
	for {
		cells, err := r.Read()
		line := above
		var bad *csv.ParseError
		switch {
		case errors.As(err, &bad) && t.header != nil:
			one := ""
			for range bad.StartLine {
				one, text, _ = strings.Cut(text, "\n")
			}
			r, above = newReader(text, delimiter), above+bad.StartLine
			line, cells = above, strings.Split(strings.TrimSuffix(one, "\r"), string(delimiter))
			if slices.ContainsFunc(cells, stray) {
				t.rows = append(t.rows, tableRow{line: line, wrong: "a quotation mark stands alone; in a cell write two of them, and one before and after the cell"})
				continue
			}
		case err == io.EOF && t.header == nil:
			return t, fmt.Errorf("the sheet is empty: expected a header and a row for each panel")
		case err == io.EOF:
			return t, nil
		case errors.As(err, &bad):
			return t, fmt.Errorf("line %d, character %d: %w", bad.Line, bad.Column, bad.Err)
		case err != nil:
			return t, err
		default:
			first, _ := r.FieldPos(0)
			line += first
		}
		for i, c := range cells {
			cells[i] = strings.TrimSpace(Unguard(strings.Trim(c, " \u00a0")))
		}
		if !slices.ContainsFunc(cells, func(c string) bool { return c != "" }) {
			continue
		}
		if t.header == nil {
			t.header = cells
			continue
		}
		row := tableRow{line: line, cells: cells}
		for len(row.cells) > len(t.header) && row.cells[len(row.cells)-1] == "" {
			row.cells = row.cells[:len(row.cells)-1]
		}
		if len(row.cells) > len(t.header) {
			row.wrong = fmt.Sprintf("the row has %d cells, the header %d", len(row.cells), len(t.header))
		}
		if t.rows = append(t.rows, row); len(t.rows) > MaxRows {
			return t, fmt.Errorf("more than %d rows: split the sheet", MaxRows)
		}
	}
}

var inches = pattern.Of(`[0-9½¼¾⅛⅜⅝⅞]"`)

// stray reports a cell with a quotation mark that is neither one of a pair within
// it nor that of inches.
func stray(cell string) bool {
	marks := strings.Count(cell, `"`)
	return strings.HasPrefix(strings.TrimSpace(cell), `"`) || marks%2 == 1 && marks != len(inches().FindAllString(cell, -1))
}

// decode accepts UTF-8 with or without its mark and says what else it sees.
func decode(data []byte) (string, error) {
	const save = "; save the sheet as CSV in UTF-8"
	switch {
	case len(data) > MaxBytes:
		return "", fmt.Errorf("the sheet is larger than %d MB: split it", MaxBytes>>20)
	case bytes.HasPrefix(data, []byte("\xFF\xFE")) || bytes.HasPrefix(data, []byte("\xFE\xFF")):
		return "", errors.New("the sheet is in UTF-16" + save)
	case bytes.HasPrefix(data, []byte("PK\x03\x04")) || bytes.HasPrefix(data, []byte("\xD0\xCF\x11\xE0")):
		return "", errors.New("this is the file of a spreadsheet program, not CSV" + save)
	}
	text := strings.TrimPrefix(string(data), bom)
	if strings.HasPrefix(strings.TrimSpace(text), "{") {
		return "", errors.New("this is JSON, as a mapping is, and no sheet: expected import SHEET --mapping MAPPING")
	}
	if i := strings.IndexByte(text, 0); i >= 0 {
		return "", fmt.Errorf("line %d: a zero byte: this is no text%s", lineOf(text, i), save)
	}
	if !utf8.ValidString(text) {
		i := 0
		for i < len(text) {
			r, n := utf8.DecodeRuneInString(text[i:])
			if r == utf8.RuneError && n == 1 {
				break
			}
			i += n
		}
		return "", fmt.Errorf("line %d: the text is not in UTF-8%s", lineOf(text, i), save)
	}
	if !strings.Contains(text, "\n") { // lines as on very old machines
		text = strings.ReplaceAll(text, "\r", "\n")
	}
	return text, nil
}

func lineOf(text string, at int) int { return 1 + strings.Count(text[:at], "\n") }

func sameName(a, b string) bool {
	return strings.EqualFold(strings.TrimSpace(a), strings.TrimSpace(b))
}
