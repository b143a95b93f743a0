package keys

import (
	"fmt"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/paper"
	"backleaf/record/seal"
	"backleaf/record/tell"
)

// Sheet draws the page from which a key can be made again, as PDF/A-1b. Whoever
// reads it signs as the studio.
func Sheet(c *tell.Catalogue, s record.Studio, k seal.Key, now time.Time) ([]byte, error) {
	say := func(code string) string { return tell.Say(c, record.Say(code)) }
	const margin, symbolMM = 25.0, 60.0
	width, height := 210.0, 297.0
	if s.Paper == "letter" {
		width, height = 215.9, 279.4
	}
	d := &paper.Document{Info: paper.Info{Title: say("key-sheet-of"), Author: s.Maker, Created: now}}
	f := &paper.Flow{Next: func() paper.Frame {
		return paper.Frame{Page: d.Page(width, height), X: margin, Y: margin, W: width - 2*margin, H: height - 2*margin}
	}}
	plain := func(code string) { f.Text(paper.Span{Style: paper.Body, Text: say(code)}); f.Gap(2) }
	head := func(code string) { f.Heading(7, 1.5, paper.Span{Style: paper.Heading, Text: say(code)}) }
	line := func(style paper.Style, code string) { f.Text(paper.Span{Style: style, Text: say(code)}) }

	line(paper.Title, "key-sheet")
	f.Gap(1)
	whose := tell.Say(c, record.Say("key-sheet-whose", record.With("maker", s.Maker), record.With("mark", s.Mark)))
	f.Text(paper.Span{Style: paper.Aside, Text: whose, Field: "maker"})
	if k.Public().IsDemo() {
		f.Gap(3)
		line(paper.Strong, "key-sheet-demo")
	}
	f.Gap(5)
	f.Rule()
	f.Gap(4)
	line(paper.Strong, "key-sheet-warning")
	f.Gap(2)
	plain("key-sheet-keep")

	head("key-sheet-letters")
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
	line(paper.Small, "key-sheet-signs")

	head("key-sheet-symbol")
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

	head("key-sheet-use")
	plain("key-sheet-how")
	head("key-sheet-fingerprint")
	f.Text(paper.Span{Style: paper.Digest, Text: k.Public().Fingerprint().Groups()})
	f.Gap(2)
	f.Text(paper.Span{Style: paper.Small, Text: tell.Say(c, record.Say("key-sheet-printed", record.With("at", record.Moment(now))))})
	if err := f.Done(); err != nil {
		return nil, fmt.Errorf("cannot draw the recovery sheet: %w", err)
	}
	return d.Finish(paper.A1b)
}
