package paper_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"backleaf/record/paper"
)

func save(t *testing.T, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	// Pages to be looked at: BACKLEAF_KEEP names a folder that keeps them.
	if dir := os.Getenv("BACKLEAF_KEEP"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, strings.ReplaceAll(t.Name(), "/", "-")+"-"+name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return path
}

var day = time.Date(2026, 3, 14, 9, 26, 53, 0, time.FixedZone("", 3600))

func compose(t testing.TB, width float64, spans ...paper.Span) paper.Block {
	t.Helper()
	b, err := paper.Compose(width, spans...)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

type svgSpan struct {
	X      float64 `xml:"x,attr"`
	Y      float64 `xml:"y,attr"`
	Size   float64 `xml:"font-size,attr"`
	Length float64 `xml:"textLength,attr"`
	Text   string  `xml:",chardata"`
}

// spans reads the runs of text of a drawing; all of it must be well-formed.
func spans(t *testing.T, svg []byte) []svgSpan {
	t.Helper()
	var out []svgSpan
	var all svgSpan // what holds for all, unless they say otherwise
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatalf("not well-formed: %v", err)
		}
		start, ok := token.(xml.StartElement)
		if ok && start.Name.Local == "svg" {
			for _, a := range start.Attr {
				if a.Name.Local == "font-size" {
					all.Size, _ = strconv.ParseFloat(a.Value, 64)
				}
			}
		}
		if ok && start.Name.Local == "text" {
			s := all
			if err := d.DecodeElement(&s, &start); err != nil {
				t.Fatal(err)
			}
			out = append(out, s)
		}
	}
}
