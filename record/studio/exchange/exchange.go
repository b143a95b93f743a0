// Package exchange reads and writes what goes between books: the entries of a
// journal as JSON, and spreadsheets of older panels. The published schema of
// the first is schema/import.schema.json.
package exchange

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"iter"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/book"
	"backleaf/record/form"
)

// MaxBytes and maxWeight bound what is held of a file at once, and with it the
// memory that it takes: an entry weighs two, and one for every panel that it
// names. Nothing has more than maxEntry bytes between two entries, nor an entry
// more than maxPanels.
const (
	MaxBytes  = 64 << 20
	maxWeight = 350_000
	maxEntry  = 2 * form.MaxBytes
	maxPanels = 5000
)

var (
	errMany = fmt.Errorf("more than %d entries, or half as many with the panels that they name: a backup holds any number", maxWeight/2)
	errWide = fmt.Errorf("it names more than %d panels: a backup holds any number", maxPanels)
	errLong = fmt.Errorf("more than %d bytes without an end of an entry", maxEntry)
)

// Write writes entries in the exchange form: their very bytes, a line each.
func Write(w io.Writer, es []form.Stored) error {
	_, err := write(w, func(one func(form.Stored) error) error {
		for _, e := range es {
			if err := one(e); err != nil {
				return err
			}
		}
		return nil
	})
	return err
}

// Export writes entries of a book likewise, as they are read, and returns how
// many there are. What an error cut short nobody takes for a whole file.
func Export(ctx context.Context, b *book.Book, f book.Filter, w io.Writer) (n int, err error) {
	return write(w, func(one func(form.Stored) error) error { return b.Read(ctx, f, one) })
}

func write(w io.Writer, all func(one func(form.Stored) error) error) (n int, err error) {
	b := bufio.NewWriter(w)
	b.WriteString(`{"backleaf":"entries","v":1,"entries":[`)
	if err := all(func(e form.Stored) error {
		if n++; n > 1 {
			b.WriteByte(',')
		}
		b.WriteByte('\n')
		_, err := b.Write(e.Bytes)
		return err
	}); err != nil {
		return n, err
	}
	b.WriteString("\n]}\n")
	return n, b.Flush()
}

// BadFile says where in an import file something cannot be accepted.
type BadFile struct {
	File string
	Line int
	Err  error
}

func (e *BadFile) Error() string { return fmt.Sprintf("%s, line %d: %v", e.File, e.Line, e.Err) }
func (e *BadFile) Unwrap() error { return e.Err }

// Listed is an entry of a file, with the line at which it stands and the byte
// at which it ends.
type Listed struct {
	record.Entry
	Line int
	Read int64
}

// Read reads the entries of an import file one by one, as they may be written
// today; the first error ends it. Errors carry file, line and field.
func Read(name string, r io.Reader) iter.Seq2[Listed, error] {
	return read(name, r, func(v jsontext.Value) (record.Entry, error) { return accept.Parse(v) })
}

// ReadJournal reads a file that holds a whole journal, of at most so many
// entries as a deposit may have. It judges nothing: what a later program wrote is
// read as it is.
func ReadJournal(name string, data []byte) (stored []form.Stored, lines []int, err error) {
	weight := 0
	for e, err := range read(name, bytes.NewReader(data), func(v jsontext.Value) (record.Entry, error) {
		b := v.Clone() // which is canonical as this program writes it; another may have laid it out anew
		e, err := form.Read(b)
		if err != nil {
			if err := b.Canonicalize(); err != nil {
				return e, err
			}
			e, err = form.Read(b)
		}
		if weight += 2 + len(e.Panels); err == nil && weight > maxWeight {
			err = errMany
		}
		stored = append(stored, form.Stored{Seq: e.Seq, Bytes: b, Entry: e})
		return e, err
	}) {
		if err != nil {
			return nil, nil, err
		}
		lines = append(lines, e.Line)
	}
	return stored, lines, nil
}

// otherFile is an error about what is a spreadsheet, a mapping or the like.
type otherFile struct{ error }

// lines counts the lines of what is read, and ends it where a value is too long.
type lines struct {
	r       io.Reader
	read    int64
	least   int64   // what is needed no more
	breaks  []int64 // of lines, after it
	counted int     // lines before it
}

