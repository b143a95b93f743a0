package pdf

import "fmt"

// A pack is an object stream (7.5.7): objects without streams of their own,
// packed together.
type pack struct {
	data    []byte
	numbers []int
	offsets []int
}

// packed reads an object of an object stream and expects its number there.
func (f *File) packed(num int, p place) (any, error) {
	bad := fmt.Errorf("%w: object %d in object stream %d", ErrMalformed, num, p.stream)
	k, err := f.pack(p.stream)
	if err != nil {
		return nil, err
	}
	if p.at >= len(k.numbers) || k.numbers[p.at] != num {
		return nil, bad
	}
	o, err := (&lexer{k.data, k.offsets[p.at], f.spend}).object()
	if _, isWord := o.(keyword); err != nil || isWord {
		return nil, bad
	}
	return o, nil
}

func (f *File) pack(num int) (*pack, error) {
	if k, ok := f.packs[num]; ok {
		return k, nil
	}
	bad := fmt.Errorf("%w: object stream %d", ErrMalformed, num)
	if f.places[num].stream != 0 { // a stream cannot stand in a stream
		return nil, bad
	}
	o, err := f.object(num)
	if err != nil {
		return nil, err
	}
	s, ok := o.(*Stream)
	if !ok || s.Dict["Type"] != any(Name("ObjStm")) {
		return nil, bad
	}
	count, ok1 := s.Dict["N"].(int64)
	first, ok2 := s.Dict["First"].(int64)
	data, err := f.Decoded(s)
	if err != nil {
		return nil, err
	}
	if !ok1 || !ok2 || count < 0 || first < 0 || first > int64(len(data)) {
		return nil, bad
	}
	k := &pack{data: data}
	l := &lexer{data[:first], 0, f.spend}
	for range count {
		n, err1 := l.object()
		at, err2 := l.object()
		number, ok1 := n.(int64)
		offset, ok2 := at.(int64)
		if err1 != nil || err2 != nil || !ok1 || !ok2 || !numbers(number, 1) || offset < 0 || offset > int64(len(data))-first {
			return nil, bad
		}
		k.numbers, k.offsets = append(k.numbers, int(number)), append(k.offsets, int(first+offset))
	}
	f.packs[num] = k
	return k, nil
}
