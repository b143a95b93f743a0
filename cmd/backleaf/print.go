package main

import (
	"bytes"
	"fmt"
	"strings"
	"text/tabwriter"

	"backleaf/record/tell"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// sayJSON prints a value as indented JSON. Escaping keeps control characters
// of outside text harmless.
func (a *app) sayJSON(v any) error {
	b, err := json.Marshal(v, json.Deterministic(true))
	if err != nil {
		return err
	}
	j := jsontext.Value(b)
	if err := j.Indent(jsontext.WithIndent("  ")); err != nil {
		return err
	}
	_, err = fmt.Fprintf(a.out, "%s\n", j)
	return err
}

// table aligns columns of text.
type table struct {
	a   *app
	buf bytes.Buffer
	w   *tabwriter.Writer
}

func (a *app) table() *table {
	t := &table{a: a}
	t.w = tabwriter.NewWriter(&t.buf, 0, 0, 2, ' ', 0)
	return t
}

// row adds a line of cells.
func (t *table) row(cells ...string) {
	for i, c := range cells {
		if i > 0 {
			fmt.Fprint(t.w, "\t")
		}
		fmt.Fprint(t.w, clean(strings.ReplaceAll(c, "\n", " ")))
	}
	fmt.Fprintln(t.w)
}

// pair adds a name and a value, unless there is none.
func (t *table) pair(name, value string) {
	if value != "" {
		t.row(name, value)
	}
}

// rows adds fields as they are amended, as they are called, and their values.
func (t *table) rows(rows []tell.Row) {
	for _, r := range rows {
		t.row(r.Path, r.Name, r.Value)
	}
}

// done prints the table without trailing spaces.
func (t *table) done() error {
	t.w.Flush()
	for _, l := range bytes.Split(bytes.TrimRight(t.buf.Bytes(), "\n"), []byte("\n")) {
		if _, err := fmt.Fprintf(t.a.out, "%s\n", bytes.TrimRight(l, " ")); err != nil {
			return err
		}
	}
	return nil
}
