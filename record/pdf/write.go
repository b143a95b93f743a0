package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
	"maps"
	"slices"
	"sync"
)

// Write writes all objects that can be reached, numbered anew in the order in
// which they are met, so that nothing depends on how they were numbered. The
// version is that of the format, such as "1.4"; catalog and info are what the
// trailer leads to.
func (f *File) Write(version string, catalog, info Dict) ([]byte, error) {
	w := &writer{file: f, numbers: map[int]int{}}
	root := w.number(f.Add(catalog))
	about := w.number(f.Add(info))
	fmt.Fprintf(&w.buf, "%%PDF-%s\n%%\xE2\xE3\xCF\xD3\n", version)
	for i := 0; i < len(w.queue); i++ {
		o, err := f.object(w.queue[i])
		if err != nil {
			return nil, err
		}
		if o, err = w.renumber(o, 0); err != nil {
			return nil, err
		}
		w.offsets = append(w.offsets, w.buf.Len())
		fmt.Fprintf(&w.buf, "%d 0 obj\n", i+1)
		writeObject(&w.buf, o)
		w.buf.WriteString("\nendobj\n")
	}
	digest := sha256.Sum256(w.buf.Bytes())
	id := String(digest[:16])
	start := w.buf.Len()
	fmt.Fprintf(&w.buf, "xref\n0 %d\n0000000000 65535 f\r\n", len(w.offsets)+1)
	for _, at := range w.offsets {
		fmt.Fprintf(&w.buf, "%010d 00000 n\r\n", at)
	}
	w.buf.WriteString("trailer\n")
	writeObject(&w.buf, Dict{"Size": len(w.offsets) + 1, "Root": root, "Info": about, "ID": []any{id, id}})
	fmt.Fprintf(&w.buf, "\nstartxref\n%d\n%%%%EOF\n", start)
	return w.buf.Bytes(), nil
}

type writer struct {
	file    *File
	buf     bytes.Buffer
	numbers map[int]int // old to new
	queue   []int       // old numbers in the order of the new ones
	offsets []int
}

func (w *writer) number(ref Ref) Ref {
	n, ok := w.numbers[ref.num]
	if !ok {
		w.queue = append(w.queue, ref.num)
		n = len(w.queue)
		w.numbers[ref.num] = n
	}
	return Ref{n, 0}
}

// renumber copies an object with its references changed.
func (w *writer) renumber(o any, depth int) (any, error) {
	if depth > maxNesting {
		return nil, fmt.Errorf("%w: nested too deep", ErrMalformed)
	}
	switch o := o.(type) {
	case Ref:
		return w.number(o), nil
	case []any:
		out := make([]any, len(o))
		for i, v := range o {
			var err error
			if out[i], err = w.renumber(v, depth+1); err != nil {
				return nil, err
			}
		}
		return out, nil
	case Dict:
		out := Dict{}
		for _, k := range slices.Sorted(maps.Keys(o)) {
			var err error
			if out[k], err = w.renumber(o[k], depth+1); err != nil {
				return nil, err
			}
		}
		return out, nil
	case *Stream:
		dict := Dict{}
		for k, v := range o.Dict {
			if k != "Length" { // written from the data
				dict[k] = v
			}
		}
		d, err := w.renumber(dict, depth+1)
		if err != nil {
			return nil, err
		}
		return &Stream{d.(Dict), o.Data}, nil
	}
	return o, nil
}

// Add gives a new object a number.
func (f *File) Add(o any) Ref {
	f.last++
	f.objects[f.last] = o
	return Ref{f.last, 0}
}

// packers are those used before, by level: a new one takes as long as a page.
var packers [1 + zlib.BestCompression - zlib.HuffmanOnly]sync.Pool

// Deflated packs data into a stream, at a level of [zlib.NewWriterLevel].
func Deflated(level int, data []byte) *Stream {
	var b bytes.Buffer
	used := &packers[level-zlib.HuffmanOnly]
	w, ok := used.Get().(*zlib.Writer)
	if !ok {
		w, _ = zlib.NewWriterLevel(nil, level)
	}
	defer used.Put(w)
	w.Reset(&b)
	w.Write(data) // a bytes.Buffer does not fail
	w.Close()
	return &Stream{Dict{"Filter": Name("FlateDecode")}, b.Bytes()}
}
