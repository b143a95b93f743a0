package certificate

import (
	"encoding/base64"
	"math"
	"strings"

	"backleaf/record/paper"
	"backleaf/record/seal"
)

// Measures of the check block, in characters and millimetres.
const (
	groupsALine = 8
	base64ALine = 44
)

// command checks the record. It is one command in two lines.
const command = "openssl pkeyutl -verify -pubin -inkey studio.pem \\\n  -rawin -in record.json -sigfile record.sig"

// check is the foot of the reverse: how to check the certificate. A preview
// keeps the same room.
func (c *content) check(s sheet) *column {
	col := &column{width: s.inner()}
	textWidth := s.inner()
	if c.proof {
		textWidth -= bigSideMM - 2*quietMM + 4
	}
	say := &column{width: textWidth}
	say.text(paper.Span{Style: heading, Text: string(c.words.T("verify"))})
	say.gap(1)
	if c.proof {
		ask := string(c.words.T("verify-plain"))
		if known(c.in.Workshop.Studio.Contact) {
			ask += " " + string(c.words.T("verify-ask"))
		}
		say.text(paper.Span{Style: text, Text: ask})
		say.gap(1.4)
	}
	mono := func(title, text string) {
		say.pair(nameW, paper.Span{Style: sized(name, 8.5), Text: title}, paper.Span{Style: digest, Text: text})
		say.gap(0.9)
	}
	later := "\n" + paper.NoBreakSpace // two lines, as what will stand here
	signature, key := string(c.words.T("unissued"))+later, string(c.words.T("unissued"))+later
	if c.signed() {
		signature, key = inLines(base64.StdEncoding.EncodeToString(c.in.Deed.Signature), base64ALine), groups(c.in.Deed.Key.Fingerprint())
	}
	if c.url != "" {
		mono(string(c.words.T("link")), c.teller.LinkInLetters())
	}
	last := c.words.T("verify-none")
	if c.proof {
		mono(string(c.words.T("signature")), signature)
		mono(string(c.words.T("key")), key)
		mono(string(c.words.T("test")), command)
		last = c.words.T("verify-text")
	} else {
		say.pair(nameW, paper.Span{Style: sized(name, 8.5), Text: string(c.words.T("signature"))}, paper.Span{Style: text, Text: string(c.words.T("unsigned"))})
	}
	say.gap(0.6)
	say.text(paper.Span{Style: text, Text: string(last)})
	if say.err != nil {
		col.fail(say.err)
		return col
	}
	const above = 3.0 // of what stands below the rule
	col.height = above + say.height
	col.shapes = append(col.shapes, hairline(0, 0, col.width, 0), say.at(0, above-0.8))
	if c.proof {
		const room = bigSideMM - 2*quietMM
		x := s.inner() - room
		caption, err := paper.Compose(room, paper.Span{Style: note.Italic(), Text: string(c.words.T("symbol"))})
		if err != nil {
			col.fail(err)
			return col
		}
		y := above + caption.HeightMM() + 0.8
		col.shapes = append(col.shapes, paper.Text{X: s.inner(), Y: above - 0.8, Block: caption, Align: paper.Right})
		col.height = math.Max(col.height, y+room)
		if c.signed() {
			col.shapes = append(col.shapes, paper.Group{X: s.inner() - c.big.side + c.big.quiet, Y: y - c.big.quiet, Shapes: []paper.Shape{c.big.shape}})
		} else {
			col.shapes = append(col.shapes, corners(x, y, room, room))
		}
	}
	return col
}

// corners marks a rectangle by its four corners.
func corners(x, y, w, h float64) paper.Shape {
	const arm = 2.5
	var lines [][]paper.Point
	for _, k := range []struct{ x, y, dx, dy float64 }{{x, y, 1, 1}, {x + w, y, -1, 1}, {x, y + h, 1, -1}, {x + w, y + h, -1, -1}} {
		lines = append(lines, []paper.Point{{X: k.x + arm*k.dx, Y: k.y}, {X: k.x, Y: k.y}, {X: k.x, Y: k.y + arm*k.dy}})
	}
	return paper.Strokes{Lines: lines, WeightMM: 0.15}
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
