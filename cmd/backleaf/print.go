package main

import (
	"fmt"

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

// rows adds fields as they are amended, as they are called, and their values.
func (t *table) rows(rows []tell.Row) {
	for _, r := range rows {
		t.row(r.Path, r.Name, r.Value)
	}
}
