package main

import (
	"cmp"

	"backleaf/record"
	"backleaf/record/sheet"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

// newList lists panels: the command stands alone and under "panel".
func newList(a *app) {
	for _, name := range []string{"list", "panel list"} {
		var o questions.Listing
		var by order
		a.reads(name, merged([]flags{by.flags(), {"json": &a.asJSON, "csv": &a.asCSV, "batch": &o.Batch, "stage": &o.Stage, "title": &o.Title, "all": &o.Discarded}}), func(r *run) error {
			if err := cmp.Or(by.known(), questions.KnownStage(o.Stage)); err != nil {
				return err
			}
			o.Terms = r.args
			return r.sayPanelRows(by, func(f func(questions.Row) error) error { return questions.List(r.ctx, r.Book, o, f) })
		})
	}
}

// order is how a list is to be sorted.
type order struct {
	by      []string
	reverse bool
}

func (o *order) flags() flags { return flags{"sort": &o.by, "reverse": &o.reverse} }

func (o *order) known() error { return questions.KnownOrder(o.by) }

// sayPanelRows prints the rows of a list as they come.
func (r *run) sayPanelRows(o order, list func(func(questions.Row) error) error) error {
	c, n := r.catalogue(), 0
	each := func(f func(questions.Row) error) error {
		return questions.Sorted(list, o.by, o.reverse, func(x questions.Row) error { n++; return f(x) })
	}
	switch {
	case r.asCSV:
		return sheet.Write(r.out, func(row func([]string) error) error {
			return cmp.Or(row(questions.Columns), each(func(x questions.Row) error { return row(x.Cells(c)) }))
		})
	case r.asJSON:
		return r.sayJSONList(func(add func(any) error) error { return each(func(x questions.Row) error { return add(x) }) })
	}
	t := r.table()
	if err := each(func(x questions.Row) error {
		t.Row(string(x.Number), string(x.Batch), c.Fill("{size}", record.With("size", x.Size)), c.Word(x.Stage), tell.Say(c, x.Where),
			tell.Say(c, record.Say("title", record.With("title", x.Title))))
		return nil
	}); err != nil {
		return err
	}
	if n > 0 {
		return t.Done()
	}
	of, err := r.Book.Count(r.ctx)
	switch {
	case err != nil:
		return err
	case of == 0:
		r.noted("no-panels")
	default:
		r.noted("none-of-panels", record.With("n", of))
	}
	return nil
}
