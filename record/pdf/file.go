package pdf

import (
	"bytes"
	"fmt"
)

// MaxBytes is the largest file that [Attachments] reads.
const MaxBytes = 32 << 20

// spending is what reading a file may still cost. A stranger's may take about
// 100 MB of memory and a second.
type spending struct {
	objects  int // numbers, names, strings, … made in memory
	looked   int // bytes of objects read; more than the file has if they overlap
	unpacked int // bytes of streams
}

var (
	onStrangers = spending{objects: 1 << 19, looked: 3 * MaxBytes, unpacked: MaxBytes}
	onOwn       = spending{objects: 1 << 26, looked: 1 << 32, unpacked: 1 << 32}
)

// maxReferences bounds references to references, objects that are needed to
// read one another, and tables of objects.
const maxReferences = 64

// A File gives the objects of a file by number.
type File struct {
	data    []byte
	trailer Dict
	places  map[int]place
	entries []entry       // of all tables, also those that a newer one replaces
	listed  map[int]bool  // bytes at which tables and their objects begin
	extents []extent      // what was read
	objects map[int]any   // read, or added
	packs   map[int]*pack // object streams that were opened
	reading map[int]bool
	last    int // highest number in use
	updates int // times something was appended
	spend   *spending
}

// A place says where an object stands: at byte at, in which generation, or as
// the at-th of an object stream, always in generation 0. The zero place is that
// of an object that was deleted.
type place struct{ at, stream, generation int }

// An entry says where a table has an object, for [File.sound].
type entry struct {
	num int
	place
}

// An extent is a stretch of the file that is an object or a table, and where in
// it the data of a stream stands.
type extent struct {
	at, end         int
	dataAt, dataEnd int
}

// Open reads a file that this program made itself; its size is not bounded.
func Open(data []byte) (*File, error) { return open(data, onOwn) }

func open(data []byte, spend spending) (*File, error) {
	f := &File{data: data, places: map[int]place{}, listed: map[int]bool{}, objects: map[int]any{}, packs: map[int]*pack{}, reading: map[int]bool{}, spend: &spend}
	if !bytes.HasPrefix(data, []byte("%PDF-")) {
		return nil, fmt.Errorf("%w: no PDF header", ErrMalformed)
	}
	const tailBytes = 1024 // where the table must be named, as readers agree
	tail := max(0, len(data)-tailBytes)
	at := bytes.LastIndex(data[tail:], []byte("startxref"))
	if at < 0 {
		return nil, fmt.Errorf("%w: no cross-reference table", ErrMalformed)
	}
	l := f.lexer(tail + at + len("startxref"))
	start, err := l.object()
	if err != nil {
		return nil, err
	}
	f.extents = append(f.extents, extent{at: tail + at, end: l.pos})
	return f, f.tables(start)
}

func (f *File) lexer(pos int) *lexer { return &lexer{f.data, pos, f.spend} }

// Catalog returns the dictionary that all else hangs on (7.7.2).
func (f *File) Catalog() (Dict, error) { return f.Dict(f.trailer["Root"]) }

// Dicts visits every object that is a dictionary, in the order of their numbers.
// What visit adds is not visited.
func (f *File) Dicts(visit func(Dict) error) error {
	for num, last := 1, f.last; num <= last; num++ {
		o, err := f.object(num)
		if err != nil {
			return err
		}
		if d, ok := o.(Dict); ok {
			if err := visit(d); err != nil {
				return err
			}
		}
	}
	return nil
}

// object returns an object by number; one that does not exist is null (7.3.10).
func (f *File) object(num int) (any, error) {
	if o, ok := f.objects[num]; ok {
		return o, nil
	}
	p, ok := f.places[num]
	if !ok || p == (place{}) {
		return nil, nil
	}
	if f.reading[num] || len(f.reading) >= maxReferences {
		return nil, fmt.Errorf("%w: object %d needs itself to be read", ErrMalformed, num)
	}
	f.reading[num] = true
	defer delete(f.reading, num)
	var o any
	var err error
	if p.stream > 0 {
		o, err = f.packed(num, p)
	} else {
		o, err = f.parse(num, p)
	}
	if err != nil {
		return nil, err
	}
	f.objects[num] = o
	return o, nil
}

// referred returns the object of a reference. Programs differ in what they do
// when table and reference name two generations: some look for another object.
func (f *File) referred(ref Ref) (any, error) {
	p, ok := f.places[ref.num]
	if _, added := f.objects[ref.num]; !ok && !added {
		return nil, fmt.Errorf("%w: object %d is needed, and no table has it", ErrAmbiguous, ref.num)
	}
	if p != (place{}) && p.generation != ref.gen {
		return nil, fmt.Errorf("%w: object %d in generation %d and %d", ErrAmbiguous, ref.num, p.generation, ref.gen)
	}
	return f.object(ref.num)
}

// resolve follows references to the object itself.
func (f *File) resolve(o any) (any, error) {
	for range maxReferences {
		ref, ok := o.(Ref)
		if !ok {
			return o, nil
		}
		var err error
		if o, err = f.referred(ref); err != nil {
			return nil, err
		}
	}
	return nil, fmt.Errorf("%w: references in a circle", ErrMalformed)
}

// Dict returns the dictionary that o is or refers to, a stream's included.
func (f *File) Dict(o any) (Dict, error) {
	v, err := f.resolve(o)
	if err != nil {
		return nil, err
	}
	switch v := v.(type) {
	case Dict:
		return v, nil
	case *Stream:
		return v.Dict, nil
	}
	return nil, fmt.Errorf("%w: dictionary expected", ErrMalformed)
}

// Array returns the array that o is or refers to; null is an empty one.
func (f *File) Array(o any) ([]any, error) {
	v, err := f.resolve(o)
	if err != nil {
		return nil, err
	}
	a, ok := v.([]any)
	if !ok && v != nil {
		return nil, fmt.Errorf("%w: array expected", ErrMalformed)
	}
	return a, nil
}
