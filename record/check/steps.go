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
	if len(s.films) == 0 {
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
	trims := record.Each[record.Trimmed](s.p)
	for _, cloth := range record.Each[record.ClothLaid](s.p) {
		if slices.ContainsFunc(trims, func(t record.Done[record.Trimmed]) bool { return before(t.At, cloth.At) != record.Yes }) || !s.stands(cloth.Seq) {
			continue
		}
		st := s.step(TaskTrim, cloth.Seq, "due-trim")
		from, to, ok := dated(cloth.At)
		if !ok {
			st.Rests = []record.Said{record.Say("laid-when-open", record.With("layer", record.Code("cloth")))}
			steps = append(steps, st)
			continue
		}
		st = s.within(st, window{from: to.Add(trimFrom), until: from.Add(trimUntil)})
		if st.Overdue {
			st.Said = record.Say("due-trim-hard")
		}
		steps = append(steps, st)
	}
	return steps
}

// stands reports that something of a layer is still there.
func (s *subject) stands(seq int64) bool {
	return slices.ContainsFunc(s.films, func(f Film) bool { return f.Layer.Seq == seq && (isCloth(f) || f.Layer.Cloth == nil) })
}

// answerUntil is when a coat should be answered on the other face: the same
// day (common practice).
const answerUntil = day

// answerStep asks for a coat that one face lacks and the other has, on a panel
// whose making is written down as it happens.
func (s *subject) answerStep() []Step {
	work := func(f Film) bool { return isCoat(f) && laidAs(f, record.Barrier, record.Isolation) == record.No }
	front, back := filter(s.on(record.Front), work), filter(s.on(record.Back), work)
	if len(front) == len(back) || !s.made {
		return nil
	}
	lead, lacks := front, record.Back
	if len(back) > len(front) {
		lead, lacks = back, record.Front
	}
	if s.bare(lacks) != nil { // the maker says that it is meant so
		return nil
	}
	answered := min(len(front), len(back))
	// It can be coated when the last coat of the other face is touch-dry, and
	// should have been within a day of the first that was not answered.
	last, first := lead[len(lead)-1], lead[answered]
	st := s.step(TaskAnswer, last.Layer.Seq, "due-answer", record.With("face", lacks), record.With("coats", len(lead)-answered))
	w := s.window(last, touchDry)
	if begun, _, ok := dated(first.Layer.At); ok && !w.from.IsZero() {
		w.until = begun.Add(answerUntil)
	}
	return []Step{s.within(st, w)}
}

// lastCoats are the uppermost coats of all faces.
func (s *subject) lastCoats() []Film {
	var out []Film
	for _, face := range record.Faces {
		if coats := filter(s.on(face), isCoat); len(coats) > 0 {
			out = append(out, coats[len(coats)-1])
		}
	}
	return out
}

// benchSteps are the steps of a panel that is not painted yet.
func (s *subject) benchSteps() []Step {
	grounds := filter(s.films, func(f Film) bool { return isGround(f) == record.Yes })
	tops := s.lastCoats()
	if len(tops) == 0 {
		return nil
	}
	last := slices.MaxFunc(tops, func(a, b Film) int { return int(a.Layer.Seq - b.Layer.Seq) })
	if len(grounds) == 0 && !slices.ContainsFunc(s.films, isCloth) {
		code := "due-lay"
		if s.p.ClothIntended() == record.No {
			code = "due-ground"
		}
		return []Step{s.within(s.step(TaskLay, last.Layer.Seq, code), s.window(last, touchDry))}
	}
	var ws []window
	for _, f := range tops {
		ws = append(ws, s.window(f, cured))
	}
	hard := latest(ws...)
	sanded := slices.ContainsFunc(record.Each[record.Sanded](s.p), func(x record.Done[record.Sanded]) bool { return before(last.Layer.At, x.At) == record.Yes })
	task, code := TaskSand, "due-sand"
	switch {
	case len(grounds) == 0 && sanded:
		task, code = TaskPrime, "due-prime"
	case len(grounds) > 0 && sanded:
		task, code = TaskPrime, "due-prime-again"
	case len(grounds) > 0:
		code = "due-sand-again"
	}
	steps := []Step{s.within(s.step(task, last.Layer.Seq, code), hard)}
	if len(grounds) == 0 {
		return steps
	}
	top := grounds[len(grounds)-1]
	oil := s.within(s.step(TaskPaint, top.Layer.Seq, "due-paint-oil"), s.readyFor(s.above(top), trade.Strata{trade.OilPaint}))
	switch {
	case isOil(top) == record.Yes: // no acrylic over an oil ground: nothing else is to be done
		return []Step{oil}
	case isAcrylic(top) == record.Yes:
		return append(steps, oil)
	}
	return steps
}

// above lists a layer and what lies over it, on every face that its entry was
// laid on.
func (s *subject) above(f Film) []Film {
	out := []Film{f}
	for _, face := range faces {
		films := s.on(face)
		if i := slices.IndexFunc(films, func(x Film) bool { return x.Layer.Seq == f.Layer.Seq }); i >= 0 {
			out = append(out, films[i+1:]...)
		}
	}
	return out
}

// readyFor is when the next may be laid over some layers: the first and what
// lies over it, which has to dry too.
func (s *subject) readyFor(films []Film, upper trade.Strata) window {
	w := s.waitWindow(films[0], upper)
	for _, f := range films[1:] {
		if over := s.waitWindow(f, upper); !over.from.IsZero() && !w.from.IsZero() {
			w = latest(w, over)
		}
	}
	return w
}

// waitWindow is when the next may be laid over a layer that has to dry: from
// the least time, surely from the usual one; where there is no least, or months
// are usual, from the usual time, surely from the better one.
func (s *subject) waitWindow(f Film, upper trade.Strata) window {
	waits, known := trade.WaitsFor(upper, f.made.StrataOf(), not(thin(f)))
	from, to, ok := dated(f.Layer.At)
	switch {
	case known == record.Unknown:
		return window{rests: []record.Said{record.Say("binder-open", what(f))}}
	case known == record.No:
		return window{rests: []record.Said{record.Say("no-wait-known", what(f))}}
	case !ok:
		return window{rests: []record.Said{record.Say("laid-when-open", what(f))}}
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

// finishSteps are the steps of a painted panel.
func (s *subject) finishSteps() []Step {
	var steps []Step
	for _, face := range faces {
		films := s.on(face)
		at := len(films) - 1
		for at >= 0 && !isPaint(films[at]) {
			at--
		}
		if at < 0 || slices.ContainsFunc(films[at:], isVarnish) {
			continue
		}
		paint := films[at]
		st := s.step(TaskVarnish, paint.Layer.Seq, "due-varnish")
		if isAcrylic(paint) == record.Yes {
			st.Said.Code = "due-varnish-acrylic"
		}
		steps = append(steps, s.within(st, s.readyFor(films[at:], resinVarnishes)))
	}
	if len(steps) > 0 {
		return steps
	}
	if len(record.Each[record.LabelPrinted](s.p)) == 0 {
		return []Step{s.step(TaskLabel, 0, "due-label")}
	}
	return nil
}
