package main

import (
	"bytes"
	"fmt"
	"testing"

	"backleaf/record"
	"backleaf/record/sheet"
	"backleaf/record/studio/exchange"
)

// Each name by which a flag asks for a field is said back as the flag.
func TestAsTyped(t *testing.T) {
	c := newRoot(&app{env: func(string) string { return "" }, out: &bytes.Buffer{}}, "coat")
	coat, _, err := c.Find([]string{"coat"})
	if err != nil {
		t.Fatal(err)
	}
	for field, want := range map[string]string{"wet_total": "--amount: why", "faces": "--on: why", "wet_film": "--wet-film: why", "mix": "--with: why", "seq": "seq: why", "": "why"} {
		err := fmt.Errorf("%w", &record.FieldError{Field: field, Why: "why"})
		if got := asTyped(coat, err.Error(), err); got != want {
			t.Errorf("%s: %s, want %s", field, got, want)
		}
	}
}

// Three hundred cells wrong in two ways are two lines.
func TestRefusedByKind(t *testing.T) {
	x := &exchange.Sheet{}
	for i := range 300 {
		x.Refused = append(x.Refused, sheet.Refusal{Line: i + 2, Column: "Year", Value: "98", Why: "not a date"}, sheet.Refusal{Line: i + 2, Column: "Support", Value: "ply", Why: `no material "ply"`})
	}
	var out bytes.Buffer
	(&app{err: &out, env: func(string) string { return "" }}).sayRefused(x, sheetFlags{file: "a.csv"})
	want := "a.csv, line 2, Year, \"98\": not a date (and 299 more like it)\na.csv, line 2, Support, \"ply\": no material \"ply\" (and 299 more like it)\n"
	if out.String() != want {
		t.Errorf("%s", out.String())
	}
}
