package main

import (
	"bytes"
	"testing"

	"backleaf/record/sheet"
	"backleaf/record/studio/exchange"
)

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
