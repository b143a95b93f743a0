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
	Backleaf string `json:"backleaf"` // "entries"
	Version  int64  `json:"v"`
	Entries  spans  `json:"entries"`
}

// MaxBytes and maxWeight bound a file, and with it the memory that reading it
// takes: an entry weighs two, and one for every panel that it names.
const (
	MaxBytes  = 64 << 20
	maxWeight = 350_000
)

// spans are where in a file its entries stand.
type spans [][2]int64

var errMany = fmt.Errorf("more than %d entries, or half as many with the panels that they name: a backup holds any number", maxWeight/2)

// UnmarshalJSONFrom reads where the values of a list begin and end.
func (s *spans) UnmarshalJSONFrom(d *jsontext.Decoder) error {
	if d.PeekKind() != '[' {
		return errors.New("it is no list")
	}
	if _, err := d.ReadToken(); err != nil {
		return err
	}
	for d.PeekKind() != ']' {
		v, err := d.ReadValue()
		if err != nil {
			return err
		}
		if 2*len(*s) == maxWeight {
			return errMany
		}
		*s = append(*s, [2]int64{d.InputOffset() - int64(len(v)), d.InputOffset()})
	}
	_, err := d.ReadToken()
	return err
}

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
	lines, err = read(name, data, func(v jsontext.Value) (record.Entry, error) {
		e, err := accept.Parse(v)
		es = append(es, e)
		return e, err
	})
	if err != nil {
		es = nil
	}
	return es, lines, err
}

// ReadJournal reads a file that holds a whole journal. It judges nothing:
// what a later program wrote is read as it is.
func ReadJournal(name string, data []byte) (stored []form.Stored, lines []int, err error) {
	lines, err = read(name, data, func(v jsontext.Value) (record.Entry, error) {
		b := v // which is canonical as this program writes it; another may have laid it out anew
		e, err := form.Read(b)
		if err != nil {
			b = v.Clone()
			if err := b.Canonicalize(); err != nil {
				return e, err
			}
			e, err = form.Read(b)
		}
		stored = append(stored, form.Stored{Seq: e.Seq, Bytes: b, Entry: e})
		return e, err
	})
	if err != nil {
		stored = nil
	}
	return stored, lines, err
}

// read hands each entry of a file to take, as the part of data that it is.
func read(name string, data []byte, take func(jsontext.Value) (record.Entry, error)) (lines []int, err error) {
	line, counted := 1, int64(0)
	lineAt := func(off int64) int { // no line is counted twice
		off = min(max(off, counted), int64(len(data)))
		line, counted = line+bytes.Count(data[counted:off], []byte("\n")), off
		return line
	}
	fail := func(off int64, err error) ([]int, error) { return nil, &BadFile{name, lineAt(off), err} }
	var ex exchange
	if err := json.Unmarshal(data, &ex, json.RejectUnknownMembers(true)); err != nil {
		off, why := int64(0), err
		if sem, ok := errors.AsType[*json.SemanticError](err); ok && !errors.Is(err, errMany) {
			off, why = sem.ByteOffset, fmt.Errorf("something unexpected at %q", string(sem.JSONPointer))
		} else if syn, ok := errors.AsType[*jsontext.SyntacticError](err); ok {
			off, why = syn.ByteOffset, syn.Err
		} else if errors.Is(err, errMany) {
			why = errMany
		}
		return fail(off, fmt.Errorf("not an import file: %w", why))
	}
	if ex.Backleaf != "entries" || ex.Version != 1 {
		return fail(0, fmt.Errorf(`not an import file: expected "backleaf":"entries","v":1`))
	}
	weight := 0
	for i, at := range ex.Entries {
		v := jsontext.Value(data[at[0]:at[1]])
		lines = append(lines, lineAt(at[0]))
		e, err := take(v)
		if weight += 2 + len(e.Panels); err == nil && weight > maxWeight {
			err = errMany
		}
		if err != nil {
			return fail(at[0]+fieldOffset(v, err), fmt.Errorf("entry %d of the file, %w", i+1, err))
		}
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
