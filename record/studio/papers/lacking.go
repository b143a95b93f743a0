package papers

import (
	"slices"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/tell"
)

// lacking says what the first page of a certificate lacks because nobody
// recorded it, and which layers are dated before the board was cut: a paper
// that went out has to be taken back to put that right.
func lacking(v *studio.View, p *record.Panel, c *tell.Catalogue) (ws []record.Said) {
	var lacks []string
	for _, g := range v.Shop.Gaps(p) {
		if g.Topic == "identification" || g.Said.Code == "gap-size" || g.Said.Code == "gap-thickness" {
			lacks = append(lacks, tell.Say(c, g.Said))
		}
	}
	if lacks != nil {
		ws = append(ws, record.Say("certificate-lacks", tell.Told("what", c.List(lacks))))
	}
	var early []record.EntryRef
	for _, l := range p.Layers() {
		if bench.BeforeCut(v, l.At, p) && !slices.Contains(early, record.EntryRef(l.Seq)) {
			early = append(early, record.EntryRef(l.Seq))
		}
	}
	if early != nil {
		ws = append(ws, record.Say("layer-before-cutting", record.With("entries", early), record.With("entry", early[0])))
	}
	return ws
}