func (l *lines) Read(p []byte) (int, error) {
	if l.read-l.least > maxEntry {
		return 0, errLong
	}
	n, err := l.r.Read(p[:min(len(p), 64<<10)])
	for i, c := range p[:n] {
		if c == '\n' {
			l.breaks = append(l.breaks, l.read+int64(i))
		}
	}
	l.read += int64(n)
	return n, err
}

// at is the line of a byte: none before the last one that was asked for.
func (l *lines) at(off int64) int {
	i := 0
	for i < len(l.breaks) && l.breaks[i] < off {
		i++
	}
	l.counted, l.breaks, l.least = l.counted+i, l.breaks[i:], max(l.least, off)
	return l.counted + 1
}

// read takes each entry of a file.
func read(name string, r io.Reader, take func(jsontext.Value) (record.Entry, error)) iter.Seq2[Listed, error] {
	return func(yield func(Listed, error) bool) {
		ls := &lines{r: r}
		d := jsontext.NewDecoder(ls)
		fail := func(off int64, err error) { yield(Listed{}, &BadFile{name, ls.at(off), err}) }
		other := false // a file of another kind from its beginning
		no := func(err error) {
			off := d.InputOffset()
			if syn, ok := errors.AsType[*jsontext.SyntacticError](err); ok {
				if off, err = syn.ByteOffset, errors.New("it is another kind of file, or damaged here"); errors.Is(syn, io.ErrUnexpectedEOF) {
					err = errors.New("it ends in the middle: it was cut short")
				}
			}
			if errors.Is(err, errLong) {
				err = errLong
			}
			err = fmt.Errorf("this is no file of entries: %w", err)
			if other {
				err = otherFile{err}
			}
			fail(off, err)
		}
		if t, err := d.ReadToken(); err != nil || t.Kind() != '{' {
			switch other = true; err {
			case nil:
				err = errors.New("it is no object")
			case io.EOF:
				err = errors.New("it is empty")
			}
			no(err)
			return
		}
		var form string
		var version, n int64
		for d.PeekKind() == '"' {
			t, err := d.ReadToken()
			switch member := t.String(); {
			case err != nil:
			case member == "backleaf":
				if err = json.UnmarshalDecode(d, &form); form == "mapping" {
					other, err = true, errors.New("it is a mapping, which says how a spreadsheet is read")
				}
			case member == "v":
				err = json.UnmarshalDecode(d, &version)
			case member == "entries" && d.PeekKind() == '[':
				_, err = d.ReadToken()
				for err == nil && d.PeekKind() != ']' {
					v, bad := d.ReadValue()
					if err = bad; err != nil {
						break
					}
					at := d.InputOffset() - int64(len(v))
					line := ls.at(at)
					n++
					e, bad := take(v)
					if bad == nil && len(e.Panels) > maxPanels {
						bad = errWide
					}
					if bad != nil {
						fail(at+fieldOffset(v, bad), fmt.Errorf("entry %d of the file, %w", n, bad))
						return
					}
					if !yield(Listed{e, line, d.InputOffset()}, nil) {
						return
					}
				}
				if err == nil {
					_, err = d.ReadToken()
				}
			default:
				err = fmt.Errorf("something unexpected at %q", "/"+member)
			}
			if err != nil {
				if sem, ok := errors.AsType[*json.SemanticError](err); ok {
					err = fmt.Errorf("something unexpected at %q", string(sem.JSONPointer))
				}
				no(err)
				return
			}
			ls.at(d.InputOffset())
		}
		_, err := d.ReadToken()
		if err == nil {
			if _, err = d.ReadToken(); err == io.EOF {
				err = nil
			} else if err == nil {
				err = errors.New("there is more after its end")
			}
		}
		switch {
		case err != nil:
			no(err)
		case form != "entries" || version != 1:
			fail(0, errors.New(`this is no file of entries: it does not begin with "backleaf":"entries","v":1`))
		}
	}
}

// fieldOffset finds the field an error names inside an entry.
func fieldOffset(v jsontext.Value, err error) int64 {
	fe, ok := err.(*record.FieldError)
	if !ok {
		return 0
	}
	if fe.Offset > 0 {
		return fe.Offset
	}
	d := jsontext.NewDecoder(bytes.NewReader(v))
	for {
		if _, err := d.ReadToken(); err != nil {
			return 0
		}
		if strings.TrimPrefix(string(d.StackPointer()), "/") == fe.Field {
			return d.InputOffset()
		}
	}
}
