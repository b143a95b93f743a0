package check_test

import (
	"slices"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/toolcheck"
)

// tasks are what may be due where an act is done.
func tasks(b record.Body) []check.Task {
	switch b := b.(type) {
	case record.Trimmed:
		return []check.Task{check.TaskTrim}
	case record.Sanded:
		return []check.Task{check.TaskSand}
	case record.ClothLaid:
		return []check.Task{check.TaskLay}
	case record.Varnish:
		if b.Mix[0].Material == "resin" { // what a painting is usually given
			return []check.Task{check.TaskVarnish}
		}
	case record.PaintLayer:
		if b.Medium == "oil" {
			return []check.Task{check.TaskPaint}
		}
	case record.Coat:
		switch { // due means a coat of the usual stuff
		case b.Mix == nil:
		case b.Purpose == record.Ground && b.Mix[0].Material == "ground":
			return []check.Task{check.TaskPrime}
		case b.Purpose != record.Ground && b.Mix[0].Material == "sealer":
			return []check.Task{check.TaskLay, check.TaskAnswer}
		}
	}
	return nil
}

// One source of windows: at any moment, what is due does not call an act open
// for which a note at the bench says that it is early, and no rule finds an act
// too early of which the bench said nothing.
func TestWindowsAgree(t *testing.T) {
	early, open, short := 0, 0, 0
	stories(t, 80_000, toolcheck.Rounds(500, 12), func(t *testing.T, r *teller, es []record.Entry) {
		for i, e := range es {
			if len(e.Panels) == 0 || e.Kind() == "cut" {
				continue
			}
			// The act as drawn, and soon after what came before it.
			last, _ := es[i-1].At.Exact()
			then, _ := e.At.Exact()
			for _, at := range []time.Time{then, last.Add(time.Duration(1+r.Intn(72*60)) * time.Minute)} {
				w := mustFold(t, es[:i])
				ready, _ := check.Consider(w, w.Panel(panel), at, e.Body)
				late := ready.From.After(at)
				if late {
					early++
				}
				for _, s := range check.Due(w, at) {
					if (s.State(at) == check.Now || s.State(at) == check.Overdue) && slices.Contains(tasks(e.Body), s.Task) && onFaceDue(e.Body, s, es[:i]) {
						open++
						if late {
							t.Errorf("%s at %v: due since %v, the bench says not before %v", e.Kind(), at, s.From, ready.From)
						}
					}
				}
				act := e
				act.At, act.Written = record.Moment(at), record.Moment(at)
				for _, f := range found(t, append(slices.Clip(es[:i]), act)) {
					for _, said := range f.Said {
						if slices.Contains([]string{"sanded-early", "pair-early", "trimmed-early"}, said.Code) && slices.Contains(said.Value("entries").Texts, record.With("", record.EntryRef(e.Seq)).Text()) {
							short++
							if !late {
								t.Errorf("%s at %v: %s, and the bench says nothing: %v", e.Kind(), at, said.Code, said.Values)
							}
						}
					}
				}
			}
		}
	})
	if early == 0 || open == 0 || short == 0 {
		t.Errorf("%d acts early, %d open, %d found too early", early, open, short)
	}
}

// onFaceDue reports that a step is for the face that an act is done on: as it
// says, or of a painting that on which what it counts from was laid.
func onFaceDue(b record.Body, s check.Step, es []record.Entry) bool {
	mine := facesOf(b)
	switch s.Task {
	case check.TaskAnswer:
		return len(mine) == 1 && string(mine[0]) == s.Said.Value("face").Text()
	case check.TaskPaint, check.TaskVarnish:
		return slices.Equal(mine, facesOf(es[s.Entry-1].Body))
	}
	return true
}
