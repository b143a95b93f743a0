package paper

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
)

// Limits that keep a hostile file from taking the machine with it.
const (
	maxFileBytes    = 256 << 20
	maxDecodedBytes = 64 << 20
	maxReferences   = 64 // of a reference to a reference, and of tables of objects
)

// A pdfFile gives the objects of a file by number. It reads files with plain
// cross-reference tables, as this package writes them, and their updates.
type pdfFile struct {
	data    []byte
	offsets map[int]int
	objects map[int]any // read, or added
	reading map[int]bool
	trailer pdfDict
	last    int // highest number in use
}

func openPDF(data []byte) (*pdfFile, error) {
	if len(data) > maxFileBytes {
		return nil, fmt.Errorf("%w: larger than %d MB", errPDF, maxFileBytes>>20)
	}
	f := &pdfFile{data: data, offsets: map[int]int{}, objects: map[int]any{}, reading: map[int]bool{}}
	if !bytes.HasPrefix(data, []byte("%PDF-")) {
		return nil, fmt.Errorf("%w: no PDF header", errPDF)
	}
	tail := max(0, len(data)-1024)
	at := bytes.LastIndex(data[tail:], []byte("startxref"))
	if at < 0 {
		return nil, fmt.Errorf("%w: no cross-reference table", errPDF)
	}
	l := &lexer{data, tail + at + len("startxref")}
	o, err := l.object(0)
	if err != nil {
		return nil, err
	}
	pos := o
	seen := map[int64]bool{}
	for pos != nil {
		n, ok := pos.(int64)
		if !ok || n < 0 || n >= int64(len(data)) || seen[n] || len(seen) >= maxReferences {
			return nil, fmt.Errorf("%w: cross-reference table not found", errPDF)
		}
		seen[n] = true
		trailer, err := f.table(int(n))
		if err != nil {
			return nil, err
		}
		if f.trailer == nil {
			f.trailer = trailer
		}
		pos = trailer["Prev"]
	}
	return f, nil
}

// table reads a cross-reference table and its trailer (7.5.4, 7.5.5). Entries
// of a newer table, which was read before, win.
func (f *pdfFile) table(pos int) (pdfDict, error) {
	l := &lexer{f.data, pos}
	if w, _ := l.object(0); w != keyword("xref") {
		return nil, fmt.Errorf("%w: cross-reference streams are not read here", errPDF)
	}
	for {
		o, err := l.object(0)
		if err != nil {
			return nil, err
		}
		if o == keyword("trailer") {
			break
		}
		first, ok := o.(int64)
		n, err := l.object(0)
		count, ok2 := n.(int64)
		if err != nil || !ok || !ok2 || first < 0 || count < 0 || first > 1<<24 || count > int64(len(f.data)/18) {
			return nil, errPDF
		}
		for i := range int(count) {
			if err := f.entry(l, int(first)+i); err != nil {
				return nil, err
			}
		}
	}
	o, err := l.object(0)
	trailer, ok := o.(pdfDict)
	if err != nil || !ok {
		return nil, fmt.Errorf("%w: no trailer", errPDF)
	}
	return trailer, nil
}

func (f *pdfFile) entry(l *lexer, num int) error {
	offset, err1 := l.object(0)
	_, err2 := l.object(0)
	kind, err3 := l.object(0)
	at, ok := offset.(int64)
	if err1 != nil || err2 != nil || err3 != nil || !ok {
		return errPDF
	}
	if _, newer := f.offsets[num]; newer {
		return nil
	}
	switch {
	case kind == keyword("f"):
		f.offsets[num] = -1
	case kind == keyword("n") && at > 0 && at < int64(len(f.data)):
		f.offsets[num] = int(at)
		f.last = max(f.last, num)
	default:
		return errPDF
	}
	return nil
}

// object returns an object by number; one that does not exist is null (7.3.10).
func (f *pdfFile) object(num int) (any, error) {
	if o, ok := f.objects[num]; ok {
		return o, nil
	}
	at, ok := f.offsets[num]
	if !ok || at < 0 {
		return nil, nil
	}
	if f.reading[num] || len(f.reading) >= maxReferences {
		return nil, fmt.Errorf("%w: object %d needs itself to be read", errPDF, num)
	}
	f.reading[num] = true
	defer delete(f.reading, num)
	o, err := f.parse(num, at)
	if err != nil {
		return nil, err
	}
	f.objects[num] = o
	return o, nil
}

