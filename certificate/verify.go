package certificate

import (
	"encoding/base64"
	"math"
	"strings"

	"backleaf/record/paper"
	"backleaf/record/seal"
)

// Sizes of the symbols, in millimetres and bytes.
const (
	linkSideMM = 21.0
	// The large symbol has modules of whole dots at 300 and 600 dpi: the usual
	// size if it stays within bigSideMM, else the least.
	bigSideMM   = 50.5
	groupsALine = 8
	base64ALine = 44
	// The longest line of the command in type for digests: 50 letters of 0.6 em.
	longestLineMM = 50.05 * 0.6 * 7 * mmPerPt
	digestNameMM  = 23.5
)

// command checks the record. It is one command in two lines.
const command = "openssl pkeyutl -verify -pubin -inkey studio.pem \\\n  -rawin -in record.json -sigfile record.sig"

// verify is the foot of the page: how to check it.
func (c *content) verify(s sheet, _ plan) (part, error) {
	textWidth, left := s.inner(), c.small.side-quietMM+3
	if c.big.side > 0 {
		textWidth -= c.big.side - quietMM + 4
	}
	s.scale = min(s.scale, 0.95)
	col := s.column(textWidth - left)
	col.text(paper.Span{Style: s.heading(), Text: string(c.words.Verify)})
	col.gap(1)
	style := paper.Digest.Scaled(min(0.93, (col.width-digestNameMM)/longestLineMM))
	mono := func(name, text string) {
		col.pair(digestNameMM, paper.Span{Style: s.name(), Text: name}, paper.Span{Style: style, Text: text})
		col.gap(0.7)
	}
	if c.url != "" {
		mono(string(c.words.Link), c.url)
	}
	if len(c.in.Deed.Record) > 0 && !c.in.Preview {
		mono(string(c.words.Record), groups(seal.DigestOf(c.in.Deed.Record)))
	}
	if c.signed() {
		mono(string(c.words.Signature), inLines(base64.StdEncoding.EncodeToString(c.in.Deed.Signature), base64ALine))
		mono(string(c.words.Key), groups(c.in.Deed.Key.Fingerprint()))
		mono(string(c.words.Test), command)
	} else {
		why := c.words.Unsigned
		if c.in.Preview {
			why = c.words.Unissued
		}
		col.pair(digestNameMM, paper.Span{Style: s.name(), Text: string(c.words.Signature)}, paper.Span{Style: s.small(), Text: string(why)})
		col.gap(0.7)
	}
	col.gap(0.6)
	switch {
	case c.signed():
		col.text(paper.Span{Style: s.small().Scaled(0.92), Text: string(c.words.VerifyText) + " " + string(c.words.Symbol)})
	case len(c.in.Deed.Record) > 0 && !c.in.Preview:
		col.text(paper.Span{Style: s.small().Scaled(0.92), Text: string(c.words.VerifyNone)})
	}
	if col.err != nil {
		return part{}, col.err
	}
	const above = 2.5 // of what stands below the rule
	height := above + math.Max(col.height, math.Max(c.big.side, c.small.side)-2*quietMM)
	return part{height, func(y float64) ([]paper.Shape, error) {
		out := []paper.Shape{hairline(s.left, y, s.left+s.inner(), y)}
		y += above
		out = append(out, paper.Group{X: s.left - quietMM, Y: y - quietMM, Shapes: []paper.Shape{c.small.shape}})
		if c.url != "" {
			at := c.small.side - 2*quietMM
			out = append(out, paper.Link{X: s.left, Y: y, W: at, H: at, URL: c.url})
		}
		out = append(out, col.at(s.left+left, y-1))
		if c.big.side > 0 {
			out = append(out, paper.Group{X: s.left + s.inner() - c.big.side + quietMM, Y: y - quietMM, Shapes: []paper.Shape{c.big.shape}})
		}
		return out, nil
	}}, nil
}

// quietMM is the part of the empty border of a symbol that may lie over the
// edge of its column: the border is white, and so are the margins.
const quietMM = 1.5

// Modules of whole printer dots.
var (
	leastModule = math.Ceil(paper.MinModuleMM/(25.4/300)) * 25.4 / 300
	usualModule = math.Round(0.5/(25.4/300)) * 25.4 / 300
)

// A symbol is a QR symbol drawn at 0, 0, of that side with its quiet zone.
type symbol struct {
	shape paper.Shape
	side  float64
}

// statementSymbol draws the signed statement, level M.
func statementSymbol(text string) (symbol, error) {
	s, err := paper.NewSymbol(text, paper.LevelM)
	if err != nil {
		return symbol{}, err
	}
	side := s.SideMM(usualModule)
	if side > bigSideMM {
		side = s.SideMM(leastModule)
	}
	return fitted(s, side)
}

// linkSymbol draws the link, level Q as on a label.
func linkSymbol(text string) (symbol, error) {
	s, err := paper.NewSymbol(text, paper.LevelQ)
	if err != nil {
		return symbol{}, err
	}
	return fitted(s, math.Max(linkSideMM, s.SideMM(leastModule)))
}

func fitted(s paper.Symbol, side float64) (symbol, error) {
	shape, side, err := s.Fit(0, 0, side+1e-6)
	return symbol{shape, side}, err
}

// groups sets a digest in two lines.
func groups(d seal.Digest) string {
	g := strings.Fields(d.Groups())
	return strings.Join(g[:groupsALine], " ") + "\n" + strings.Join(g[groupsALine:], " ")
}

func inLines(s string, n int) string {
	var lines []string
	for ; len(s) > n; s = s[n:] {
		lines = append(lines, s[:n])
	}
	return strings.Join(append(lines, s), "\n")
}
