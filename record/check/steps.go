package check

import (
	"fmt"
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/measure"
)

// Times that the trade counts with (common practice).
const (
	answerUntil = day // the same day
)

var (
	usualTouchDry = measure.Stated{Early: 20 * time.Minute, Late: 30 * time.Minute}
	usualCure     = measure.Stated{Early: day, Late: 36 * time.Hour}
)

func (s *Subject) step(t Task, entry int64, format string, args ...any) Step {
	return Step{Panels: []record.Number{s.Panel.Number}, Batch: s.Cut.Body.Batch, Task: t, Entry: entry, Text: fmt.Sprintf(format, args...)}
}

// within sets the window of a step.
func (s *Subject) within(st Step, from, safe, until time.Time) Step {
	st.From, st.Until = from, until
	if safe.After(from) {
		st.Safe = safe
	}
	st.Overdue = !until.IsZero() && s.Now.After(until)
	return st
}

func (s *Subject) steps() []Step {
	if len(s.Films) == 0 {
		return []Step{s.step(TaskSeal, s.Cut.Seq, "seal front, back and edges; the edges twice")}
	}
	var steps []Step
	if st, ok := s.trimStep(); ok {
		steps = append(steps, st)
	}
	painted := slices.ContainsFunc(s.Films, isPaint)
	if st, ok := s.answerStep(); ok && !painted {
		steps = append(steps, st)
	}
	if slices.ContainsFunc(s.Films, isVarnish) || painted {
		return append(steps, s.finishSteps()...)
	}
	return append(steps, s.benchSteps()...)
}

func (s *Subject) trimStep() (Step, bool) {
	cloth, ok := record.Latest[record.ClothLaid](s.Panel)
	trim, trimmed := record.Latest[record.Trimmed](s.Panel)
	if !ok || trimmed && s.place(trim.Seq) > s.place(cloth.Seq) || slices.ContainsFunc(s.Films, isPaint) {
		return Step{}, false
	}
	st := s.step(TaskTrim, cloth.Seq, "trim the cloth while the film is still soft")
	laid1, ok1 := cloth.At.Earliest()
	laid2, ok2 := cloth.At.Latest()
	if !ok1 || !ok2 {
		st.Text = "trim the cloth; when it was laid is not recorded"
		return st, true
	}
	st = s.within(st, laid2.Add(trimFrom), time.Time{}, laid1.Add(trimUntil))
	if st.Overdue {
		st.Text = "trim the cloth: the film is hard by now, use a fresh blade or sandpaper"
	}
	return st, true
}

// answerStep asks for the coat that one face lacks.
func (s *Subject) answerStep() (Step, bool) {
	front, back := filter(s.on(record.Front), isCoat), filter(s.on(record.Back), isCoat)
	if len(front) == len(back) {
		return Step{}, false
	}
	lead, lacks := front, record.Back
	if len(back) > len(front) {
		lead, lacks = back, record.Front
	}
	answered := min(len(front), len(back))
	missing := len(lead) - answered
	// It can be coated when the last coat of the other face is touch-dry, and
	// should have been within a day of the first that was not answered.
	last, first := lead[len(lead)-1], lead[answered]
	text := fmt.Sprintf("turn and coat the %s: it lacks %s", lacks, count(missing, "coat"))
	st := s.step(TaskAnswer, last.Layer.Seq, "%s", text)
	laid1, ok1 := last.Layer.At.Earliest()
	laid2, ok2 := last.Layer.At.Latest()
	begun, ok3 := first.Layer.At.Earliest()
	dry, note, why := s.dries(last)
	if !ok1 || !ok2 || !ok3 || why != "" {
		st.Text += missingWhy(why, last)
		return st, true
	}
	st.Text += note
	return s.within(st, laid1.Add(dry.NotBefore), laid2.Add(dry.SafeBy), begun.Add(answerUntil)), true
}

func missingWhy(why string, f Film) string {
	if why == "" {
		why = "when the " + name(f) + " was laid is not recorded"
	}
	return " (no times: " + why + ")"
}

const usual = " (usual times, none stated for the material)"

// dries is the window in which a film becomes touch-dry.
func (s *Subject) dries(f Film) (w measure.Window, note, why string) {
	stated, note := measure.Stated{}, ""
	ms, all := s.parts(f)
	for _, m := range ms {
		to, ok := m.TouchDryTo.Seconds()
		if !ok || to == 0 {
			all = false
			break
		}
		from, _ := m.TouchDryFrom.Seconds()
		stated.Early = max(stated.Early, time.Duration(from)*time.Second)
		stated.Late = max(stated.Late, time.Duration(to)*time.Second)
	}
	if !all {
		if s.waterborne(f) != record.Yes {
			return w, "", "how fast the " + name(f) + " dries is not recorded"
		}
		stated, note = usualTouchDry, usual
	}
	rh, _, known := s.humidity(f)
	warm := slices.ContainsFunc(record.Each[record.WarmAir](s.Panel), func(e record.Done[record.WarmAir]) bool {
		return s.place(e.Seq) > s.place(f.Layer.Seq) && (len(e.Body.Faces) == 0 || slices.Contains(e.Body.Faces, f.Layer.Face))
	})
	w, err := measure.TouchDryWindow(stated, measure.Humidity{Percent: rh, Known: known}, warm)
	if err != nil {
		return w, "", err.Error()
	}
	return w, note, ""
}

