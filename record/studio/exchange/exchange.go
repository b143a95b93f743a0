// Package exchange reads and writes what goes between books: the entries of a
// journal as JSON, and spreadsheets of older panels. The published schema of
// the first is schema/import.schema.json.
package exchange

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/form"
)

// exchange is the form of an import or export file: entries in order.
type exchange struct {
	Backleaf string           `json:"backleaf"` // "entries"
	Version  int64            `json:"v"`
	Entries  []jsontext.Value `json:"entries"`
}

// MaxBytes bounds a file that is read whole.
const MaxBytes = 1 << 30

// Write writes entries in the exchange form: their very bytes, a line each.
func Write(w io.Writer, es []form.Stored) error {
	var b bytes.Buffer
	b.WriteString(`{"backleaf":"entries","v":1,"entries":[`)
	for i, e := range es {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteByte('\n')
		b.Write(e.Bytes)
	}
	b.WriteString("\n]}\n")
	_, err := w.Write(b.Bytes())
	return err
}

// BadFile says where in an import file something cannot be accepted.
type BadFile struct {
	File string
	Line int
	Err  error
}

func (e *BadFile) Error() string { return fmt.Sprintf("%s, line %d: %v", e.File, e.Line, e.Err) }
func (e *BadFile) Unwrap() error { return e.Err }

// Read reads an import file whole: entries that may be written today, and the
// lines at which they stand. Errors carry file, line and field.
func Read(name string, data []byte) (es []record.Entry, lines []int, err error) {
	lines, err = read(name, data, func(v jsontext.Value) error {
		e, err := accept.Parse(v)
		es = append(es, e)
		return err
	})
	if err != nil {
		es = nil
	}
	return es, lines, err
}

// ReadJournal reads a file that holds a whole journal. It judges nothing:
// what a later program wrote is read as it is.
func ReadJournal(name string, data []byte) (stored []form.Stored, lines []int, err error) {
	lines, err = read(name, data, func(v jsontext.Value) error {
		b := v.Clone()
		if err := b.Canonicalize(); err != nil {
			return err
		}
		e, err := form.Read(b)
		stored = append(stored, form.Stored{Seq: e.Seq, Bytes: b, Entry: e})
		return err
	})
	if err != nil {
		stored = nil
	}
	return stored, lines, err
}

func read(name string, data []byte, take func(jsontext.Value) error) (lines []int, err error) {
	fail := func(off int64, err error) ([]int, error) {
		return nil, &BadFile{name, lineAt(data, off), err}
	}
	var ex exchange
	if err := json.Unmarshal(data, &ex, json.RejectUnknownMembers(true)); err != nil {
		off, why := int64(0), err
		var sem *json.SemanticError
		var syn *jsontext.SyntacticError
		if errors.As(err, &sem) {
			off, why = sem.ByteOffset, fmt.Errorf("something unexpected at %q", string(sem.JSONPointer))
		} else if errors.As(err, &syn) {
			off, why = syn.ByteOffset, syn.Err
		}
		return fail(off, fmt.Errorf("not an import file: %w", why))
	}
	if ex.Backleaf != "entries" || ex.Version != 1 {
		return fail(0, fmt.Errorf(`not an import file: expected "backleaf":"entries","v":1`))
	}
	off := int64(0)
	for i, v := range ex.Entries {
		// Each value is a verbatim part of the file, and they stand in order.
		at := int64(bytes.Index(data[off:], v))
		if at < 0 {
			at = 0
		}
		off += at
		if err := take(v); err != nil {
			return fail(off+fieldOffset(v, err), fmt.Errorf("entry %d of the file, %w", i+1, err))
		}
		lines = append(lines, lineAt(data, off))
		off += int64(len(v))
	}
	return lines, nil
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

func lineAt(data []byte, off int64) int {
	return 1 + bytes.Count(data[:min(max(off, 0), int64(len(data)))], []byte("\n"))
}
