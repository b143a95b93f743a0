package pdf

import "fmt"

// parse reads the object at a place and expects its number and generation there.
func (f *File) parse(num int, p place) (any, error) {
	bad := fmt.Errorf("%w: object %d", ErrMalformed, num)
	l := f.lexer(p.at)
	l.skipSpace()
	x := extent{at: l.pos}
	if !l.begins(num, p.generation) {
		return nil, fmt.Errorf("%w: object %d does not stand where its table says", ErrAmbiguous, num)
	}
	o, err := l.object()
	if err != nil {
		return nil, bad
	}
	end, err := l.object()
	if err != nil {
		return nil, bad
	}
	if dict, isDict := o.(Dict); end == keyword("stream") && isDict {
		if o, err = f.stream(num, dict, l, &x); err != nil {
			return nil, err
		}
		if end, err = l.object(); err != nil {
			return nil, bad
		}
	}
	if end != keyword("endobj") {
		return nil, bad
	}
	x.end = l.pos
	f.extents = append(f.extents, x)
	return o, nil
}

// begins reads the number and generation of an object.
func (l *lexer) begins(num, generation int) bool {
	n, err1 := l.object()
	g, err2 := l.object()
	obj, err3 := l.object()
	return err1 == nil && err2 == nil && err3 == nil && n == any(int64(num)) && g == any(int64(generation)) && obj == keyword("obj")
}

// stream reads what stands behind "stream". Where its data begins and ends is
// told by line ends (7.3.8.1); with others one program takes other bytes than
// another.
func (f *File) stream(num int, dict Dict, l *lexer, x *extent) (*Stream, error) {
	bad := fmt.Errorf("%w: object %d", ErrMalformed, num)
	if lineEnd := l.lineEnd(); lineEnd != "\n" && lineEnd != "\r\n" {
		return nil, fmt.Errorf("%w: the data of object %d does not begin on its own line", ErrAmbiguous, num)
	}
	length, err := f.resolve(dict["Length"])
	if err != nil {
		return nil, err
	}
	size, ok := length.(int64)
	if !ok || size < 0 || size > int64(len(f.data)-l.pos) {
		return nil, bad
	}
	s := &Stream{dict, f.data[l.pos : l.pos+int(size)]}
	x.dataAt, x.dataEnd = l.pos, l.pos+int(size)
	l.pos = x.dataEnd
	l.lineEnd()
	if word := l.word(); word != "endstream" {
		return nil, bad
	}
	return s, nil
}

// lineEnd reads one line end, if there is one.
func (l *lexer) lineEnd() string {
	from := l.pos
	if l.peek(0) == '\r' {
		l.pos++
	}
	if l.peek(0) == '\n' {
		l.pos++
	}
	return string(l.data[from:l.pos])
}
