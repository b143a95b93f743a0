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
			rows, of, err := questions.List(r.ctx, r.Book, o)
			if err != nil {
				return err
			}
			return a.sayPanelRows(rows, of, by)
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

func (a *app) sayPanelRows(rows []questions.Row, of int, o order) error {
	questions.Sort(rows, o.by, o.reverse)
	if a.asCSV {
		return sheet.Write(a.out, questions.Table(a.catalogue(), rows))
	}
	if a.asJSON {
		return a.sayJSON(rows)
	}
	if of == 0 {
		a.noted("no-panels")
		return nil
	}
	if len(rows) == 0 {
		a.noted("none-of-panels", record.With("n", of))
		return nil
	}
	t, c := a.table(), a.catalogue()
	for _, r := range rows {
		t.Row(string(r.Number), string(r.Batch), c.Fill("{size}", record.With("size", r.Size)), c.Word(r.Stage), tell.Say(c, r.Where),
			tell.Say(c, record.Say("title", record.With("title", r.Title))))
	}
	return t.Done()
}