func (f *pdfFile) parse(num, at int) (any, error) {
	bad := fmt.Errorf("%w: object %d", errPDF, num)
	l := &lexer{f.data, at}
	n, err1 := l.object(0)
	_, err2 := l.object(0)
	obj, err3 := l.object(0)
	if err1 != nil || err2 != nil || err3 != nil || n != any(int64(num)) || obj != keyword("obj") {
		return nil, bad
	}
	o, err := l.object(0)
	if err != nil {
		return nil, bad
	}
	end, err := l.object(0)
	if err != nil {
		return nil, bad
	}
	dict, isDict := o.(pdfDict)
	switch {
	case end == keyword("endobj"):
		return o, nil
	case end != keyword("stream") || !isDict:
		return nil, bad
	}
	if l.peek(0) == '\r' {
		l.pos++
	}
	if l.peek(0) == '\n' {
		l.pos++
	}
	length, err := f.resolve(dict["Length"])
	if err != nil {
		return nil, err
	}
	size, ok := length.(int64)
	if !ok || size < 0 || size > int64(len(f.data)-l.pos) {
		return nil, bad
	}
	s := &pdfStream{dict, f.data[l.pos : l.pos+int(size)]}
	l.pos += int(size)
	if end, err := l.object(0); err != nil || end != keyword("endstream") {
		return nil, bad
	}
	return s, nil
}

// resolve follows references to the object itself.
func (f *pdfFile) resolve(o any) (any, error) {
	for range maxReferences {
		ref, ok := o.(pdfRef)
		if !ok {
			return o, nil
		}
		var err error
		if o, err = f.object(ref.num); err != nil {
			return nil, err
		}
	}
	return nil, fmt.Errorf("%w: references in a circle", errPDF)
}

// dict returns the dictionary that o is or refers to, a stream's included.
func (f *pdfFile) dict(o any) (pdfDict, error) {
	v, err := f.resolve(o)
	if err != nil {
		return nil, err
	}
	switch v := v.(type) {
	case pdfDict:
		return v, nil
	case *pdfStream:
		return v.dict, nil
	}
	return nil, fmt.Errorf("%w: dictionary expected", errPDF)
}

// array returns the array that o is or refers to; null is an empty one.
func (f *pdfFile) array(o any) ([]any, error) {
	v, err := f.resolve(o)
	if err != nil {
		return nil, err
	}
	a, ok := v.([]any)
	if !ok && v != nil {
		return nil, fmt.Errorf("%w: array expected", errPDF)
	}
	return a, nil
}

// decoded returns the bytes of the stream that o is or refers to, limit at most.
func (f *pdfFile) decoded(o any, limit int) ([]byte, error) {
	v, err := f.resolve(o)
	if err != nil {
		return nil, err
	}
	s, ok := v.(*pdfStream)
	if !ok {
		return nil, fmt.Errorf("%w: stream expected", errPDF)
	}
	filter, err := f.resolve(s.dict["Filter"])
	if err != nil {
		return nil, err
	}
	if a, ok := filter.([]any); ok && len(a) == 1 {
		if filter, err = f.resolve(a[0]); err != nil {
			return nil, err
		}
	}
	data := s.data
	switch {
	case filter == nil:
	case filter == any(pdfName("FlateDecode")) && s.dict["DecodeParms"] == nil:
		z, err := zlib.NewReader(bytes.NewReader(s.data))
		if err != nil {
			return nil, fmt.Errorf("%w: %w", errPDF, err)
		}
		if data, err = io.ReadAll(io.LimitReader(z, int64(limit)+1)); err != nil {
			return nil, fmt.Errorf("%w: %w", errPDF, err)
		}
	default:
		return nil, fmt.Errorf("%w: filter not known", errPDF)
	}
	if len(data) > limit {
		return nil, fmt.Errorf("%w: stream larger than %d MB", errPDF, limit>>20)
	}
	return data, nil
}

// add gives a new object a number.
func (f *pdfFile) add(o any) pdfRef {
	f.last++
	f.objects[f.last] = o
	return pdfRef{f.last, 0}
}
