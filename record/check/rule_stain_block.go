package check

import (
	"slices"

	"backleaf/record"
	"backleaf/record/trade"
)

var stainBlock = Rule{
	Name: "stain-block",
	Source: "a paint maker's technical notes on support-induced discolouration and on plywood (two coats of gloss medium first; " +
		"no barrier required under opaque paint); a panel maker's note (a ground alone is not enough)",
	Severity: Information,
	judge:    judgeStainBlock,
}

// judgeStainBlock asks of acrylic paint alone: under oil no stain shows.
func judgeStainBlock(s *subject) []verdict {
	var vs []verdict
	for _, face := range faces {
		for _, paint := range filter(s.on(face), isPaint) {
			if acrylic := paint.made.Contains(record.Acrylic); acrylic != record.No {
				vs = append(vs, s.blocked(face, paint, acrylic))
			}
		}
	}
	return orNone(vs, "no-acrylic-paint")
}

// blocked judges what lies under an acrylic paint.
func (s *subject) blocked(face record.Face, paint film, acrylic record.Answer) verdict {
	at := filmSeqs(paint)
	sure, maybe := 0, 0
	stains := trade.Stains(trade.BoardStrata(s.board().Kind))
	for _, f := range s.on(face) {
		under := laidBefore(f, paint)
		switch {
		case isCloth(f):
			stains = some(stains, all(under, trade.Stains(f.strataOf())))
		case isCoat(f):
			switch all(under, f.blocks()) {
			case record.Yes:
				sure, maybe = sure+1, maybe+1
				at = append(at, f.Layer.Seq)
			case record.Unknown:
				maybe++
				at = append(at, f.Layer.Seq)
			}
		}
	}
	good := record.Answer(record.Unknown)
	switch {
	case sure >= 2:
		good = record.Yes
	case maybe < 2:
		good = s.unless()
	}
	o := outcome(all(acrylic, stains), good)
	return say(o, at, "stain-blocked"+suffix[o], what(paint), record.With("coats", sure))
}

// blocks answers whether a coat was laid as a stain block, or is of a material
// meant as one.
func (f film) blocks() record.Answer {
	ms, known := f.materials()
	meant := record.Answer(record.Unknown)
	if known {
		meant = is(!slices.ContainsFunc(ms, func(m *record.Material) bool { return !slices.Contains(m.Uses, "stain-block") }))
	}
	return some(laidAs(f, record.StainBlock), all(not(isGround(f)), meant))
}
