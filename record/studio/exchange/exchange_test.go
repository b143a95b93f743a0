package exchange_test

import (
	"bytes"
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
		i, last := 0, 1+strings.Count(string(data), "\n")
		for e, err := range exchange.Read("file.json", bytes.NewReader(data)) {
			if err != nil {
				var bad *exchange.BadFile
				if !errors.As(err, &bad) || bad.Line < 1 || bad.Line > last {
					t.Fatal(err)
				}
				return
			}
			if i++; e.Line < 1 || e.Line > last {
				t.Fatalf("entry %d on line %d of %d", i, e.Line, last)
			}
			b, err := form.Write(e.Entry)
			if err != nil {
				t.Fatalf("entry %d was read and cannot be written: %v", i, err)
			}
			again, err := accept.Parse(b)
			if err != nil {
				t.Fatalf("entry %d was written and cannot be read: %v", i, err)
			}
			if c, err := form.Write(again); err != nil || string(c) != string(b) {
				t.Fatalf("entry %d changes when it is written again: %v", i, err)
			}
		}
	})
}
