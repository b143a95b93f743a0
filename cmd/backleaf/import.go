package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"slices"

	"backleaf/cmd/internal/terminal"
	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/studio"
	"backleaf/record/studio/exchange"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
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
		order := exchange.Order{Name: o.file, Highest: highest, Dry: o.dry, Progress: a.progress()}
		var kinds []string
		for _, k := range record.Kinds() {
			kinds = append(kinds, string(k))
		}
		for _, k := range also {
			if !slices.Contains(kinds, k) {
				return typed.NotAmong("also", k, kinds)
			}
			order.Asked = append(order.Asked, record.Kind(k))
		}
		var in io.Reader
		if o.file == "-" { // read before the book is opened, which nobody else writes to meanwhile
			data, err := a.readInput("-")
			if err != nil {
				return err
			}
			in = bytes.NewReader(data)
		} else {
			f, err := safefile.Open(o.file, safefile.Unbounded)
			if err != nil {
				return err
			}
			defer f.Close()
			if info, err := f.Stat(); err == nil {
				order.Size = info.Size()
			}
			in = f
		}
		return r.writing(func(r *run) error { return r.importEntries(order, in) })
	})
}

// importEntries writes what a file holds, or says what it would.
func (r *run) importEntries(o exchange.Order, file io.Reader) error {
	v, err := r.Look(r.ctx, nil, nil)
	if err != nil {
		return err
	}
	t, err := exchange.Import(r.ctx, v, o, exchange.Read(o.Name, file))
	c := r.app.words(v.Shop.Studio)
	for _, n := range t.Noted {
		r.noted("at-line", record.With("line", n.Line), tell.Told("text", tell.Say(c, n.Said)))
	}
	if o.Dry || refuse.Code(err) == "import-unasked" {
		for _, k := range t.Counted() {
			r.told(k.Code, k.Values...)
		}
	}
	switch {
	case err != nil:
		return err
	case o.Dry && t.Last != 0:
		r.noted("import-tried")
		return nil
	}
	return r.done(studio.Written{Means: t.Said(o.Name)}, nil)
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
