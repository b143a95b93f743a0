package check

import (
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/trade"
)

// Consider tells of an act on a panel as it stands at a moment when it may be
// done, by the windows of [Due], of the faces that the act touches, where a zero
// From means that nothing is known to wait for; and what speaks against it:
// layers that are usually advised against, bare fibre left open, and what makes
// harmful dust where it is laid or sanded dry.
func Consider(w *record.Workshop, p *record.Panel, at time.Time, act record.Body) (ready Step, against []record.Said) {
	s := unmeasured(w, asOf(p, at), at)
	ready = s.within(Step{Panels: []record.Number{p.Number}}, latest(slices.DeleteFunc(s.waits(act), window.unknown)...))
	if _, sands := act.(record.Sanded); sands || act.Kind().Traits().Layer {
		against = s.objections(act)
	}
	return ready, against
}

// objections are what speaks against an act.
func (s *subject) objections(act record.Body) (said []record.Said) {
	e := s.event(act)
	s = s.after(append(slices.Clip(s.p.Events), e), s.now, func(_ *record.Panel, l record.Layer) film { return newFilm(s.w, l) })
	for _, face := range faces {
		for _, f := range filter(s.on(face), func(f film) bool { return f.Layer.Seq == e.Seq }) {
			for _, x := range s.under(f) {
				if x.direct != record.Yes {
					continue
				}
				if v, ok := x.judge(s); ok && v.said.Code == "pair-against" {
					said = append(said, v.said)
				}
			}
		}
	}
	sand, sands := act.(record.Sanded)
	for _, f := range s.all() {
		if f.Layer.Seq == e.Seq || sands && sand.Wet != record.Yes && slices.Contains(sand.Faces, f.Layer.Face) {
			if v := toxic(f); v.said.Code == "holds-hazard" {
				said = append(said, v.said)
			}
		}
	}
	switch act.(type) {
	case record.Coat, record.ClothLaid, record.Sanded:
		if sands && sand.Through != record.Yes {
			break
		}
		for _, v := range judgeSandedThrough(s) {
			if v.outcome == FallsShort {
				said = append(said, v.said)
			}
		}
	}
	return said
}

// waits lists the windows that an act has to wait for.
func (s *subject) waits(act record.Body) (ws []window) {
	switch b := act.(type) {
	case record.Trimmed:
		for _, cloth := range s.untrimmed() {
			ws = append(ws, trimming(cloth.At))
		}
		return ws
	case record.Sanded:
		return s.hard(b.Faces...)
	}
	_, lacks, _ := s.unanswered()
	for _, f := range s.laying(act) {
		face := f.Layer.Face
		if isGround(f) == record.Yes && face != lacks {
			ws = append(ws, s.hard(face)...)
		} else {
			ws = append(ws, s.touch(face)...)
		}
		under := s.upFrom(face, func(x film) bool { return isPaint(x) || isGround(x) == record.Yes })
		if under == nil {
			under = s.on(face)
		}
		for _, x := range under {
			upper := f.strataOf()
			if len(f.Layer.Coating.Mix) == 0 && f.Layer.Varnish != nil { // as due reckons it
				upper = resinVarnishes
			}
			ws = append(ws, s.waitWindow(x, upper))
		}
	}
	return ws
}

// event is an act as it would be written now.
func (s *subject) event(act record.Body) record.Event {
	now := record.Moment(s.now)
	return record.Event{Seq: s.w.Last + 1, At: now, Written: now, Panels: []record.Number{s.p.Number}, Body: act}
}

// laying are the films that an act would lay.
func (s *subject) laying(act record.Body) (films []film) {
	for _, l := range (&record.Panel{}).With([]record.Event{s.event(act)}).Layers() {
		if l.Cloth == nil {
			films = append(films, newFilm(s.w, l))
		}
	}
	return films
}

// touch is when the last coat of each of some faces is dry to the touch.
func (s *subject) touch(on ...record.Face) (ws []window) {
	for _, face := range on {
		if coats := filter(s.on(face), isCoat); len(coats) > 0 {
			ws = append(ws, s.window(coats[len(coats)-1], touchDry))
		}
	}
	return ws
}

// hard is when the coats of some faces have cured, those under the last as far
// as that is known.
func (s *subject) hard(on ...record.Face) (ws []window) {
	for _, face := range on {
		coats := filter(s.on(face), isCoat)
		for i, f := range coats {
			if w := s.window(f, cured); i == len(coats)-1 || !w.unknown() {
				ws = append(ws, w)
			}
		}
	}
	return ws
}

// upFrom lists the uppermost layer of a sort on a face and what lies over it;
// nothing where there is none.
func (s *subject) upFrom(face record.Face, of func(film) bool) []film {
	films := s.on(face)
	for i, f := range slices.Backward(films) {
		if of(f) {
			return films[i:]
		}
	}
	return nil
}

// readyFor is when the next may be laid over some layers: over the first, and
// over what lies on it as far as a time is known.
func (s *subject) readyFor(films []film, upper trade.Strata) window {
	ws := []window{s.waitWindow(films[0], upper)}
	for _, f := range films[1:] {
		if w := s.waitWindow(f, upper); !w.unknown() {
			ws = append(ws, w)
		}
	}
	return latest(ws...)
}
