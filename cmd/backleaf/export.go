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
		if file == "" || file == "-" {
			_, err := exchange.Export(r.ctx, r.Book, book.Filter{}, a.out)
			return err
		}
		n := 0
		err := safefile.Create(file, 0o644, func(f *os.File) (err error) { n, err = exchange.Export(r.ctx, r.Book, book.Filter{}, f); return err })
		if err == nil {
			a.told("entries-exported", record.With("file", file), record.With("n", n))
		}
		return err
	})
}
