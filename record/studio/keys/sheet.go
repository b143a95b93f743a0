package keys

import (
	"fmt"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/paper"
	"backleaf/record/seal"
)

// Sheet draws the page from which a key can be made again, as PDF/A-1b. Whoever
// reads it signs as the studio.
func Sheet(s record.Studio, k seal.Key, now time.Time) ([]byte, error) {
	const margin, symbolMM = 25.0, 60.0
	width, height := 210.0, 297.0
	if s.Paper == "letter" {
		width, height = 215.9, 279.4
	}
	d := &paper.Document{Info: paper.Info{Title: "Recovery sheet of a signing key", Author: s.Maker, Created: now}}
	f := &paper.Flow{Next: func() paper.Frame {
		return paper.Frame{Page: d.Page(width, height), X: margin, Y: margin, W: width - 2*margin, H: height - 2*margin}
	}}
	plain := func(text string) { f.Text(paper.Span{Style: paper.Body, Text: text}); f.Gap(2) }
	head := func(text string) { f.Heading(7, 1.5, paper.Span{Style: paper.Heading, Text: text}) }

	f.Text(paper.Span{Style: paper.Title, Text: "Recovery sheet"})
	f.Gap(1)
	f.Text(paper.Span{Style: paper.Aside, Text: "of the key with which "}, paper.Span{Style: paper.Aside, Text: s.Maker, Field: "maker"},
		paper.Span{Style: paper.Aside, Text: ", mark " + s.Mark + ", signs the records of painting panels"})
	if k.Public().IsDemo() {
		f.Gap(3)
		f.Text(paper.Span{Style: paper.Strong, Text: "A demonstration: this key is public, and anyone can sign with it."})
	}
	f.Gap(5)
	f.Rule()
	f.Gap(4)
	f.Text(paper.Span{Style: paper.Strong, Text: "Whoever reads this page can sign as the studio."})
	f.Gap(2)
	plain("Keep it where you keep deeds and passports: dry, out of the light, away from the computer, in a closed envelope with your name over the flap. Tell one person you trust where it is. Do not photograph, scan or send it. Delete the file it was printed from.")

	head("The key in letters")
	columns := make([]paper.Column, 7)
	groups := strings.Fields(k.RecoveryText())
	style := paper.Digest.Scaled(1.9)
	for from := 0; from < len(groups); from += len(columns) {
		var numbers, cells [][]paper.Span
		for i := range columns {
			numbers = append(numbers, []paper.Span{{Style: paper.Small, Text: fmt.Sprint(from + i + 1)}})
			cells = append(cells, []paper.Span{{Style: style, Text: groups[from+i]}})
		}
		f.Row(columns, numbers...)
		f.Row(columns, cells...)
		f.Gap(2)
	}
	f.Text(paper.Span{Style: paper.Small, Text: "Only the letters A to Z and the figures 2 to 7 occur: what looks like 0, 1 or 8 is O, I or B. The last group checks the others."})

	head("The same as a symbol")
	symbol, err := paper.NewSymbol(k.RecoveryText(), paper.LevelQ)
	if err != nil {
		return nil, err
	}
	f.Keep(symbolMM)
	at := f.At()
	shape, side, err := symbol.Fit(at.X, at.Y, symbolMM)
	if err != nil {
		return nil, err
	}
	at.Page.Draw(shape)
	f.Skip(side)

	head("To use it")
	plain("Lay the studio’s book in place, then: backleaf studio key recover. It asks for the letters and writes the key file again. Without the program: the first thirteen groups are the 32 bytes of an Ed25519 seed (RFC 8032) in base32 (RFC 4648), which openssl reads once the sixteen bytes 302e020100300506032b657004220420 stand before them.")
	head("Fingerprint of the public key")
	f.Text(paper.Span{Style: paper.Digest, Text: k.Public().Fingerprint().Groups()})
	f.Gap(2)
	f.Text(paper.Span{Style: paper.Small, Text: "Printed on " + now.Format("2 January 2006") + ". When the key is retired or declared lost, destroy this page."})
	if err := f.Done(); err != nil {
		return nil, fmt.Errorf("cannot draw the recovery sheet: %w", err)
	}
	return d.Finish(paper.A1b)
}
