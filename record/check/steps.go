package check

import (
	"cmp"
	"slices"

	"backleaf/record"
	"backleaf/record/trade"
)

func (s *subject) step(t Task, entry int64, code string, values ...record.Value) Step {
	return Step{Panels: []record.Number{s.p.Number}, Batch: s.cut.Body.Batch, Task: t, Entry: entry, Said: record.Say(code, values...)}
}

// within sets the window of a step. An end that lies before the beginning is
// none: the step has to wait, and nothing is lost by it.
func (s *subject) within(st Step, w window) Step {
	st.From, st.Rests = w.from, w.rests
	if w.safe.After(w.from) {
		st.Safe = w.safe
	}
	if w.until.After(w.from) {
		st.Until = w.until
		st.Overdue = s.now.After(w.until)
	}
	return st
}

// steps lists what is next, by how far the work has come.
func (s *subject) steps() []Step {
	if len(s.films) == 0 && s.made {
		return []Step{s.step(TaskSeal, s.cut.Seq, "due-seal")}
	}
	painted := slices.ContainsFunc(s.films, isPaint)
	var steps []Step
	if !painted {
		steps = slices.Concat(s.pressStep(), s.trimStep(), s.answerStep())
	}
	if painted || slices.ContainsFunc(s.films, isVarnish) {
		return append(steps, s.finishSteps()...)
	}
	return append(steps, s.benchSteps()...)
}

// pressStep asks for a loose edge or cloth to be stuck down again.
func (s *subject) pressStep() []Step {
	for _, v := range judgeSound(s) {
		if v.outcome == FallsShort {
			return []Step{s.step(TaskPress, v.entries[0], "due-press", v.said.Value("what"))}
		}
	}
	return nil
}

// trimStep asks for each cloth that nothing was trimmed after.
func (s *subject) trimStep() []Step {
	var steps []Step
	for _, cloth := range s.untrimmed() {
		w := trimming(cloth.At)
		if w.unknown() || s.groundOn(cloth.Seq) {
			continue // nothing says that the film is soft
		}
		st := s.within(s.step(TaskTrim, cloth.Seq, "due-trim"), w)
		if st.Overdue {
			st.Said = record.Say("due-trim-hard")
		}
		steps = append(steps, st)
	}
	return steps
}

// groundOn reports that a ground lies on a cloth.
func (s *subject) groundOn(cloth int64) bool {
	return slices.ContainsFunc(faces, func(face record.Face) bool {
		films := s.on(face)
		i := slices.IndexFunc(films, func(f film) bool { return f.Layer.Seq == cloth && isCloth(f) })
		return i >= 0 && slices.ContainsFunc(films[i:], func(f film) bool { return isGround(f) == record.Yes })
	})
}

// untrimmed are the cloths that nothing was trimmed after.
func (s *subject) untrimmed() []record.Done[record.ClothLaid] {
	trims := each[record.Trimmed](s)
	return slices.DeleteFunc(slices.Clone(each[record.ClothLaid](s)), func(cloth record.Done[record.ClothLaid]) bool {
		return !s.stands(cloth.Seq) || slices.ContainsFunc(trims, func(t record.Done[record.Trimmed]) bool { return before(t.At, cloth.At) != record.Yes })
	})
}

// trimming is when a cloth may be trimmed.
func trimming(laid record.When) window {
	from, to, ok := dated(laid)
	if !ok {
		return unknown(record.Say("laid-when-open", record.With("layer", record.Code("cloth"))))
	}
	return window{from: to.Add(trimFrom), until: from.Add(trimUntil)}
}

// stands reports that something of a layer is still there.
func (s *subject) stands(seq int64) bool {
	return slices.ContainsFunc(s.films, func(f film) bool { return f.Layer.Seq == seq && (isCloth(f) || f.Layer.Cloth == nil) })
}

// answerUntil is when a coat should be answered on the other face: the same
// day (common practice).
const answerUntil = day

// answerStep asks for a coat that one face lacks and the other has: to be laid
// when the last coat of each is dry to the touch, and within a day of the first
// that was not answered.
func (s *subject) answerStep() []Step {
	lead, lacks, n := s.unanswered()
	if n == 0 {
		return nil
	}
	st := s.step(TaskAnswer, lead[len(lead)-1].Layer.Seq, "due-answer", record.With("face", lacks), record.With("coats", n), record.With("bows", s.bows()))
	w := latest(s.touch(faces...)...)
	if begun, _, ok := dated(lead[len(lead)-n].Layer.At); ok && !w.unknown() {
		w.until = begun.Add(answerUntil)
	}
	return []Step{s.within(st, w)}
}

// unanswered is by how many coats one face lacks what the other has, on a panel
// whose making is written down as it happens; none where the maker says that
// the face is meant bare.
func (s *subject) unanswered() (lead []film, lacks record.Face, coats int) {
	work := func(f film) bool { return isCoat(f) && laidAs(f, record.Barrier, record.Isolation) == record.No }
	lead, least := filter(s.on(record.Front), work), filter(s.on(record.Back), work)
	lacks = record.Back
	if len(least) > len(lead) {
		lead, least, lacks = least, lead, record.Front
	}
	if len(lead) == len(least) || !s.made || s.bare(lacks) != nil {
		return nil, "", 0
	}
	return lead, lacks, len(lead) - len(least)
}

