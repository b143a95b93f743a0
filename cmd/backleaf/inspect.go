package main

import (
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newInspect(a *app) *cobra.Command {
	var o moment
	var t record.Inspection
	var bow, span, toward, along, edges, adhesion string
	c := &cobra.Command{
		Use: "inspect " + panelWords, Short: "write down a look at a panel",
		Example: `  backleaf inspect 0142 --bow "1.5 mm" --span "60 cm" --hollow-to front --edges sound --adhesion sound
  backleaf inspect batch:may --adhesion sound --remarks "tapped all over"`,
		Args: wanted(1, -1, "the panels that were looked at"),
		RunE: func(c *cobra.Command, args []string) error {
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.Inspection {
				r.Text("bow", bow, &t.Bow)
				r.Text("span", span, &t.Span)
				typed.Word(r, "hollow-to", toward, &t.Toward)
				typed.Word(r, "along", along, &t.Along)
				typed.Word(r, "edges", edges, &t.Edges)
				typed.Word(r, "adhesion", adhesion, &t.Adhesion)
				return t
			})
		},
	}
	f := c.Flags()
	f.StringVar(&bow, "bow", "", "height of the bow: \"1.5 mm\"")
	f.StringVar(&span, "span", "", "length it was measured over: \"60 cm\"")
	f.StringVar(&toward, "hollow-to", "", "front, back, flat")
	f.StringVar(&along, "along", "", "direction in which the bow was measured: "+strings.Join(record.Words("Along"), ", "))
	f.StringVar(&edges, "edges", "", strings.Join(record.Words("Sound"), ", "))
	f.StringVar(&adhesion, "adhesion", "", "by tapping: "+strings.Join(record.Words("Sound"), ", "))
	f.StringVar(&t.By, "by", "", "who looked")
	f.StringVar(&t.Remarks, "remarks", "", "anything else")
	o.flags(c)
	return c
}
