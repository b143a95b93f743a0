package trade

import "strings"

// Work is what a row rests on: what was read, or "practice" or "memory".
type Work string

// Practice and Memory are no works: what painters commonly do, and what was
// remembered of the literature and not opened.
const (
	Practice Work = "practice"
	Memory   Work = "memory"
)

// Title names the work for a reader; empty for practice and memory. MITRA is
// the conservators' advice forum for artists' materials; most of its pages
// were seen by their opening.
func (w Work) Title() string { return works[w] }

// Standing is how firmly a row stands on what it names.
type Standing struct{ Works []Work }

func standing(from string) Standing {
	var s Standing
	for w := range strings.FieldsSeq(from) {
		s.Works = append(s.Works, Work(w))
	}
	return s
}

// Read reports that at least a part of it was read in a work that is named.
func (s Standing) Read() bool {
	for _, w := range s.Works {
		if w != Memory && w != Practice {
			return true
		}
	}
	return false
}
