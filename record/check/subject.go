package check

import (
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/amount"
	"backleaf/record/balance"
	"backleaf/record/trade"
)

// subject is one panel under judgement, with what several rules look at.
type subject struct {
	w     *record.Workshop
	p     *record.Panel
	now   time.Time
	cut   record.Done[record.Cut]
	films []film // one for each layer, in the order of application
	made  bool   // recorded as made

	seen   sight                  // since it was last cleared
	layers map[record.Face][]film // of films, those of a face that was asked for
	done   map[record.Kind]any    // of what happened, each kind that was asked for
	wood   once[record.Board]
	thick  once[microns]
	panels once[[]balance.Panel]
}

// newSubject prepares a panel for judgement at a moment.
func newSubject(w *record.Workshop, p *record.Panel, now time.Time) *subject {
	all := amount.Films(w, p)
	films, of := make([]film, len(all)), make([]filmed, len(all))
	for i, f := range all {
		of[i].Film, of[i].made = f, trade.Of(w, f.Layer)
		films[i] = &of[i]
	}
	return subjectOf(w, p, now, films)
}

// unmeasured is a subject whose films have no thickness: next steps need none.
func unmeasured(w *record.Workshop, p *record.Panel, now time.Time) *subject {
	films := make([]film, len(p.Layers()))
	for i, l := range p.Layers() {
		films[i] = newFilm(w, l)
	}
	return subjectOf(w, p, now, films)
}

// subjectOf leaves out what was taken off the panel: it counts no more.
func subjectOf(w *record.Workshop, p *record.Panel, now time.Time, films []film) *subject {
	s := &subject{w: w, p: p, now: now, made: p.AsMade(), layers: map[record.Face][]film{}, done: map[record.Kind]any{}}
	s.cut, _ = record.Latest[record.Cut](p)
	s.films = filter(films, func(f film) bool { return f.Layer.Stands() })
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

// microns is a thickness, and whether it is known.
type microns struct {
	of    float64
	known bool
}

// board returns what the board is; its kind is empty where it is not known.
func (s *subject) board() record.Board { return s.wood.of(s.boardAsCut) }

func (s *subject) boardAsCut() record.Board {
	m, _ := s.w.Material(s.cut.Body.Board, s.cut.Body.BoardAs)
	if m.Board.Kind == record.Unknown {
		m.Board.Kind = ""
	}
	return m.Board
}

// isBoard answers whether the board is of one of some kinds.
func (s *subject) isBoard(kinds ...record.BoardKind) record.Answer {
	if s.board().Kind == "" {
		return record.Unknown
	}
	return is(slices.Contains(kinds, s.board().Kind))
}

// thickness returns the board's thickness in µm: as cut, or else as stated
// for the material.
func (s *subject) thickness() (float64, bool) {
	t := s.thick.of(func() microns { um, known := s.w.BoardMicrons(s.p); return microns{um, known} })
	return t.of, t.known
}

// sides returns the longer and the shorter side in µm.
func (s *subject) sides() (long, short float64, ok bool) {
	h, ok1 := s.p.Size().Height.Micrometers()
	w, ok2 := s.p.Size().Width.Micrometers()
	return float64(max(h, w)), float64(min(h, w)), ok1 && ok2
}

// unless is what may have been done besides what is recorded: nothing on a
// panel recorded as made, else nobody can tell.
func (s *subject) unless() record.Answer {
	if s.made {
		return record.No
	}
	return record.Unknown
}

// bare returns where a face was said to be left without any coat.
func (s *subject) bare(face record.Face) []int64 {
	var at []int64
	for _, b := range each[record.LeftBare](s) {
		if slices.Contains(b.Body.Faces, face) {
			at = append(at, b.Seq)
		}
	}
	return at
}

func seqs[B record.Body](done []record.Done[B]) []int64 {
	var out []int64
	for _, d := range done {
		out = append(out, d.Seq)
	}
	return out
}

func filmSeqs(films ...film) []int64 {
	var out []int64
	for _, f := range films {
		out = append(out, f.Layer.Seq)
	}
	return tidy(out)
}

// facing is the face that carries the work: the painted one, or where nothing
// is painted the one with cloth; empty where both may be.
func (s *subject) facing() record.Face {
	for _, has := range []func(film) bool{isPaint, isCloth} {
		front, back := slices.ContainsFunc(s.on(record.Front), has), slices.ContainsFunc(s.on(record.Back), has)
		switch {
		case front && !back:
			return record.Front
		case back && !front:
			return record.Back
		}
	}
	return ""
}

// cloths judges one answer of every cloth laid.
func (s *subject) cloths(of string, answer func(record.ClothLaid) record.Answer) []verdict {
	var vs []verdict
	for _, c := range each[record.ClothLaid](s) {
		o := outcome(record.Yes, answer(c.Body))
		vs = append(vs, say(o, []int64{c.Seq}, of+suffix[o]))
	}
	return orNone(vs, "no-cloth")
}

// suffix ends the codes of rules that say one of three things.
var suffix = map[Outcome]string{Holds: "", FallsShort: "-not", NotRecorded: "-open", NotApplicable: "-elsewhere"}
