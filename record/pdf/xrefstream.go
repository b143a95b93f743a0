package pdf

import "fmt"

// crossReferences reads a cross-reference stream (7.5.8) and gives its
// dictionary, which is its trailer.
func (f *File) crossReferences(at int) (Dict, error) {
	bad := fmt.Errorf("%w: cross-reference stream", ErrMalformed)
	l := f.lexer(at)
	l.skipSpace()
	f.listed[l.pos] = true
	first, err := l.object()
	num, ok := first.(int64)
	if err != nil || !ok {
		return nil, bad
	}
	o, err := f.parse(int(num), place{at: at})
	if err != nil {
		return nil, err
	}
	s, ok := o.(*Stream)
	if !ok || s.Dict["Type"] != any(Name("XRef")) {
		return nil, bad
	}
	widths, ok := wholeNumbers(s.Dict["W"])
	if !ok || len(widths) != 3 {
		return nil, bad
	}
	width := int64(0)
	for _, w := range widths {
		if w < 0 || w > 7 { // so that a field fits a number
			return nil, bad
		}
		width += w
	}
	index := []int64{0}
	if s.Dict["Index"] != nil {
		index, ok = wholeNumbers(s.Dict["Index"])
	} else if size, isNumber := s.Dict["Size"].(int64); isNumber {
		index = append(index, size)
	}
	data, err := f.Decoded(s)
	if err != nil {
		return nil, err
	}
	if !ok || len(index)%2 != 0 || width == 0 {
		return nil, bad
	}
	for ; len(index) > 0; index = index[2:] {
		first, count := index[0], index[1]
		if !numbers(first, count) || count > int64(len(data))/width {
			return nil, bad
		}
		if f.spend.objects -= int(count); f.spend.objects < 0 {
			return nil, bad
		}
		for i := range count {
			if !f.crossReference(int(first+i), data[:width], widths) {
				return nil, bad
			}
			data = data[width:]
		}
	}
	return s.Dict, nil
}

// crossReference enters one object (7.5.8.3). A type that is not known is null.
func (f *File) crossReference(num int, entry []byte, widths []int64) bool {
	fields := [3]int64{1} // the type where it has no field
	for i, w := range widths {
		if w > 0 {
			fields[i] = 0
		}
		for range w {
			fields[i] = fields[i]<<8 | int64(entry[0])
			entry = entry[1:]
		}
	}
	switch fields[0] {
	case 1:
		if fields[1] <= 0 || fields[1] >= int64(len(f.data)) {
			return false
		}
		f.enter(num, place{at: int(fields[1]), generation: int(fields[2])})
	case 2:
		if !numbers(fields[1], 1) || fields[1] == 0 {
			return false
		}
		f.enter(num, place{at: int(fields[2]), stream: int(fields[1])})
	default:
		f.enter(num, place{})
	}
	return true
}

// wholeNumbers returns an array of whole numbers that stands in place.
func wholeNumbers(o any) ([]int64, bool) {
	a, ok := o.([]any)
	out := make([]int64, len(a))
	for i, v := range a {
		n, isNumber := v.(int64)
		ok = ok && isNumber
		out[i] = n
	}
	return out, ok
}
