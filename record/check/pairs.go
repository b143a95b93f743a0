package check

import (
	"backleaf/record"
	"backleaf/record/amount"
	"backleaf/record/trade"
)

// pair is a layer over another on the same face, or over the board, which has
// no entry of its own but the cut.
type pair struct {
	above, below film
	shown        trade.Strata  // what the lower one shows to the upper
	direct       record.Answer // whether nothing lies between
}

// pairs lists what may lie directly on what on a face.
func (s *subject) pairs(face record.Face) (out []pair) {
	for _, above := range s.on(face) {
		out = append(out, s.under(above)...)
	}
	return out
}

// under lists what a layer may lie directly on. A cloth lies in its adhesive
// and is no upper layer of a pair.
func (s *subject) under(above film) (out []pair) {
	if isCloth(above) {
		return nil
	}
	films := s.on(above.Layer.Face)
	over := make([]record.Answer, len(films)) // whether above was laid after each
	first := record.Answer(record.Yes)
	for i, f := range films {
		over[i] = record.No
		if f != above {
			over[i] = laidBefore(f, above)
			first = all(first, not(over[i]))
		}
	}
	for i, below := range films {
		direct := over[i]
		for k, f := range films {
			if direct == record.No {
				break
			}
			if k != i && over[k] != record.No {
				direct = all(direct, not(all(laidBefore(below, f), over[k])))
			}
		}
		if direct != record.No {
			out = append(out, pair{above, below, s.shows(below, films), direct})
		}
	}
	if first != record.No {
		board := &filmed{Film: amount.Film{Layer: record.Layer{Face: above.Layer.Face}}}
		out = append(out, pair{above, board, trade.BoardStrata(s.board().Kind), first})
	}
	return out
}

// shows is what a layer shows to the next: a cloth, or the adhesive it was
// wetted through with.
func (s *subject) shows(f film, films []film) trade.Strata {
	if isCloth(f) {
		for _, a := range films {
			if a.Layer.Seq == f.Layer.Seq && isCoat(a) {
				return trade.Shows(f.made, a.made)
			}
		}
	}
	return f.strataOf()
}

// lower names the lower layer of a pair.
func (p pair) lower() record.Value {
	if p.below.Layer.Seq == 0 {
		return record.With("layer", record.Code("board"))
	}
	return what(p.below)
}
