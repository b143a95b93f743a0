package main

import (
	"bytes"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/studio"
	"backleaf/record/studio/exchange"
	"backleaf/record/tell"
)

func newImport(a *app) *cobra.Command {
	var o sheetFlags
	var also, highest []string
	c := &cobra.Command{
		Use: "import FILE", Short: "read entries, or a spreadsheet of older panels, into the book",
		Long: `Read entries from a JSON file (schema/import.schema.json), all or nothing. One file
may hold a whole afternoon. They are written now and keep the name of the file; those
that erase, correct, issue, publish, declare a key or rename the studio are refused
unless each kind is asked for with --also. --dry-run shows what kinds there are, and
writes nothing. An export reads back into an empty book hash for hash,
and so does a deposit, with its photographs, if FILE is its folder; --highest then
says the highest number on any label, as in "backleaf restore".

With --mapping, read a spreadsheet of older panels: CSV or tab-separated text in
UTF-8, one panel a row. The mapping says which column is which field
(schema/mapping.schema.json lists them). Nothing is written unless every row passes,
or only those that do with --rows-that-pass; --dry-run shows what would be written
and every cell that is refused and why. To whom and for how much stay outside the
journal. A mapping looks like this:

  {"backleaf": "mapping", "v": 1,
   "columns": {"No.": "own_reference", "H": "height", "W": "width",
     "Support": "board", "Layers": "coats", "Cloth": "cloth",
     "Title": "title", "Year": "made",
     "Sold to": "handover_to", "Price": "handover_price"},
   "constants": {"batch": "old", "depth": "3", "cut": "unknown",
     "handover": "sale"},
   "shelf": {"ply": "birch-ply-3mm", "gesso": "acrylic-ground"},
   "words": {"coats":
     {"usual": "acrylic-sealer on all; cloth; gesso on front x3"}},
   "dates": "DD.MM.YYYY", "unit": "cm", "depth_unit": "mm", "currency": "EUR"}

A constant fills empty cells ("handover" only in rows that say to whom, for how much
or when); shelf gives names of the sheet for what is on the shelf; words replace a
whole cell. Inexact dates are welcome: 1998~, c. 1998, 199X, 2019-21, unknown.`,
		Example: `  backleaf import afternoon.json
  backleaf import from-a-friend.json --also amended
  backleaf --book copy.sqlite import journal.json --highest none
  backleaf --book copy.sqlite import ../deposit --highest KB26-0142-1
  backleaf import panels.csv --mapping mapping.json --dry-run`,
		Args: wanted(1, 1, "one file, a deposit, or - for standard input"),
		RunE: func(c *cobra.Command, args []string) error {
			if o.file = args[0]; o.mapping != "" {
				return a.importSheet(c.Context(), o)
			}
			if o.partly || o.again {
				return usage("", "--rows-that-pass and --again are for spreadsheets: name a --mapping")
			}
			if info, err := os.Stat(args[0]); err == nil && info.IsDir() {
				return a.importDeposit(c.Context(), args[0], highest)
			}
			data, err := a.readInput(args[0])
			if err != nil {
				return err
			}
			es, lines, err := exchange.Read(args[0], data)
			if err != nil {
				hint := string(hints["not-imported"])
				if t := bytes.TrimLeft(data, "\ufeff \t\r\n"); len(t) > 0 && t[0] != '{' {
					hint = "a spreadsheet is read with --mapping FILE; see \"backleaf import --help\""
				}
				return hinted(err, hint)
			}
			if len(es) == 0 {
				a.told("no-entries", record.With("file", args[0]))
				return nil
			}
			order := exchange.Order{Name: args[0], Lines: lines, Highest: highest, Dry: o.dry, Progress: a.progress()}
			for _, k := range also {
				if _, ok := record.Blank(record.Kind(k)); !ok {
					return usage("", "--also: there is no kind of entry called %q", k)
				}
				order.Asked = append(order.Asked, record.Kind(k))
			}
			return a.write(c.Context(), func(s *studio.Session) error {
				v, err := s.Look(c.Context(), nil, nil)
				if err != nil {
					return err
				}
				done, noted, err := exchange.Import(c.Context(), v, order, es)
				words := a.words(v.Shop.Studio)
				for _, n := range noted {
					a.noted("at-line", record.With("line", n.Line), tell.Told("text", tell.Say(words, n.Said)))
				}
				if err != nil || o.dry {
					for _, k := range exchange.Kinds(es) {
						a.told(k.Code, k.Values...)
					}
				}
				switch {
				case err != nil:
				case o.dry:
					a.noted("import-tried")
				default:
					a.sayImported(done, args[0])
				}
				return err
			})
		},
	}
	c.Flags().StringVar(&o.mapping, "mapping", "", "JSON file that says which column of a spreadsheet is which field")
	c.Flags().StringSliceVar(&also, "also", nil, "kinds of entries that are taken only where they are asked for")
	c.Flags().StringSliceVar(&highest, "highest", nil, "into an empty book: highest number on any label, of each year one; none: all are in the file")
	c.Flags().BoolVar(&o.dry, "dry-run", false, "show what would be written and what is refused; write nothing")
	c.Flags().BoolVar(&o.all, "all", false, "with --dry-run: every row and every kind of what is refused")
	c.Flags().BoolVar(&o.partly, "rows-that-pass", false, "write the rows that pass though others are refused")
	c.Flags().BoolVar(&o.again, "again", false, "import a sheet that was imported before: its rows are other panels")
	return c
}

// readInput reads a file, or standard input for "-".
func (a *app) readInput(name string) ([]byte, error) {
	if name != "-" {
		return waiting(a, func() ([]byte, error) { return safefile.Read(name, exchange.MaxBytes) })
	}
	data, err := waiting(a, func() ([]byte, error) { return safefile.ReadAll(a.in, exchange.MaxBytes) })
	if err != nil {
		return nil, fmt.Errorf("cannot read standard input: %w", err)
	}
	return data, nil
}

// sayImported says which entries were read from a file; of none it is silent.
func (a *app) sayImported(done []record.Entry, name string) {
	if len(done) > 0 {
		a.told("entries-imported", record.With("first", record.EntryRef(done[0].Seq)), record.With("last", record.EntryRef(done[len(done)-1].Seq)), record.With("n", len(done)), record.With("file", name))
	}
}
