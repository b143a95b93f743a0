package paper_test

import (
	"errors"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"backleaf/record/paper"
)

func TestClean(t *testing.T) {
	for in, want := range map[string]string{
		"Müller":                   "Müller",
		"Mu\u0308ller":             "Müller", // Unicode NFC
		"a\tb\r\nc\rd\u2028e":      "a b\nc\nd\ne",
		"co\u00ADop\u200B\uFEFF":   "coop",
		"\u202Egnirts\u202C":       "[U+202E]gnirts[U+202C]",
		"\u2066x\u2069":            "[U+2066]x[U+2069]",
		"\x1b[31m\x00":             "[U+001B][31m[U+0000]",
		"a\xffb":                   "a[byte FF]b",
		"\uE000\uFFFE\U000E0041":   "[U+E000][U+FFFE][U+E0041]",
		"(a) Tj ET Q <<>> endobj ": "(a) Tj ET Q <<>> endobj ",
	} {
		if got := paper.Clean(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
	if got := paper.OneLine("  a \n\t b\n"); got != "a b" {
		t.Errorf("one line: %q", got)
	}
}

func TestUnprintable(t *testing.T) {
	for text, r := range map[string]rune{
		"clef \U0001D11E":    0x1D11E, // beyond U+FFFF
		"\u1200 in Ethiopic": 0x1200,
		"שלום":               0x5E9, // would come out backwards
		"سلام":               0x633,
	} {
		_, err := paper.Compose(50, paper.Span{Style: paper.Body, Text: text, Field: "title"})
		var g *paper.GlyphError
		if !errors.As(err, &g) || g.Rune != r || g.Field != "title" {
			t.Errorf("%q: %v", text, err)
		}
	}
}

func TestLines(t *testing.T) {
	wide := func(s string) float64 { return compose(t, 0, paper.Span{Style: paper.Body, Text: s}).WidthMM() }
	for name, c := range map[string]struct {
		width float64
		text  string
		lines int
	}{
		"nothing":                                    {50, "", 0},
		"one line":                                   {0, "no limit at all, however long it may be", 1},
		"two words":                                  {wide("seven ") + 0.1, "seven seven", 2},
		"a break is a break":                         {100, "a\n\nb", 3},
		"the last break":                             {100, "a\nb\n", 2},
		"a unit keeps to its number":                 {wide("it is 21") + 0.1, "it is 21" + paper.ThinSpace + "°C", 2},
		"a number does not break at -":               {wide("no KB26-0142") + 0.1, "no KB26-0142-1", 2},
		"a compound breaks at -":                     {wide("a well-") + 0.1, "a well-kept", 2},
		"a word that is too long breaks":             {wide("xxxxxxxxxx") + 0.1, strings.Repeat("x", 25), 3},
		"a unit keeps to its number after any space": {wide("it is 200") + 0.1, "it is 200 lux", 2},
		"and before a sign that is held to it":       {wide("3 mm /") + 0.1, "it is 3 mm" + paper.NoBreakSpace + "/", 2},
		"a number keeps to its thousands":            {wide("it is 14") + 0.1, "it is 14 000", 2},
		"an address breaks after /":                  {wide("https://x.example/p/a") + 0.1, "https://x.example/p/abcdefgh", 2},
		"one letter a line":                          {0.1, "abc", 3},
	} {
		b := compose(t, c.width, paper.Span{Style: paper.Body, Text: c.text})
		if b.Lines() != c.lines {
			t.Errorf("%s: %d lines, want %d", name, b.Lines(), c.lines)
		}
	}
}

// Widths of the font program itself: Liberation Serif is metric-compatible
// with Times (published widths in thousandths of an em, from memory of the
// standard fonts' metrics: a 444, M 889, 0 500).
func TestWidths(t *testing.T) {
	for s, thousandths := range map[string]float64{"a": 444, "M": 889, "0": 500, "000": 1500} {
		st := paper.Body.Scaled(7.2)
		if got, want := compose(t, 0, paper.Span{Style: st, Text: s}).WidthMM(), thousandths/1000*25.4; got-want > 0.05 || want-got > 0.05 {
			t.Errorf("%s: %.2f mm, want %.2f", s, got, want)
		}
	}
}

func TestFit(t *testing.T) {
	long := paper.Span{Style: paper.Title, Text: "A very long title that will not stand on two lines at its full size", Field: "title"}
	b, err := paper.Fit(100, 20, 0.5, long)
	if err != nil || b.HeightMM() > 20 || b.WidthMM() > 100 {
		t.Errorf("%v, %.1f × %.1f", err, b.WidthMM(), b.HeightMM())
	}
	if _, err = paper.Fit(20, 5, 0.5, long); !errors.Is(err, paper.ErrTooLong) || !strings.HasPrefix(err.Error(), "title: ") {
		t.Errorf("what does not fit: %v", err)
	}
	// A smaller size before a broken word.
	b, err = paper.Fit(30, 30, 0.3, paper.Span{Style: paper.Title, Text: "Unbreakable"})
	if err != nil || b.Lines() != 1 {
		t.Errorf("%v, %d lines", err, b.Lines())
	}
}

func TestStyleWithoutSize(t *testing.T) {
	if _, err := paper.Compose(50, paper.Span{Text: "x"}); err == nil {
		t.Error("text was set in no size")
	}
}

func TestSplit(t *testing.T) {
	b := compose(t, 40, paper.Span{Style: paper.Body, Text: strings.Repeat("word ", 60)})
	head, tail := b.Split(b.HeightMM() / 2)
	if head.Lines() == 0 || tail.Lines() == 0 || head.Lines()+tail.Lines() != b.Lines() || head.HeightMM() > b.HeightMM()/2+1e-9 {
		t.Errorf("%d lines split into %d and %d", b.Lines(), head.Lines(), tail.Lines())
	}
}

// No text is ever lost: what is drawn, put together again, is what was given,
// apart from spaces, and no line is wider than asked unless one letter is.
func checkComposed(t *testing.T, text string, width float64) {
	b, err := paper.Compose(width, paper.Span{Style: paper.Body, Text: text})
	var g *paper.GlyphError
	if errors.As(err, &g) {
		return
	}
	if err != nil {
		t.Fatal(err)
	}
	page := paper.Drawing{WidthMM: 100, HeightMM: 100, Shapes: []paper.Shape{paper.Text{Block: b}}}
	var got strings.Builder
	for _, s := range spans(t, page.SVG()) {
		if got.WriteString(s.Text); s.X+s.Length > width+0.01 && len([]rune(s.Text)) > 1 && s.X > 0.001 {
			t.Errorf("%q ends at %.2f of %.2f mm", s.Text, s.X+s.Length, width)
		}
	}
	bare := func(s string) string {
		return norm.NFC.String(strings.Map(func(r rune) rune {
			if unicode.IsSpace(r) {
				return -1
			}
			return r
		}, s))
	}
	if bare(got.String()) != bare(paper.Clean(text)) {
		t.Errorf("%q became %q", text, got.String())
	}
}

func TestNothingIsLost(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	letters := []rune("abc déé -–/.1⁄2 Ωж\u0301\u202f\u00a0\n☼")
	for range 300 {
		var b strings.Builder
		for range r.IntN(60) {
			b.WriteRune(letters[r.IntN(len(letters))])
		}
		checkComposed(t, b.String(), 1+40*r.Float64())
	}
}

func FuzzCompose(f *testing.F) {
	f.Add("Towards Evening 1\u20442", 40.0)
	f.Add("\u202E\u0301\xff\n\n ", 0.0)
	f.Add("(x) Tj /F1 <</S>> ]]>&amp;", -1.0)
	f.Fuzz(func(t *testing.T, text string, width float64) {
		if len(text) > 2000 || width != width {
			t.Skip()
		}
		if c := paper.Clean(text); !utf8.ValidString(c) || paper.Clean(c) != c {
			t.Fatalf("%q is not clean", c)
		}
		if width <= 0 {
			width = 1e6
		}
		checkComposed(t, text, width)
	})
}

// What is broken says so; an address that goes on after "/" or "." is not.
func TestBroken(t *testing.T) {
	width := compose(t, 0, paper.Span{Style: paper.Body, Text: "https://panels.example/"}).WidthMM() + 0.1
	for text, want := range map[string]bool{
		"Record: https://panels.example/record/of/KB2601421": false,
		"https://panels.example.org.of.a.studio/KB2601421":   false,
		"https://panelsofastudiowithaverylongname.example/x": true,
		"a well-kept panel of linen on plywood":              false,
		"xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx":   true,
	} {
		if b := compose(t, width, paper.Span{Style: paper.Body, Text: text}); b.Broken() != want {
			t.Errorf("%q: broken %v", text, b.Broken())
		}
	}
}
