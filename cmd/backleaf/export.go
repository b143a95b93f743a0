package main

import (
	"bytes"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/exchange"
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
		var b bytes.Buffer
		if err := exchange.Write(&b, es); err != nil {
			return err
		}
		if err := create(file, 0o644, b.Bytes()); err != nil {
			return err
		}
		a.told("entries-exported", record.With("file", file), record.With("n", len(es)))
		return nil
	})
}
