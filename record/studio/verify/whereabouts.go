package verify

import (
	"backleaf/record"
	"backleaf/record/deed"
)

// Whereabouts says what a buyer must hear of a panel: that it is stolen, lost,
// or was discarded.
func Whereabouts(p *record.Panel) (out []deed.Result) {
	if h, away := p.Away(); away && (h.Body.How == "theft" || h.Body.How == "loss") {
		code := "panel-stolen"
		if h.Body.How == "loss" {
			code = "panel-lost"
		}
		out = append(out, deed.Found(deed.Fails, code, record.With("when", h.At), record.With("entry", record.EntryRef(h.Seq))))
	}
	if d, ok := p.Discarded(); ok {
		out = append(out, deed.Found(deed.Fails, "panel-discarded", record.With("when", d.At), record.With("entry", record.EntryRef(d.Seq)), record.With("because", d.Body.Because)))
	}
	return out
}
