package exchange_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"backleaf/record/accept"
	"backleaf/record/form"
	"backleaf/record/studio/exchange"
)

// FuzzRead reads any bytes as an import file: it never falls over, an
// error names the file and a line of it, and what is accepted can be written
// and read again as the same entries.
func FuzzRead(f *testing.F) {
	example, err := os.ReadFile(filepath.Join("..", "..", "..", "schema", "examples", "entries.json"))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(example)
	for _, s := range []string{
		"", "{", `{"backleaf":"entries","v":1,"entries":[]}`, `{"backleaf":"entries","v":2,"entries":[]}`, "[1,2]",
		`{"backleaf":"entries","v":1,"entries":[{"kind":"note","text":"x"},` + "\n" + `{"kind":"note","text":7}]}`,
		`{"backleaf":"entries","v":1,"entries":[{"kind":"note","text":"\ud800"}]}`, `{"backleaf":"entries","v":1,"entries":[null]}`,
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		es, lines, err := exchange.Read("file.json", data)
		if err != nil {
			var bad *exchange.BadFile
			if !errors.As(err, &bad) || bad.Line < 1 || bad.Line > 1+strings.Count(string(data), "\n") || es != nil {
				t.Fatalf("%v, beside %d entries", err, len(es))
			}
			return
		}
		if len(lines) != len(es) {
			t.Fatalf("%d entries on %d lines", len(es), len(lines))
		}
		for i, e := range es {
			b, err := form.Write(e)
			if err != nil {
				t.Fatalf("entry %d was read and cannot be written: %v", i+1, err)
			}
			again, err := accept.Parse(b)
			if err != nil {
				t.Fatalf("entry %d was written and cannot be read: %v", i+1, err)
			}
			if c, err := form.Write(again); err != nil || string(c) != string(b) {
				t.Fatalf("entry %d changes when it is written again: %v", i+1, err)
			}
		}
	})
}
