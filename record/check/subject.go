package check

import (
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/measure"
)

// Subject is one panel under judgement, with what several rules look at.
type Subject struct {
	Workshop *record.Workshop
	Panel    *record.Panel
	Now      time.Time
	Cut      record.Done[record.Cut]
	Films    []Film // one for each layer, in the order of application
}

// newSubject prepares a panel for judgement at a moment.
func newSubject(w *record.Workshop, p *record.Panel, now time.Time) *Subject {
	s := unmeasured(w, p, now)
	s.Films = Films(w, p)
	return s
}

// unmeasured is a subject whose films have no thickness: next steps need none.
func unmeasured(w *record.Workshop, p *record.Panel, now time.Time) *Subject {
	s := &Subject{Workshop: w, Panel: p, Now: now}
	s.Cut, _ = record.Latest[record.Cut](p)
	for _, l := range p.Layers() {
		s.Films = append(s.Films, Film{Layer: l, Wet: Unknown, Dry: Unknown})
	}
	return s
}

// faces are the two sides that rules compare.
var faces = []record.Face{record.Front, record.Back}

func opposite(f record.Face) record.Face {
	if f == record.Front {
		return record.Back
	}
	return record.Front
}

// on returns the films of one face, from the board outwards.
func (s *Subject) on(f record.Face) []Film {
	var out []Film
	for _, l := range s.Films {
		if l.Layer.Face == f {
			out = append(out, l)
		}
	}
	return out
}

// board returns what the board is; its kind is empty where it is not known.
func (s *Subject) board() record.Board {
	m, _ := s.Workshop.Material(s.Cut.Body.Board)
	if m.Board.Kind == record.Unknown {
		m.Board.Kind = ""
	}
	return m.Board
}

// thickness returns the board's thickness in µm: as cut, or else as stated
// for the material.
func (s *Subject) thickness() (float64, bool) { return thickness(s.Workshop, s.Panel) }

func thickness(w *record.Workshop, p *record.Panel) (float64, bool) {
	if um, ok := p.Size().Depth.Micrometers(); ok {
		return float64(um), um > 0
	}
	m, _ := w.Material(p.Cut().Board)
	um, ok := m.Board.Thickness.Micrometers()
	return float64(um), ok && um > 0
}

// sides returns the longer and the shorter side in µm.
func (s *Subject) sides() (long, short float64, ok bool) {
	h, ok1 := s.Panel.Size().Height.Micrometers()
	w, ok2 := s.Panel.Size().Width.Micrometers()
	return float64(max(h, w)), float64(min(h, w)), ok1 && ok2
}

// done collects the entry numbers of several entries.
func seqs[B record.Body](all []record.Done[B]) []int64 {
	var out []int64
	for _, d := range all {
		out = append(out, d.Seq)
	}
	return out
}

func filmSeqs(films []Film) []int64 {
	var out []int64
	for _, f := range films {
		if !slices.Contains(out, f.Layer.Seq) {
			out = append(out, f.Layer.Seq)
		}
	}
	return out
}

// place returns where an entry stands in the order of what happened.
func (s *Subject) place(seq int64) int {
	return slices.IndexFunc(s.Panel.Events, func(e record.Event) bool { return e.Seq == seq })
}

// elapsed returns the least and the greatest time that can lie between two
// recorded times; false where one of them is open or not known.
func elapsed(from, to record.When) (least, most time.Duration, ok bool) {
	f1, ok1 := from.Earliest()
	f2, ok2 := from.Latest()
	t1, ok3 := to.Earliest()
	t2, ok4 := to.Latest()
	if !ok1 || !ok2 || !ok3 || !ok4 {
		return 0, 0, false
	}
	return t1.Sub(f2), t2.Sub(f1), true
}

const day = 24 * time.Hour

// below returns the layers of a face that were there before an entry.
func (s *Subject) below(face record.Face, seq int64) []Film {
	at := s.place(seq)
	return filter(s.on(face), func(f Film) bool { return s.place(f.Layer.Seq) < at })
}

// facing is the face that carries the work: the painted one, or else the one
// with cloth; empty where the record does not say.
func (s *Subject) facing() record.Face {
	for _, is := range []func(Film) bool{isPaint, isCloth} {
		front := len(filter(s.on(record.Front), is)) > 0
		back := len(filter(s.on(record.Back), is)) > 0
		switch {
		case front && !back:
			return record.Front
		case back && !front:
			return record.Back
		}
	}
	return ""
}

// moves is the movement of the board with humidity.
func (s *Subject) moves() (measure.Movement, error) {
	kind := s.board().Kind
	if kind == record.TemperedHardboard {
		kind = record.Hardboard
	}
	return measure.MovementOf(measure.Board(kind))
}

// cloths asks one question of every cloth laid.
func (s *Subject) cloths(ask func(record.ClothLaid) (record.Answer, string)) []Verdict {
	var vs []Verdict
	for _, c := range record.Each[record.ClothLaid](s.Panel) {
		answer, what := ask(c.Body)
		at := []int64{c.Seq}
		switch answer {
		case record.Yes:
			vs = append(vs, verdict(Holds, at, "the cloth was %s", what))
		case record.No:
			vs = append(vs, verdict(FallsShort, at, "the cloth was not %s", what))
		default:
			vs = append(vs, verdict(NotRecorded, at, "whether the cloth was %s", what))
		}
	}
	return orNone(vs, "no cloth is laid")
}
