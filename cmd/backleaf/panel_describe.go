package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func panelDescribe(a *app) *cobra.Command {
	var o moment
	var d record.Described
	var made, meant, framed string
	c := &cobra.Command{
		Use: "describe " + panelWords, Short: "title, date of the work, inscription, signature, subject",
		Example: `  backleaf panel describe 0142 --title "Low tide, evening" --made 2026 --signed "lower right, in paint"
  backleaf panel describe 0143 --subject "harbour with two boats" --inscription "on the back: for M."`,
		Args: wanted(1, -1, "the panels to describe"),
		RunE: func(c *cobra.Command, args []string) error {
			return act(a, c.Context(), &o, args, func(r *typed.Reader) record.Described {
				r.Text("meant-for-rh", meant, &d.MeantFor)
				typed.Word(r, "framed", framed, &d.Framed)
				r.When(made, &d.Made)
				return d
			})
		},
	}
	o.flags(c)
	f := c.Flags()
	f.StringVar(&d.Title, "title", "", "title of the work")
	f.StringVar(&d.Romanised, "romanised", "", "the title in Latin letters, where papers cannot print its script")
	f.StringVar(&made, "made", "", "date of the work: 2026, 2026-05, 1998~ (about)")
	f.StringVar(&d.Subject, "subject", "", "what it shows")
	f.StringVar(&d.Inscription, "inscription", "", "what is written on it and where")
	f.StringVar(&d.Signed, "signed", "", "where and how it is signed")
	f.StringVar(&d.Features, "features", "", "marks by which it can be told from another")
	f.StringVar(&d.Type, "type", "", "type of object (default painting)")
	f.StringVar(&d.Medium, "medium-line", "", "medium and support in your own words")
	f.StringVar(&meant, "meant-for-rh", "", "humidity of the room it is to hang in: 50%")
	f.StringVar(&d.Owner, "own-reference", "", "your own number")
	f.StringVar(&framed, "framed", "", "yes, no, unknown")
	f.StringVar(&d.Edition, "edition", "", "if it is not one of its kind: \"2 of 3\"")
	f.StringVar(&d.Summary, "summary", "", "what it is, in a few sentences")
	f.StringVar(&d.Note, "note", "", "remark")
	return c
}
