package dossier

import (
	"slices"

	"backleaf/record"
)

// joined is what a row of a table says of one entry, or of several that say the
// same one after the other.
type joined struct {
	at    []record.When
	seqs  []int64
	cells []string
	byDay bool // only those of one day are joined
}

// join brings neighbours with the same cells together.
func join(rows []joined) []joined {
	var out []joined
	for _, r := range rows {
		if n := len(out); n > 0 && slices.Equal(out[n-1].cells, r.cells) && (!r.byDay || sameDay(out[n-1].at[0], r.at[0])) {
			out[n-1].at, out[n-1].seqs = append(out[n-1].at, r.at...), append(out[n-1].seqs, r.seqs...)
			continue
		}
		out = append(out, r)
	}
	return out
}

func sameDay(a, b record.When) bool {
	x, ok := a.Exact()
	y, too := b.Exact()
	return ok && too && x.Format("2006-01-02") == y.Format("2006-01-02")
}

// when says the moment of a row, or from when to when it was.
func (b *builder) when(r joined) string {
	first, last := r.at[0], r.at[len(r.at)-1]
	if len(r.at) == 1 {
		return b.Moment(first)
	}
	return b.c.Span(first, last)
}
