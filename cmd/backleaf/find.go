package main

import (
	"cmp"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
)

func newFind(a *app) *cobra.Command {
	var o questions.Filter
	var order order
	c := &cobra.Command{
		Use: "find [WORDS…]", Short: "find panels by words and by what went into them",
		Long: `Find panels. Words, or beginnings of words, are looked for in titles, notes, remarks,
inscriptions and whatever else was written freely; all of them must be there. Every
filter narrows the result further. What is not recorded does not fit, unless it is
asked for (--unsealed, none, unknown). Discarded panels are found too.`,
		Example: `  backleaf find --lot "TW 2504-31"
  backleaf find harbour --made-between "1998 2004" --where sale
  backleaf find --board plywood --unsealed back --csv
  backleaf find --varnish none --stage painted --where studio
  backleaf find --finding balanced-pull --size-from "40 x 60 cm"`,
		RunE: func(c *cobra.Command, args []string) error {
			o.Words = strings.Join(args, " ")
			search, err := o.Read(a.now())
			if err := cmp.Or(order.known(), err); err != nil {
				return err
			}
			return a.read(c.Context(), func(s *studio.Session) error {
				rows, of, warnings, err := search.Panels(c.Context(), s)
				if err != nil {
					return err
				}
				a.warn(nil, warnings)
				return a.sayPanelRows(rows, of, order)
			})
		},
	}
	order.flags(c)
	filterFlags(c, &o)
	return a.csvFlag(a.jsonFlag(c))
}

func filterFlags(c *cobra.Command, o *questions.Filter) {
	f := c.Flags()
	f.StringSliceVar(&o.Materials, "material", nil, "a material went into it")
	f.StringSliceVar(&o.Lots, "lot", nil, "a lot went into it")
	f.StringSliceVar(&o.Binders, "binder", nil, "a coat holds this binder: "+strings.Join(record.Words("Binder"), ", ")+", unknown")
	f.StringSliceVar(&o.Boards, "board", nil, "kind of board, material or lot, unknown: "+strings.Join(record.Words("BoardKind"), ", "))
	f.StringSliceVar(&o.Cloths, "cloth", nil, "fibre, material or lot, none, unknown: "+strings.Join(record.Words("Fibre"), ", "))
	f.StringSliceVar(&o.Unsealed, "unsealed", nil, "no sealing coat is recorded on this face: front, back, edges")
	f.BoolVar(&o.OutOfBalance, "out-of-balance", false, "coats and cloth of front and back do not pull alike, or do not let moisture through alike")
	f.StringVar(&o.Varnish, "varnish", "", "resin class, material or lot of a varnish, none, unknown")
	f.StringVar(&o.Removable, "removable", "", "its varnish can be taken off: yes, no, unknown")
	f.StringVar(&o.Made, "made-between", "", "date of the work (or else of cutting): \"1998 2004\", 199X, \"2019-03 2019-06\"")
	f.StringVar(&o.SizeFrom, "size-from", "", "at least as large, whichever way up: \"20 x 30 cm\"")
	f.StringVar(&o.SizeTo, "size-to", "", "at most as large, whichever way up: \"40 x 60 cm\"")
	f.StringVar(&o.Stage, "stage", "", "board, sealed, \"cloth laid\", \"ground laid\", painted, varnished")
	f.StringVar(&o.Where, "where", "", strings.Join(questions.Places(), ", "))
	f.StringVar(&o.HandedTo, "handed-to", "", "went to this person and did not come back; looks into the private parts")
	f.StringSliceVar(&o.Refs, "own-reference", nil, "your own number holds this")
	f.StringSliceVar(&o.Findings, "finding", nil, "a rule falls short: RULE, or \"RULE=not recorded\", \"RULE=holds\"")
	f.StringSliceVar(&o.Batches, "batch", nil, "of this batch")
}
