package pdf

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
)

// sound refuses a file that shows one reader another document than it shows the
// next. A program that finds a fault, or thinks so, looks through the whole file
// without its tables, also through the data of streams: the last object of a
// number is then the true one, the last trailer or catalog leads to the rest.
// So every entry of every table must lead to its own object, what is replaced
// must stand before what replaces it, nothing may overlap, and nothing may look
// like an object or a trailer that no table lists. All that is listed is read
// here.
func (f *File) sound() error {
	entries := map[entry]bool{}
	for _, e := range f.entries {
		entries[e] = true
	}
	for _, e := range f.entries {
		if err := f.soundEntry(e, entries); err != nil {
			return err
		}
	}
	slices.SortFunc(f.extents, func(a, b extent) int { return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.end, b.end)) })
	f.extents = slices.Compact(f.extents) // some are read again
	at := 0
	for _, x := range f.extents {
		if x.at < at {
			return fmt.Errorf("%w: what stands at byte %d stands inside something else", ErrAmbiguous, x.at)
		}
		at = x.end
	}
	if err := f.hidden(true); err != nil {
		return err
	}
	return f.hidden(false)
}

// soundEntry looks at one entry of a table, also one that is replaced.
func (f *File) soundEntry(e entry, entries map[entry]bool) error {
	now := f.places[e.num]
	begins := 0
	if e.stream == 0 {
		l := f.lexer(e.at)
		l.skipSpace()
		begins = l.pos
	}
	if now != (place{}) && f.stands(now) < f.stands(e.place) {
		return fmt.Errorf("%w: object %d stands behind the one that replaces it", ErrAmbiguous, e.num)
	}
	var o any
	var err error
	switch {
	case now == e.place:
		o, err = f.object(e.num)
	case e.stream == 0:
		if l := f.lexer(e.at); !l.begins(e.num, e.generation) {
			return fmt.Errorf("%w: object %d does not stand where a table says", ErrAmbiguous, e.num)
		}
		o, _ = f.parse(e.num, e.place) // once replaced, its parts may be gone
	}
	if err != nil {
		return err
	}
	var kind any
	switch o := o.(type) {
	case Dict:
		kind = o["Type"]
	case *Stream:
		kind = o.Dict["Type"]
	}
	switch {
	case kind == any(Name("Catalog")) && f.trailer["Root"] != any(Ref{e.num, e.generation}):
		return fmt.Errorf("%w: object %d is a second catalog", ErrAmbiguous, e.num)
	case kind == any(Name("XRef")) && !f.listed[begins]:
		return fmt.Errorf("%w: object %d is a table that none leads to", ErrAmbiguous, e.num)
	case kind == any(Name("ObjStm")) && now == e.place:
		k, err := f.pack(e.num)
		if err != nil {
			return err
		}
		for i, num := range k.numbers {
			if !entries[entry{num, place{at: i, stream: e.num}}] {
				return fmt.Errorf("%w: object stream %d holds object %d, which no table lists there", ErrAmbiguous, e.num, num)
			}
		}
	}
	if e.stream == 0 {
		f.listed[begins] = true
	}
	return nil
}

// stands says where an object begins, or the stream that it is packed in.
func (f *File) stands(p place) int {
	if p.stream > 0 {
		return f.places[p.stream].at
	}
	return p.at
}

// hidden looks for the beginning of an object or trailer that no table lists,
// with and without an eye for comments.
func (f *File) hidden(comments bool) error {
	first, second := -1, -1 // where the two words before began, if they are whole numbers
	for at := 0; at < len(f.data); {
		switch c := f.data[at]; {
		case isSpace(c):
			at++
			continue
		case c == '%' && comments:
			l := lexer{data: f.data, pos: at}
			l.skipSpace()
			at = l.pos
			continue
		case isDelimiter(c):
			first, second = -1, -1
			at++
			continue
		}
		end := at
		for end < len(f.data) && !isSpace(f.data[end]) && !isDelimiter(f.data[end]) {
			end++
		}
		word := f.data[at:end]
		name := bytes.TrimLeft(word, "0123456789") // "0obj" is "0 obj" to some
		begins := first
		if len(name) < len(word) {
			begins = second
		}
		trailer := f.lexer(end)
		switch {
		case begins >= 0 && bytes.HasPrefix(name, []byte("obj")) && !f.listed[begins]:
			return f.unlisted(begins, "object")
		case string(name) == "trailer" && !f.listed[at]:
			if trailer.skipSpace(); trailer.peek(0) == '<' && trailer.peek(1) == '<' {
				return f.unlisted(at, "trailer")
			}
		}
		digits := len(bytes.TrimRight(word, "0123456789"))
		switch {
		case digits == len(word):
			first, second = -1, -1
		case digits > 0:
			first, second = -1, at+digits
		default:
			first, second = second, at
		}
		at = end
	}
	return nil
}

// unlisted says what no table lists. In the data of a stream it may be honest,
// a PDF that somebody attached as it was; nobody can tell.
func (f *File) unlisted(at int, what string) error {
	for _, x := range f.extents {
		if x.dataAt <= at && at < x.dataEnd {
			return fmt.Errorf("%w: the data of a stream holds another document, which some programs take for this one", ErrMalformed)
		}
	}
	return fmt.Errorf("%w: at byte %d stands the beginning of an %s that no table lists", ErrAmbiguous, at, what)
}
