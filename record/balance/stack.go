package balance

// stack is a board with its layers in their places, ready to be bent by one
// part of them. It holds what an ordinary panel needs without the heap.
type stack struct {
	board       *Board
	which       part
	half        float64 // of the board's thickness, in metres
	soft, stiff section // of the coats alone
	kinds       int
	few         [12]group
	more        []group // further kinds
}

// face is a face of the stack, as an index.
type face int

const (
	front face = iota
	back
)

// group gathers the layers of one kind: they pull alike, so what one face has
// the other may answer. All by direction.
type group struct {
	kind   Kind
	faces  [2][2]Range   // pull of each face, N/m
	at     [2]Range      // pull times z, N
	unlike [2][2]float64 // of the high pull of each face, how far it may differ after all
}

// lay puts the layers of a face in their places.
func (s *stack) lay(layers []Layer, f face, a amount) {
	sign, from := 1-2*float64(f), s.half
	for i := range layers {
		l := &layers[i]
		t := l.DryMicrons.at(a) * 1e-6
		z := sign * (from + t/2)
		from += t
		if s.which.stiffens(l) {
			s.soft.add(t, z, l.ModulusMPa.Low*1e6)
			s.stiff.add(t, z, l.ModulusMPa.High*1e6)
		}
		if s.which.pulls(l) {
			s.group(l.Kind).add(l, l.units(a), z, f)
		}
	}
}

func (s *stack) group(k Kind) *group {
	for i := range s.kinds {
		if g := s.at(i); g.kind == k {
			return g
		}
	}
	if s.kinds >= len(s.few) {
		s.more = append(s.more, group{})
	}
	s.kinds++
	g := s.at(s.kinds - 1)
	g.kind = k
	return g
}

func (s *stack) at(i int) *group {
	if i < len(s.few) {
		return &s.few[i]
	}
	return &s.more[i-len(s.few)]
}

func (g *group) add(l *Layer, units, z float64, f face) {
	for d := range l.Pull {
		pull := l.Pull[d].times(units)
		g.faces[f][d] = g.faces[f][d].plus(pull)
		// Low and high are those of the pull, whatever the sign of z.
		g.at[d] = g.at[d].plus(Range{pull.Low * z, pull.High * z})
		g.unlike[f][d] += pull.High * l.Certainty.unlike()
	}
}

// pull is what a face pulls, in N/m.
func (s *stack) pull(f face, d Direction) Range {
	var sum Range
	for i := range s.kinds {
		sum = sum.plus(s.at(i).faces[f][d])
	}
	return sum
}

// sections are the stack at its softest and at its stiffest.
func (s *stack) sections(d Direction) (soft, stiff section) {
	softPa, stiffPa := s.board.plate(d)
	soft, stiff = s.soft, s.stiff
	soft.add(2*s.half, 0, softPa)
	stiff.add(2*s.half, 0, stiffPa)
	return soft, stiff
}

// moment is that of the pull about a plane, in N. Each kind ranges by itself; of
// what a kind has on both faces a share stays open, since amounts that look
// equal may not be. The share is the mean of the face that is known worse, so
// that a speck of a doubtful coat changes it by a speck.
func (s *stack) moment(d Direction, neutral float64) Range {
	var m Range
	for i := range s.kinds {
		g := s.at(i)
		pull := g.faces[front][d].plus(g.faces[back][d])
		a, b := g.at[d].Low-neutral*pull.Low, g.at[d].High-neutral*pull.High
		open, ahead, behind := 0.0, g.faces[front][d].High, g.faces[back][d].High
		if both := min(ahead, behind); both > 0 {
			open = both * max(g.unlike[front][d]/ahead, g.unlike[back][d]/behind) * s.half
		}
		m = m.plus(Range{min(a, b) - open, max(a, b) + open})
	}
	return m
}