// cures is when the last coats of all faces are cured; with the usual times
// where a water-borne coat states none.
func (s *Subject) cures() (notBefore, safeBy time.Time, last Film, note, why string) {
	for _, face := range record.Faces {
		coats := filter(s.on(face), isCoat)
		if len(coats) == 0 {
			continue
		}
		f := coats[len(coats)-1]
		from, safe, w := s.cure(f)
		if w != "" {
			stated := measure.Stated{}
			if _, missing := s.statedCure(f); missing != "" && s.waterborne(f) == record.Yes {
				stated, note = usualCure, usual
			}
			rh, _, known := s.humidity(f)
			window, err := measure.CureWindow(stated, measure.Humidity{Percent: rh, Known: known})
			laid1, ok1 := f.Layer.At.Earliest()
			laid2, ok2 := f.Layer.At.Latest()
			if err != nil || !ok1 || !ok2 {
				why, last = w, f
				continue
			}
			from, safe = laid1.Add(window.NotBefore), laid2.Add(window.SafeBy)
		}
		if from.After(notBefore) {
			notBefore = from
		}
		if safe.After(safeBy) {
			safeBy, last = safe, f
		}
	}
	return notBefore, safeBy, last, note, why
}

// benchSteps are the steps of a panel that is not painted yet.
func (s *Subject) benchSteps() []Step {
	ground := filter(s.Films, isGround)
	cloth := slices.ContainsFunc(s.Films, isCloth)
	notBefore, safeBy, last, note, why := s.cures()
	if why != "" {
		note, notBefore, safeBy = " (no times: "+why+")", time.Time{}, time.Time{}
	}
	sanded, ok := record.Latest[record.Sanded](s.Panel)
	isSanded := ok && s.place(sanded.Seq) > s.place(last.Layer.Seq)
	cured := func(t Task, text string) Step {
		return s.within(s.step(t, last.Layer.Seq, "%s", text+note), notBefore, safeBy, time.Time{})
	}
	switch {
	case len(ground) == 0 && !cloth:
		st := s.step(TaskLay, last.Layer.Seq, "lay the cloth, or the ground")
		dry, dryNote, why := s.dries(last)
		laid1, ok1 := last.Layer.At.Earliest()
		laid2, ok2 := last.Layer.At.Latest()
		if why != "" || !ok1 || !ok2 {
			st.Text += missingWhy(why, last)
			return []Step{st}
		}
		st.Text += dryNote
		return []Step{s.within(st, laid1.Add(dry.NotBefore), laid2.Add(dry.SafeBy), time.Time{})}
	case len(ground) == 0 && isSanded:
		return []Step{cured(TaskPrime, "dust off and prime: front and back alike")}
	case len(ground) == 0:
		return []Step{cured(TaskSand, "cured: ready to sand lightly (150 or finer), then prime")}
	}
	text := "cured: ready to sand and prime again, or to paint in acrylic"
	if isSanded {
		text = "sanded: ready to prime again, or to paint in acrylic"
	}
	steps := []Step{cured(TaskSand, text)}
	if isSanded {
		steps[0].Task = TaskPrime
	}
	top := ground[len(ground)-1]
	st := s.step(TaskPaint, top.Layer.Seq, "paint in oil")
	laid, ok := top.Layer.At.Latest()
	switch {
	case !ok:
	case s.isOil(top) == record.Yes:
		// No acrylic over an oil ground: nothing else is to be done.
		return []Step{s.within(s.step(TaskPaint, top.Layer.Seq, "paint in oil: the oil ground is firm from about six months"), laid.Add(oilGroundGood), time.Time{}, time.Time{})}
	case s.isAcrylic(top) == record.Yes:
		st.Text = "paint in oil: three days after the ground at the earliest, better two weeks, best a month"
		return append(steps, s.within(st, laid.Add(acrylicGroundLeast), laid.Add(acrylicGroundGood), time.Time{}))
	}
	return steps
}

// finishSteps are the steps of a painted panel.
func (s *Subject) finishSteps() []Step {
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
		steps = append(steps, s.varnishStep(films[at], slices.ContainsFunc(films[at:], func(f Film) bool { return f.Layer.Purpose == record.Isolation })))
	}
	if len(steps) > 0 {
		return steps
	}
	if len(record.Each[record.LabelPrinted](s.Panel)) == 0 {
		return []Step{s.step(TaskLabel, 0, "varnished: print the label for the back")}
	}
	return nil
}

func (s *Subject) varnishStep(paint Film, isolated bool) Step {
	st := s.step(TaskVarnish, paint.Layer.Seq, "varnish")
	good, _, known := varnishWait(s.binder(paint))
	laid, ok := paint.Layer.At.Latest()
	switch {
	case s.binder(paint) == "":
		st.Text = "varnish when the paint is firm all through; its medium is not recorded"
		return st
	case !known:
		st.Text = "varnish, if at all, when the paint is firm all through"
		return st
	case !ok:
		st.Text = "varnish when the paint is firm all through; when it was painted is not recorded"
		return st
	case s.isAcrylic(paint) == record.Yes && !isolated:
		st.Text = "lay an isolation coat, then a removable varnish"
	case good == oilVarnishGood:
		st.Text = "varnish: six to twelve months after the last paint, when it is firm all through"
		return s.within(st, laid.Add(good), laid.Add(2*good), time.Time{})
	default:
		st.Text = "varnish with a removable varnish"
	}
	return s.within(st, laid.Add(good), time.Time{}, time.Time{})
}
