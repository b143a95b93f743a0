package balance

// stack is a board with its layers in their places, ready to be bent by one
// part of them.
type stack struct {
	board  *Board
	which  part
	half   float64  // of the board's thickness, in metres
	layers []placed // of front and back, each from the board outwards
	groups []group  // of the part
}

// ordinary is room for the layers of an ordinary panel without the heap.
const ordinary = 24

// face is a face of the stack, as an index.
type face int

const (
	front face = iota
	back
)

// placed is a layer at its place, z in metres from the middle of the board.
type placed struct {
	*Layer
	z, thickness, units float64
}

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
	sign, z := 1-2*float64(f), s.half
	for i := range layers {
		l := &layers[i]
		t := l.DryMicrons.at(a) * 1e-6
		at := placed{l, sign * (z + t/2), t, l.units(a)}
		z += t
		s.layers = append(s.layers, at)
		if s.which.pulls(l) {
			s.group(l.Kind).add(at, f)
		}
	}
}

func (s *stack) group(k Kind) *group {
	for i := range s.groups {
		if s.groups[i].kind == k {
			return &s.groups[i]
		}
	}
	s.groups = append(s.groups, group{kind: k})
	return &s.groups[len(s.groups)-1]
}

func (g *group) add(l placed, f face) {
	for d := range l.Pull {
		pull := l.Pull[d].times(l.units)
		g.faces[f][d] = g.faces[f][d].plus(pull)
		// Low and high are those of the pull, whatever the sign of z.
		g.at[d] = g.at[d].plus(Range{pull.Low * l.z, pull.High * l.z})
		g.unlike[f][d] += pull.High * l.Certainty.unlike()
	}
}

// pull is what a face pulls, in N/m.
func (s *stack) pull(f face, d Direction) Range {
	var sum Range
	for i := range s.groups {
		sum = sum.plus(s.groups[i].faces[f][d])
	}
	return sum
}

// sections are the stack at its softest and at its stiffest.
func (s *stack) sections(d Direction) (soft, stiff section) {
	softPa, stiffPa := s.board.plate(d)
	soft.add(2*s.half, 0, softPa)
	stiff.add(2*s.half, 0, stiffPa)
	for i := range s.layers {
		if l := &s.layers[i]; s.which.stiffens(l.Layer) {
			soft.add(l.thickness, l.z, l.ModulusMPa.Low*1e6)
			stiff.add(l.thickness, l.z, l.ModulusMPa.High*1e6)
		}
	}
	return soft, stiff
}

// moment is that of the pull about a plane, in N. Each kind ranges by itself; of
// what a kind has on both faces a share stays open, since amounts that look
// equal may not be. The share is the mean of the face that is known worse, so
// that a speck of a doubtful coat changes it by a speck.
func (s *stack) moment(d Direction, neutral float64) Range {
	var m Range
	for i := range s.groups {
		g := &s.groups[i]
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
