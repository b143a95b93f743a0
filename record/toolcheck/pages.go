package toolcheck

import (
	"encoding/hex"
	"encoding/xml"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf16"
)

// A Page is what an independent reader finds on a page: its words in lines, in
// points from the top left corner.
type Page struct {
	Width  float64 `xml:"width,attr"`
	Height float64 `xml:"height,attr"`
	Blocks []struct {
		Lines []Line `xml:"line"`
	} `xml:"flow>block"`
}

// A Line is words side by side.
type Line struct {
	Words []Word `xml:"word"`
}

// A Word has a box as high as its face.
type Word struct {
	XMin float64 `xml:"xMin,attr"`
	YMin float64 `xml:"yMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	YMax float64 `xml:"yMax,attr"`
	Text string  `xml:",chardata"`
}

// Pages reads the pages of a PDF file with pdftotext.
func Pages(t testing.TB, path string) []Page {
	t.Helper()
	var doc struct {
		Pages []Page `xml:"body>doc>page"`
	}
	if err := xml.Unmarshal([]byte(Run(t, "pdftotext", "-bbox-layout", path, "-")), &doc); err != nil {
		t.Fatal(err)
	}
	return doc.Pages
}

// Findings lists what is wrong with the setting of a file, measured by
// programs that did not make it: type under 6 pt (5 pt for the figures of a
// fraction), ink that is neither black nor white, text that leaves a margin or
// stands on other text, and lines that end inside a number, between a number
// and its unit, or inside an address but after "/" or ".".
func Findings(t testing.TB, path string, marginMM float64) []string {
	t.Helper()
	out := contentFindings(Run(t, "qpdf", "--qdf", "--object-streams=disable", path, "-"))
	for i, p := range Pages(t, path) {
		for _, f := range append(p.placeFindings(marginMM/25.4*72), p.breakFindings()...) {
			out = append(out, fmt.Sprintf("page %d: %s", i+1, f))
		}
	}
	return out
}

var (
	setFont = regexp.MustCompile(`/F\S+ ([0-9.]+) Tf`)
	colours = regexp.MustCompile(`(?m)(?:^|\s)([0-9.]+(?: [0-9.]+){0,3}) (?:g|G|rg|RG|k|K)\s`)
	shown   = regexp.MustCompile(`(?s)\(((?:[^()\\]|\\.)*)\) ?Tj|<([0-9a-fA-F]*)> ?Tj`)
)

// contentFindings reads type sizes and colours out of the content of pages.
func contentFindings(qdf string) []string {
	seen := map[string]bool{}
	var out []string
	add := func(s string) {
		if !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	fonts := setFont.FindAllStringSubmatchIndex(qdf, -1)
	for i, m := range fonts {
		pt, _ := strconv.ParseFloat(qdf[m[2]:m[3]], 64)
		if pt >= 5.995 {
			continue
		}
		end := len(qdf)
		if i+1 < len(fonts) {
			end = fonts[i+1][0]
		}
		for _, s := range shown.FindAllStringSubmatch(qdf[m[1]:end], -1) {
			text := decoded(s[1], s[2])
			if pt < 4.995 || strings.ContainsFunc(text, func(r rune) bool { return !unicode.IsDigit(r) }) {
				add(fmt.Sprintf("%q in %.2f pt", text, pt))
			}
		}
	}
	for _, m := range colours.FindAllStringSubmatch(qdf, -1) {
		for c := range strings.FieldsSeq(m[1]) {
			if v, err := strconv.ParseFloat(c, 64); err == nil && v != 0 && v != 1 {
				add("ink of " + m[1])
			}
		}
	}
	return out
}

// decoded is a shown string of two bytes a character, given as a literal with
// escapes or in hexadecimal.
func decoded(s, hexadecimal string) string {
	b, _ := hex.DecodeString(hexadecimal)
	for i := 0; i < len(s); i++ {
		if s[i] != '\\' || i+1 == len(s) {
			b = append(b, s[i])
			continue
		}
		i++
		if octal := regexp.MustCompile(`^[0-7]{1,3}`).FindString(s[i:]); octal != "" {
			n, _ := strconv.ParseUint(octal, 8, 8)
			b = append(b, byte(n))
			i += len(octal) - 1
			continue
		}
		if c, ok := map[byte]byte{'n': '\n', 'r': '\r', 't': '\t', 'b': '\b', 'f': '\f'}[s[i]]; ok {
			b = append(b, c)
			continue
		}
		b = append(b, s[i])
	}
	var units []uint16
	for i := 0; i+1 < len(b); i += 2 {
		units = append(units, uint16(b[i])<<8|uint16(b[i+1]))
	}
	return string(utf16.Decode(units))
}

// words lists all words of a page.
func (p Page) words() []Word {
	var out []Word
	for _, b := range p.Blocks {
		for _, l := range b.Lines {
			out = append(out, l.Words...)
		}
	}
	return out
}

func (p Page) placeFindings(margin float64) []string {
	var out []string
	words := p.words()
	for i, a := range words {
		if a.XMin < margin-0.5 || a.XMax > p.Width-margin+0.5 || a.YMin < margin-3 || a.YMax > p.Height-margin+3 {
			out = append(out, fmt.Sprintf("%q leaves the margin", a.Text))
		}
		for _, b := range words[:i] {
			// A quarter of the box above and below is what no letter of ours fills.
			da, db := (a.YMax-a.YMin)/4, (b.YMax-b.YMin)/4
			if a.XMin < b.XMax-0.5 && b.XMin < a.XMax-0.5 && a.YMin+da < b.YMax-db && b.YMin+db < a.YMax-da {
				out = append(out, fmt.Sprintf("%q stands on %q", a.Text, b.Text))
			}
		}
	}
	return out
}

// unitSigns are those of ISO 80000 that stand on these papers.
var unitSigns = regexp.MustCompile(`^(mm|cm|m|µm|in|ft|g|kg|mL|L|h|min|d|lux|%|°C|°F|threads/cm|g/m²|kg/m³)[.,;)]*$`)

func (p Page) breakFindings() []string {
	var out []string
	for _, b := range p.Blocks {
		for i := 1; i < len(b.Lines); i++ {
			above, below := b.Lines[i-1].Words, b.Lines[i].Words
			if len(above) == 0 || len(below) == 0 {
				continue
			}
			last, first := above[len(above)-1], below[0]
			if first.YMin < last.YMax-2 || first.XMin > above[0].XMin+1 {
				continue // beside it, or a column of its own
			}
			end, begin := last.Text, first.Text
			digit := func(s string, at int) bool { return len(s) > 0 && s[at] >= '0' && s[at] <= '9' }
			switch {
			case digit(end, len(end)-1) && unitSigns.MatchString(begin):
				out = append(out, fmt.Sprintf("a line ends between %q and %q", end, begin))
			case strings.HasSuffix(end, "\u2044"), strings.HasPrefix(begin, "\u2044"):
				out = append(out, fmt.Sprintf("a fraction is broken: %q, %q", end, begin))
			case strings.Contains(end, "://") && !strings.HasSuffix(end, "/") && !strings.HasSuffix(end, ".") && strings.ToUpper(begin) == begin && !strings.Contains(begin, " ") && strings.ContainsAny(begin, "/0123456789") && strings.ToUpper(end) == end && len(below) == 1 && !strings.Contains(begin, "-"):
				out = append(out, fmt.Sprintf("an address is broken: %q, %q", end, begin))
			}
		}
	}
	return out
}
