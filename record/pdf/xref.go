package pdf

import (
	"errors"
	"fmt"
)

// ErrEncrypted says that a file is encrypted, if only against changes: nothing
// can be said of what it holds.
var ErrEncrypted = errors.New("the PDF is encrypted")

// tables reads the table of objects at start and the older ones it leads to.
func (f *File) tables(start any) error {
	seen := map[int64]bool{}
	newer := int64(-1)
	for at := start; at != nil; {
		n, ok := at.(int64)
		if !ok || n < 0 || n >= int64(len(f.data)) || seen[n] || len(seen) >= maxReferences {
			return fmt.Errorf("%w: cross-reference table not found", ErrMalformed)
		}
		seen[n] = true
		// What is appended stands behind what was there. The two tables of a
		// linearised file (Annex F) stand the other way round.
		if newer > n {
			f.updates++
		}
		newer = n
		trailer, err := f.section(int(n))
		if err != nil {
			return err
		}
		if trailer["Encrypt"] != nil {
			return ErrEncrypted
		}
		if f.trailer == nil {
			f.trailer = trailer
		}
		if root := trailer["Root"]; root != nil && root != f.trailer["Root"] {
			return fmt.Errorf("%w: an older table leads to another catalog", ErrAmbiguous)
		}
		at = trailer["Prev"]
	}
	return nil
}

// section reads one cross-reference section, a table or a stream, and gives its
// trailer. Entries of a newer section, which was read before, win.
func (f *File) section(at int) (Dict, error) {
	l := f.lexer(at)
	first, err := l.object()
	if err != nil {
		return nil, err
	}
	if _, ok := first.(int64); ok {
		return f.crossReferences(at)
	}
	if first != keyword("xref") {
		return nil, fmt.Errorf("%w: cross-reference table not found", ErrMalformed)
	}
	free, err := f.table(l)
	if err != nil {
		return nil, err
	}
	f.listed[l.pos-len("trailer")] = true
	o, err := l.object()
	trailer, ok := o.(Dict)
	if err != nil || !ok {
		return nil, fmt.Errorf("%w: no trailer", ErrMalformed)
	}
	f.extents = append(f.extents, extent{at: at, end: l.pos})
	// A file for old and new programs lists in a stream what its table, for the
	// old ones, says is free (7.5.8.4).
	if both, ok := trailer["XRefStm"].(int64); ok {
		if both < 0 || both >= int64(len(f.data)) {
			return nil, fmt.Errorf("%w: cross-reference stream not found", ErrMalformed)
		}
		if _, err := f.crossReferences(int(both)); err != nil {
			return nil, err
		}
	}
	for _, num := range free {
		f.enter(num, place{})
	}
	return trailer, nil
}

// table reads the subsections of a table up to its trailer (7.5.4).
func (f *File) table(l *lexer) (free []int, err error) {
	for {
		o, err := l.object()
		if err != nil {
			return nil, err
		}
		if o == keyword("trailer") {
			return free, nil
		}
		n, err := l.object()
		first, ok1 := o.(int64)
		count, ok2 := n.(int64)
		if err != nil || !ok1 || !ok2 || !numbers(first, count) {
			return nil, ErrMalformed
		}
		for num := int(first); num < int(first+count); num++ {
			offset, err1 := l.object()
			generation, err2 := l.object()
			kind, err3 := l.object()
			at, ok := offset.(int64)
			g, isNumber := generation.(int64)
			switch {
			case err1 != nil || err2 != nil || err3 != nil || !ok || !isNumber:
				return nil, ErrMalformed
			case kind == keyword("f"):
				free = append(free, num)
			case kind == keyword("n") && at > 0 && at < int64(len(f.data)):
				f.enter(num, place{at: int(at), generation: int(g)})
			default:
				return nil, ErrMalformed
			}
		}
	}
}

// numbers reports whether objects can have these numbers (Annex C).
func numbers(first, count int64) bool {
	const most = 8388607
	return first >= 0 && count >= 0 && first <= most && count <= most-first+1
}

// enter notes where an object stands, unless a newer section did.
func (f *File) enter(num int, p place) {
	if p != (place{}) {
		f.entries = append(f.entries, entry{num, p})
	}
	if _, newer := f.places[num]; newer {
		return
	}
	f.places[num] = p
	if p != (place{}) {
		f.last = max(f.last, num)
	}
}