// benchSteps are the steps of a panel that is not painted yet.
func (s *subject) benchSteps() []Step {
	grounds := filter(s.films, func(f film) bool { return isGround(f) == record.Yes })
	coats := filter(s.films, isCoat)
	if len(coats) == 0 {
		return nil
	}
	last := coats[len(coats)-1]
	if len(grounds) == 0 && !slices.ContainsFunc(s.films, isCloth) {
		code := "due-lay"
		if s.p.ClothIntended() == record.No {
			code = "due-ground"
		}
		return []Step{s.within(s.step(TaskLay, last.Layer.Seq, code), latest(s.touch(record.Faces...)...))}
	}
	sanded := slices.ContainsFunc(each[record.Sanded](s), func(x record.Done[record.Sanded]) bool { return before(last.Layer.At, x.At) == record.Yes })
	task, code := TaskSand, "due-sand"
	switch {
	case len(grounds) == 0 && sanded:
		task, code = TaskPrime, "due-prime"
	case len(grounds) > 0 && sanded:
		task, code = TaskPrime, "due-prime-again"
	case len(grounds) > 0:
		code = "due-sand-again"
	}
	if len(grounds) > 0 && isAcrylic(grounds[len(grounds)-1]) != record.Yes {
		code += "-any"
	}
	steps := []Step{s.within(s.step(task, last.Layer.Seq, code), latest(s.hard(record.Faces...)...))}
	if len(grounds) == 0 {
		return steps
	}
	top, w := s.readyForOil()
	if wet := latest(s.touch(faces...)...); !wet.unknown() { // nobody paints a panel that lies on a wet back
		w = latest(w, wet)
	}
	oil := s.within(s.step(TaskPaint, top.Layer.Seq, "due-paint-oil"), w)
	switch {
	case isOil(top) == record.Yes: // no acrylic over an oil ground: nothing else is to be done
		return []Step{oil}
	case isAcrylic(top) == record.Yes:
		return append(steps, oil)
	}
	return steps
}

// readyForOil is when the ground may be painted on in oil, and the last ground
// of it: on the face that carries the work, or where that is not told on both.
func (s *subject) readyForOil() (top film, w window) {
	var ws []window
	for _, face := range faces {
		under := s.upFrom(face, func(f film) bool { return isGround(f) == record.Yes })
		if under == nil || s.facing() == opposite(face) && s.upFrom(s.facing(), func(f film) bool { return isGround(f) == record.Yes }) != nil {
			continue
		}
		if top == nil || before(top.Layer.At, under[0].Layer.At) == record.Yes {
			top = under[0]
		}
		ws = append(ws, s.readyFor(under, trade.Strata{trade.OilPaint}))
	}
	return top, latest(ws...)
}

// waitWindow is when the next may be laid over a layer that has to dry: from
// the least time, surely from the usual one; where there is no least, or months
// are usual, from the usual time, surely from the better one.
func (s *subject) waitWindow(f film, upper trade.Strata) window {
	waits, known := trade.WaitsFor(upper, f.strataOf(), not(thin(f)))
	from, to, ok := dated(f.Layer.At)
	switch {
	case known == record.Unknown:
		return unknown(record.Say("material-open", what(f)))
	case known == record.No:
		return window{rests: []record.Said{record.Say("no-wait-known", what(f))}}
	case !ok:
		return unknown(record.Say("laid-when-open", what(f)))
	}
	var out window
	for _, w := range waits {
		first, sure := w.Least, w.Usual
		if first.IsZero() || w.Usual.Months > 0 {
			first, sure = w.Usual, cmp.Or(w.Better, w.Usual)
		}
		if t := first.After(from); out.from.IsZero() || t.Before(out.from) {
			out.from = t
		}
		if t := sure.After(to); t.After(out.safe) {
			out.safe = t
		}
	}
	return out
}

// resinVarnishes are the varnishes that a painting is usually given.
var resinVarnishes = trade.Strata{trade.NaturalResin, trade.AcrylicResin, trade.HydrocarbonResin, trade.KetoneResin}

// finishSteps are the steps of a painted panel. One recorded afterwards may be
// varnished already.
func (s *subject) finishSteps() []Step {
	var steps []Step
	for _, face := range faces {
		films := s.upFrom(face, isPaint)
		if films == nil || !s.made || slices.ContainsFunc(films, isVarnish) {
			continue
		}
		paint, all := films[0], s.on(face)
		films = all[slices.IndexFunc(all, isPaint):] // all of them have to be dry
		st := s.step(TaskVarnish, paint.Layer.Seq, "due-varnish")
		if isAcrylic(paint) == record.Yes {
			st.Said.Code = "due-varnish-acrylic"
		}
		steps = append(steps, s.within(st, s.readyFor(films, resinVarnishes)))
	}
	if len(steps) > 0 {
		return steps
	}
	if len(each[record.LabelPrinted](s)) == 0 {
		return []Step{s.step(TaskLabel, 0, "due-label")}
	}
	return nil
}
