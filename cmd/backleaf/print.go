package main

import (
	"fmt"

	"backleaf/cmd/internal/terminal"
	"backleaf/record"
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

// sayJSONList prints the values that list adds as one indented JSON list, each as
// it comes.
func (a *app) sayJSONList(list func(add func(any) error) error) error {
	before := "[\n"
	if err := list(func(v any) error {
		b, err := json.Marshal(v, json.Deterministic(true), jsontext.WithIndentPrefix("  "), jsontext.WithIndent("  "))
		if err == nil {
			_, err = fmt.Fprintf(a.out, "%s  %s", before, b)
		}
		before = ",\n"
		return err
	}); err != nil {
		return err
	}
	if before == "[\n" {
		a.say("[]")
	} else {
		a.say("\n]")
	}
	return nil
}

func yesNo(is bool) record.Answer {
	if is {
		return record.Yes
	}
	return record.No
}

// rows adds fields as they are amended and called, and their values.
func rows(t *terminal.Table, c *tell.Catalogue, rows []tell.Row) {
	for _, r := range rows {
		t.Row(c.Labelled(r), r.Value)
	}
}
