package planning

import (
	"slices"
	"strconv"

	"backleaf/record"
	"backleaf/record/plan"
	"backleaf/record/plan/worksheet"
	"backleaf/record/tell"
)

// Spent is one act of a recipe on panels: what it would take, beside what the
// record says was laid.
type Spent struct {
	Step    Step        `json:"-"`
	Act     string      `json:"act"`
	Planned plan.Amount `json:"planned"`
	Used    plan.Amount `json:"used"`
	Not     int         `json:"not_done"`   // panels on which it is not recorded
	Open    int         `json:"not_stated"` // panels on which no amount is recorded
	Code    string      `json:"code"`       // a key of [tell.PlanWords.Spent]
	Percent int         `json:"percent,omitzero"`
}

// Compare sets what a recipe takes against what was used on panels, act by
// act, and names after them what the recipe does not hold. The workshop must
// hold the panels that shared an entry with these.
func Compare(w *record.Workshop, ns []record.Number, recipe []Step, c *tell.Catalogue) []Spent {
	var out []Spent
	for _, s := range recipe {
		if wet(s) {
			out = append(out, Spent{Step: s, Act: s.Name(c)})
		}
	}
	held := len(out)
	for _, n := range ns {
		p := w.Panel(n)
		done := slices.DeleteFunc(fromPanel(w, p, false), func(s Step) bool { return !wet(s) })
		done = apart(done, out[:held])
		for i := range out[:held] {
			out[i].Planned = more(out[i].Planned, on(w, p, out[i].Step))
			at := slices.IndexFunc(done, func(s Step) bool { return alike(s, out[i].Step) })
			if at < 0 {
				out[i].Not++
				continue
			}
			out[i].lay(w, p, done[at])
			done = slices.Delete(done, at, at+1)
		}
		for _, s := range done {
			at := slices.IndexFunc(out[held:], func(x Spent) bool { return alike(x.Step, s) })
			if at < 0 {
				at = len(out) - held
				out = append(out, Spent{Step: s, Act: s.Name(c)})
			}
			out[held+at].lay(w, p, s)
		}
	}
	for i := range out {
		out[i].judge(i < held, len(ns))
	}
	return out
}

func wet(s Step) bool { return s.Do == plan.Coating || s.Do == plan.LayingCloth }

func alike(a, b Step) bool {
	x, y := slices.Sorted(slices.Values(a.Faces)), slices.Sorted(slices.Values(b.Faces))
	return same(a, b) && slices.Equal(x, y)
}

// same reports two acts that may differ in their faces only.
func same(a, b Step) bool {
	return a.Do == b.Do && (a.Purpose == b.Purpose || a.Do == plan.LayingCloth)
}

// apart parts what was done in one act, where a recipe does it face by face.
func apart(done []Step, recipe []Spent) (out []Step) {
	for _, s := range done {
		rest, parts := slices.Clone(s.Faces), []Step(nil)
		for _, x := range recipe {
			in := func(f record.Face) bool { return slices.Contains(x.Step.Faces, f) }
			left := slices.DeleteFunc(slices.Clone(rest), in)
			if same(s, x.Step) && len(left) < len(rest) && len(left)+len(x.Step.Faces) == len(rest) {
				part := s
				part.Faces = x.Step.Faces
				rest, parts = left, append(parts, part)
			}
		}
		if len(rest) > 0 || slices.ContainsFunc(recipe, func(x Spent) bool { return alike(s, x.Step) }) {
			parts = []Step{s}
		}
		out = append(out, parts...)
	}
	return out
}

// on is what a step lays on one panel; nothing where its size or the usual
// amount is not known.
func on(w *record.Workshop, p *record.Panel, s Step) plan.Amount {
	h, ok1 := p.Size().Height.Micrometers()
	b, ok2 := p.Size().Width.Micrometers()
	if !ok1 || !ok2 {
		return plan.Amount{}
	}
	area, ok := plan.Spread([]plan.Panel{{Height: h, Width: b, Thickness: thickness(w, p.Size(), p.Cut().Board, p.Cut().BoardAs), Count: 1}}, plan.Act{Faces: faces(s.Faces)})
	if !ok {
		return plan.Amount{}
	}
	return plan.Amount{Milligrams: s.Spread.Milligrams * area / 1e6, Microliters: s.Spread.Microliters * area / 1e6}
}

func more(a, b plan.Amount) plan.Amount {
	return plan.Amount{Milligrams: a.Milligrams + b.Milligrams, Microliters: a.Microliters + b.Microliters}
}

func (x *Spent) lay(w *record.Workshop, p *record.Panel, s Step) {
	laid := on(w, p, s)
	if laid == (plan.Amount{}) {
		x.Open++
	}
	x.Used = more(x.Used, laid)
}

// judge says how the two compare. Less than a twentieth apart is as planned
// (common practice: a tray is not weighed more closely).
func (x *Spent) judge(held bool, of int) {
	planned, used := x.Planned.Milligrams, x.Used.Milligrams
	if planned == 0 || used == 0 {
		planned, used = x.Planned.Microliters, x.Used.Microliters
	}
	switch {
	case !held:
		x.Code = "beyond"
	case x.Not == of:
		x.Code = "not-done"
	case x.Not > 0:
		x.Code = "part-done"
	case x.Open > 0 || planned == 0 || used == 0:
		x.Code = "not-stated"
	default:
		x.Percent = int(100*used/planned+0.5) - 100
		switch {
		case x.Percent >= 5:
			x.Code = "more"
		case x.Percent <= -5:
			x.Code, x.Percent = "less", -x.Percent
		default:
			x.Code, x.Percent = "even", 0
		}
	}
}

// Say puts the comparison in words.
func (x Spent) Say(c *tell.Catalogue) string {
	none := string(c.Lines.T("not-recorded"))
	amount := func(a plan.Amount) string {
		if a == (plan.Amount{}) {
			return none
		}
		return worksheet.Amount(c, a)
	}
	return c.Fill(c.Plan.Spent[x.Code], tell.Told("act", x.Act), tell.Told("planned", amount(x.Planned)), tell.Told("used", amount(x.Used)),
		tell.Told("percent", c.Measure(strconv.Itoa(x.Percent), "%")), record.With("not", x.Not))
}
