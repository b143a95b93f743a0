package record

import (
	"cmp"
	"slices"
	"time"
)

// near is how far in time a reading of the room may be from a coat to speak for
// it.
const near = 12 * time.Hour

// Air returns the bounds of a time, and how near to it a reading of the room
// speaks for it; false where none does, since the time leaves too much.
func (w When) Air() (from, to time.Time, within time.Duration, ok bool) {
	from, ok1 := w.Earliest()
	to, ok2 := w.Latest()
	return from, to, near, ok1 && ok2 && to.Sub(from) <= 2*near
}

// day is the longest that a reading in [Workshop.air] can last, in seconds.
const day = 24 * 60 * 60

// airInOrder sorts the readings of the room, so that those near a time are
// found without looking at a lifetime of them.
func (w *Workshop) airInOrder() {
	for _, c := range w.Climate {
		if c.At.Known() && c.At.from <= c.At.to && c.At.to <= c.At.from+day { // an open beginning is far away
			w.air = append(w.air, c)
		} else {
			w.vague = append(w.vague, c)
		}
	}
	slices.SortStableFunc(w.air, func(a, b Done[Climate]) int { return cmp.Compare(a.At.from, b.At.from) })
}

// Readings returns the readings of the room that may lie near a time, in
// the order in which they were written.
func (w *Workshop) Readings(at When) []Done[Climate] {
	if !at.Known() {
		return nil
	}
	away := int64(near/time.Second) + day
	i, _ := slices.BinarySearchFunc(w.air, at.from, func(c Done[Climate], from int64) int {
		if c.At.from < from && from-c.At.from > away {
			return -1
		}
		return 1
	})
	out := slices.Clone(w.vague)
	for _, c := range w.air[i:] {
		if c.At.from > at.to && c.At.from-at.to > away {
			break
		}
		out = append(out, c)
	}
	out = slices.DeleteFunc(out, func(c Done[Climate]) bool { return !c.At.Within(at, near) })
	slices.SortFunc(out, func(a, b Done[Climate]) int { return cmp.Compare(a.Seq, b.Seq) })
	return out
}
