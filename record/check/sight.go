package check

import (
	"slices"
	"time"

	"backleaf/record"
)

// sight is what of a panel a rule looked at, as far as a remedy may change it:
// a rule that saw nothing of what is changed says the same again.
type sight uint8

const (
	frontSeen sight = 1 << iota
	backSeen
	edgesSeen
	elsewhereSeen // layers of which nobody knows on which face they lie
	clothSeen
	bracingSeen
	trimmingSeen
	timeSeen
)

var (
	facesSeen = map[record.Face]sight{record.Front: frontSeen, record.Back: backSeen, record.Edges: edgesSeen, record.Unknown: elsewhereSeen}
	kindsSeen = map[record.Kind]sight{"cloth": clothSeen, "braced": bracingSeen, "trimmed": trimmingSeen}
)

// changed is what entries change, written now.
func changed(bodies []record.Body) sight {
	out := timeSeen
	for _, b := range bodies {
		var faces []record.Face
		switch b := b.(type) {
		case record.Coat:
			faces = b.Faces
		case record.ClothLaid:
			faces = b.Faces
		case record.Braced, record.Trimmed:
		default:
			return ^sight(0)
		}
		for _, f := range faces {
			out |= facesSeen[f]
		}
		out |= kindsSeen[b.Kind()]
	}
	return out
}

// all are the films of all faces, in the order of application. They are shared.
func (s *subject) all() []film {
	s.seen |= frontSeen | backSeen | edgesSeen | elsewhereSeen
	return s.films
}

// between are the films that do not lie on the edges.
func (s *subject) between() []film {
	s.seen |= frontSeen | backSeen | elsewhereSeen
	return filter(s.films, func(f film) bool { return f.Layer.Face != record.Edges })
}

// on returns the films of one face, from the board outwards. They are shared.
func (s *subject) on(f record.Face) []film {
	s.seen |= facesSeen[f]
	l, known := s.layers[f]
	if !known {
		l = slices.Clip(filter(s.films, func(l film) bool { return l.Layer.Face == f }))
		s.layers[f] = l
	}
	return l
}

// each returns what of one kind happened to the panel, in order. It is shared.
func each[B record.Body](s *subject) []record.Done[B] {
	var b B
	kind := b.Kind()
	s.seen |= kindsSeen[kind]
	done, known := s.done[kind]
	if !known {
		done = record.Each[B](s.p)
		s.done[kind] = done
	}
	return done.([]record.Done[B])
}

func (s *subject) clothIntended() record.Answer {
	s.seen |= clothSeen
	return s.p.ClothIntended()
}

func (s *subject) moment() time.Time {
	s.seen |= timeSeen
	return s.now
}
