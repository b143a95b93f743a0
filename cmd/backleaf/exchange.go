package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/safefile"
	"backleaf/record/studio"
)

// exchange is the form of an import or export file: entries in order. The
// published schema is schema/import.schema.json.
type exchange struct {
	Backleaf string           `json:"backleaf"` // "entries"
	Version  int64            `json:"v"`
	Entries  []jsontext.Value `json:"entries"`
}

// maxImport bounds a file that is read whole.
const maxImport = 1 << 30

// sayStored prints entries in the exchange form: their very bytes, a line each.
func (a *app) sayStored(es []book.Stored) error { return writeExchange(a.out, es) }

func writeExchange(w io.Writer, es []book.Stored) error {
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

func newExport(a *app) *cobra.Command {
	var file string
	c := &cobra.Command{
		Use: "export", Short: "write the whole journal in the form that import reads",
		Long: `Write the journal: import into an empty book gives the same journal, hash for hash.
Private parts (buyers, prices) are not in it. Photographs are files of their own.`,
		Example: `  backleaf export -o journal.json
  backleaf export | sha256sum`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.read(c.Context(), func(s *studio.Session) error {
				b := s.Book
				es, err := b.Entries(c.Context(), book.Filter{})
				if err != nil {
					return err
				}
				if file == "" || file == "-" {
					return writeExchange(a.out, es)
				}
				if err := safefile.Create(file, 0o644, func(f *os.File) error { return writeExchange(f, es) }); err != nil {
					return fmt.Errorf("cannot write the export: %w", err)
				}
				a.say("%s  %d entries", file, len(es))
				return nil
			})
		},
	}
	c.Flags().StringVarP(&file, "output", "o", "", "file to write (default: standard output)")
	return c
}

// badFile says where in an import file something cannot be accepted.
type badFile struct {
	file string
	line int
	err  error
}

func (e *badFile) Error() string { return fmt.Sprintf("%s, line %d: %v", e.file, e.line, e.err) }
func (e *badFile) Unwrap() error { return e.err }

// readExchange reads an import file whole. Errors carry file, line and field.
func readExchange(name string, data []byte) ([]record.Entry, []int, error) {
	fail := func(off int64, err error) ([]record.Entry, []int, error) {
		return nil, nil, &badFile{name, lineAt(data, off), err}
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
	var es []record.Entry
	var lines []int
	off := int64(0)
	for i, v := range ex.Entries {
		// Each value is a verbatim part of the file, and they stand in order.
		at := int64(bytes.Index(data[off:], v))
		if at < 0 {
			at = 0
		}
		off += at
		e, err := record.Decode(v)
		if err != nil {
			return fail(off+fieldOffset(v, err), fmt.Errorf("entry %d of the file, %w", i+1, err))
		}
		es, lines = append(es, e), append(lines, lineAt(data, off))
		off += int64(len(v))
	}
	return es, lines, nil
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

// readInput reads a file, or standard input for "-".
func (a *app) readInput(name string) ([]byte, error) {
	data, err := waiting(a, func() ([]byte, error) {
		if name == "-" {
			return readAtMost(a.in, maxImport)
		}
		f, err := os.Open(name)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		return readAtMost(f, maxImport)
	})
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", name, err)
	}
	return data, nil
}

func newImport(a *app) *cobra.Command {
	var o sheetImport
	c := &cobra.Command{
		Use: "import FILE", Short: "read entries, or a spreadsheet of older panels, into the book",
		Long: `Read entries from a JSON file (schema/import.schema.json), all or nothing. One file
may hold a whole afternoon. An export reads back into an empty book hash for hash,
and so does a deposit, with its photographs, if FILE is its folder.

With --mapping, read a spreadsheet of older panels: CSV or tab-separated text in
UTF-8, one panel a row. The mapping says which column is which field
(schema/mapping.schema.json lists them). Nothing is written unless every row passes,
or only those that do with --rows-that-pass; --dry-run shows what would be written
and every cell that is refused and why. To whom and for how much stay outside the
journal. A mapping looks like this:

  {"backleaf": "mapping", "v": 1,
   "columns": {"No.": "own_reference", "H": "height", "W": "width", "Support": "board",
     "Layers": "coats", "Cloth": "cloth", "Title": "title", "Year": "made",
     "Sold to": "handover_to", "Price": "handover_price"},
   "constants": {"batch": "old", "depth": "3", "cut": "unknown", "handover": "sale"},
   "shelf": {"ply": "birch-ply-3mm", "gesso": "acrylic-ground"},
   "words": {"coats": {"usual": "acrylic-sealer on all; cloth; gesso on front x3"}},
   "dates": "DD.MM.YYYY", "unit": "cm", "depth_unit": "mm", "currency": "EUR"}

A constant fills empty cells ("handover" only in rows that say to whom, for how much
or when); shelf gives names of the sheet for what is on the shelf; words replace a
whole cell. Inexact dates are welcome: 1998~, c. 1998, 199X, 2019-21, unknown.`,
		Example: `  backleaf import afternoon.json
  backleaf --book copy.sqlite import journal.json
  backleaf --book copy.sqlite import ../deposit
  backleaf import panels.csv --mapping mapping.json --dry-run`,
		Args: wanted(1, 1, "one file, a deposit, or - for standard input"),
		RunE: func(c *cobra.Command, args []string) error {
			if o.file = args[0]; o.mapping != "" {
				return a.importSheet(c.Context(), o)
			}
			if o.dry || o.partly || o.again {
				return usage("", "--dry-run, --rows-that-pass and --again are for spreadsheets: name a --mapping")
			}
			if info, err := os.Stat(args[0]); err == nil && info.IsDir() {
				return a.importDeposit(c.Context(), args[0])
			}
			data, err := a.readInput(args[0])
			if err != nil {
				return err
			}
			es, lines, err := readExchange(args[0], data)
			if err != nil {
				hint := "nothing was written; put the file right and import it again"
				if t := bytes.TrimLeft(data, "\ufeff \t\r\n"); len(t) > 0 && t[0] != '{' {
					hint = "a spreadsheet is read with --mapping FILE; see \"backleaf import --help\""
				}
				return hinted(err, hint)
			}
			return a.importEntries(c.Context(), args[0], es, lines)
		},
	}
	c.Flags().StringVar(&o.mapping, "mapping", "", "JSON file that says which column of a spreadsheet is which field")
	c.Flags().BoolVar(&o.dry, "dry-run", false, "show what would be written and what is refused; write nothing")
	c.Flags().BoolVar(&o.partly, "rows-that-pass", false, "write the rows that pass though others are refused")
	c.Flags().BoolVar(&o.again, "again", false, "import a sheet that was imported before: its rows are other panels")
	return c
}
