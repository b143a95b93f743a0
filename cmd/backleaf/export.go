package main

import (
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/safefile"
	"backleaf/record/studio/exchange"
	"os"
)

func newExport(a *app) {
	var file string
	a.reads("export", flags{"output": &file}, func(r *run) error {
		es, err := r.Book.Entries(r.ctx, book.Filter{})
		if err != nil {
			return err
		}
		if file == "" || file == "-" {
			return exchange.Write(a.out, es)
		}
		err = safefile.Create(file, 0o644, func(f *os.File) error { return exchange.Write(f, es) })
		if err == nil {
			a.told("entries-exported", record.With("file", file), record.With("n", len(es)))
		}
		return err
	})
}
