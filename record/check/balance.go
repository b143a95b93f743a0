package check

import (
	"time"

	"backleaf/record"
	"backleaf/record/balance"
)

// Balance says what is reckoned of the balance of a panel as it stands, for a
// reader of its record: the bow that coats and cloth may make over height and
// width, what the picture may add, what a change of the air does, and on what
// assumptions that rests. It gives no verdict.
func Balance(w *record.Workshop, p *record.Panel) []record.Said {
	s := newSubject(w, p, time.Time{})
	panel := s.reckoned()[0]
	j := balance.Judge(&panel)
	if j.Outcome == balance.CannotJudge {
		return []record.Said{record.Say("cannot-" + string(j.Cannot))}
	}
	var out []record.Said
	for _, b := range []balance.Bow{j.Work.Height, j.Work.Width} {
		out = append(out, reckonedBow("reckoned-pull", b))
	}
	if b := *j.Picture.Worst(); j.PictureCannot == "" && b.BowMicrons.Most() > 0 {
		out = append(out, reckonedBow("reckoned-picture", b))
	}
	if m := balance.MoistureOf(&panel, swing); m.Cannot == "" && m.Grade > balance.Even {
		bow, span, over := worst(m.Height, m.Width, &panel)
		out = append(out, record.Say("reckoned-moisture", moistureValues(m, bow, span, over)...))
	}
	for _, lack := range []struct {
		is   bool
		code string
	}{{j.Lacks.Amounts, "reckoned-amounts"}, {j.Lacks.Binders, "reckoned-binders"}, {j.Lacks.Grain, "reckoned-grain"}} {
		if lack.is {
			out = append(out, record.Say(lack.code))
		}
	}
	if supposed := supposedOf(panel.Board.Supposed); supposed != nil {
		out = append(out, record.Say("reckoned-board", record.With("supposed", supposed)))
	}
	return out
}

// supposedOf lists what of the board nobody recorded.
func supposedOf(s balance.Supposed) (out []record.Code) {
	for _, x := range []struct {
		is   bool
		code record.Code
	}{{s.Plies, "plies"}, {s.Veneers, "veneers"}, {s.Species, "wood"}, {s.Skins, "skins"}} {
		if x.is {
			out = append(out, x.code)
		}
	}
	return out
}

// reckonedBow says one bow; one of next to nothing by another code.
func reckonedBow(code string, b balance.Bow) record.Said {
	if b.BowMicrons.Most() < 5 {
		code += "-none"
	}
	return record.Say(code, bowValues(&b, false)...)
}
