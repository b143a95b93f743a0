package main

import (
	"bytes"
	"fmt"
	"os"

	"backleaf/cmd/internal/terminal"
	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/studio/exchange"
	"backleaf/record/tell"
)

func newImport(a *app) {
	var o sheetFlags
	var also, highest []string
	a.command("import", flags{"mapping": &o.mapping, "also": &also, "highest": &highest, "dry-run": &o.dry, "all": &o.all, "rows-that-pass": &o.partly, "again": &o.again}, func(r *run) error {
		if o.file = r.args[0]; o.mapping != "" {
			return r.importSheet(o)
		}
		if o.partly || o.again {
			return usage("", "--rows-that-pass and --again are for spreadsheets: name a --mapping")
		}
		if info, err := os.Stat(o.file); err == nil && info.IsDir() {
			return r.importDeposit(o.file, highest)
		}
		data, err := a.readInput(o.file)
		if err != nil {
			return err
		}
		es, lines, err := exchange.Read(o.file, data)
		if err != nil {
			hint := string(a.catalogue().Hints["not-imported"])
			if t := bytes.TrimLeft(data, "\ufeff \t\r\n"); len(t) > 0 && t[0] != '{' {
				hint = "a spreadsheet is read with --mapping FILE; see \"backleaf import --help\""
			}
			return hinted(err, hint)
		}
		if len(es) == 0 {
			a.told("no-entries", record.With("file", o.file))
			return nil
		}
		order := exchange.Order{Name: o.file, Lines: lines, Highest: highest, Dry: o.dry, Progress: a.progress()}
		for _, k := range also {
			if _, ok := record.Blank(record.Kind(k)); !ok {
				return usage("", "--also: there is no kind of entry called %q", k)
			}
			order.Asked = append(order.Asked, record.Kind(k))
		}
		return r.writing(func(r *run) error { return r.importEntries(order, es) })
	})
}

// importEntries writes what a file holds, or says what it would.
func (r *run) importEntries(order exchange.Order, es []record.Entry) error {
	v, err := r.Look(r.ctx, nil, nil)
	if err != nil {
		return err
	}
	done, noted, err := exchange.Import(r.ctx, v, order, es)
	c := r.app.words(v.Shop.Studio)
	for _, n := range noted {
		r.noted("at-line", record.With("line", n.Line), tell.Told("text", tell.Say(c, n.Said)))
	}
	if err != nil || order.Dry {
		for _, k := range exchange.Kinds(es) {
			r.told(k.Code, k.Values...)
		}
	}
	switch {
	case err != nil:
	case order.Dry:
		r.noted("import-tried")
	default:
		r.sayImported(done, order.Name)
	}
	return err
}

// readInput reads a file, or standard input for "-".
func (a *app) readInput(name string) ([]byte, error) {
	if name != "-" {
		return terminal.Waiting(a.interrupted, func() ([]byte, error) { return safefile.Read(name, exchange.MaxBytes) })
	}
	data, err := terminal.Waiting(a.interrupted, func() ([]byte, error) { return safefile.ReadAll(a.in, exchange.MaxBytes) })
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
