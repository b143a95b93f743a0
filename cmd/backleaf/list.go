package main

import (
	"cmp"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/sheet"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

func newList(a *app) *cobra.Command { return listAs(a, "list") }

// listAs is the command under a name: it stands alone and under "panel".
func listAs(a *app, name string) *cobra.Command {
	var o questions.Listing
	var order order
	c := &cobra.Command{
		Use: lastWord(name) + " [" + panelWords + "]", Short: "list panels",
		Example: "  backleaf " + name + "\n  backleaf " + name + " --stage painted --batch may --sort title",
		RunE: func(c *cobra.Command, args []string) error {
			if err := cmp.Or(order.known(), questions.KnownStage(o.Stage)); err != nil {
				return err
			}
			o.Terms = args
			return a.read(c.Context(), func(s *studio.Session) error {
				rows, of, err := questions.List(c.Context(), s.Book, o)
				if err != nil {
					return err
				}
				return a.sayPanelRows(rows, of, order)
			})
		},
	}
	c.Flags().StringVar(&o.Batch, "batch", "", "only of this batch")
	c.Flags().StringVar(&o.Stage, "stage", "", "only at this stage: board, sealed, \"cloth laid\", \"ground laid\", painted, varnished")
	c.Flags().StringVar(&o.Title, "title", "", "only with these words in the title")
	c.Flags().BoolVar(&o.Discarded, "all", false, "discarded panels too")
	order.flags(c)
	return a.csvFlag(a.jsonFlag(c))
}

// order is how a list is to be sorted.
type order struct {
	by      []string
	reverse bool
}

func (o *order) flags(c *cobra.Command) {
	c.Flags().StringSliceVar(&o.by, "sort", nil, "sort by one or more of "+strings.Join(questions.Orders(), ", ")+" (default: number)")
	c.Flags().BoolVar(&o.reverse, "reverse", false, "the last first")
}

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
		t.row(string(r.Number), string(r.Batch), c.Fill("{size}", record.With("size", r.Size)), c.Word(r.Stage), tell.Say(c, r.Where),
			tell.Say(c, record.Say("title", record.With("title", r.Title))))
	}
	return t.done()
}
