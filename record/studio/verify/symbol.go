package verify

import (
	"context"
	"strings"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/pattern"
)

var arkPrefix = pattern.Of(`(?i)ark:/?([0-9bcdfghjkmnpqrstvwxz]{5})/`)

// maxSymbol is the most that a QR symbol holds: version 40, level L, digits
// (ISO/IEC 18004, table 7).
const maxSymbol = 7089

// Typed is the number in the text of a symbol: what a link ends with, or the
// first line of what holds the facts themselves.
func Typed(text string) string {
	text, _, _ = strings.Cut(strings.TrimPrefix(strings.TrimSpace(text), "\ufeff"), "\n")
	return text[strings.LastIndexAny(text, "/=")+1:]
}

// symbol checks what the QR symbol of a label or certificate says: a number,
// or a link that ends with one.
func (c Checker) symbol(ctx context.Context, text string) (of []record.Number, out []deed.Result, err error) {
	say := func(v deed.Verdict, code string, values ...record.Value) {
		out = append(out, deed.Found(v, code, values...))
	}
	if len(text) > maxSymbol {
		say(deed.Unknown, "line-too-long", record.With("most", maxSymbol))
		return nil, out, nil
	}
	naan := ""
	if m := arkPrefix().FindStringSubmatch(text); m != nil {
		naan = strings.ToLower(m[1])
	}
	for _, w := range c.Witnesses {
		if w.NAAN() != "" {
			naan = w.NAAN()
		}
	}
	typed := Typed(text)
	n, err := record.ParseNumber(typed, naan)
	switch {
	case err != nil && !meantNumber().MatchString(typed):
		return nil, []deed.Result{*noPaper("", "text").Unread}, nil
	case err != nil:
		say(deed.Fails, "symbol-wrong", deed.Why(err))
		return nil, out, nil
	}
	say(deed.Holds, "symbol-well-formed", record.With("panel", n))
	for _, w := range c.Witnesses {
		known, err := w.Symbol(ctx, n, text)
		if err != nil {
			return nil, nil, err
		}
		out = append(out, known...)
	}
	if len(c.Witnesses) == 0 {
		say(deed.Unknown, "no-witness-of-panel")
	}
	say(deed.Unknown, "symbol-can-be-copied")
	return []record.Number{n}, out, nil
}
