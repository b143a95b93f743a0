package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
)

func panelDescribe(a *app) *cobra.Command {
	var b record.Described
	return onPanels(a, &cobra.Command{
		Use: "describe " + panelWords, Short: "title, date of the work, inscription, signature, subject",
		Example: `  backleaf panel describe 0142 --title "Low tide, evening" --made 2026 --signed "lower right, in paint"
  backleaf panel describe 0143 --subject "harbour with two boats" --inscription "on the back: for M."`,
	}, "the panels to describe", &b, func(f *actFlags) {
		f.text(&b.Title, "title", "title of the work")
		f.text(&b.Romanised, "romanised", "the title in Latin letters, where papers cannot print its script")
		f.when(&b.Made, "made", "date of the work: 2026, 2026-05, 1998~ (about)")
		f.text(&b.Subject, "subject", "what it shows")
		f.text(&b.Inscription, "inscription", "what is written on it and where")
		f.text(&b.Signed, "signed", "where and how it is signed")
		f.text(&b.Features, "features", "marks by which it can be told from another")
		f.text(&b.Type, "type", "type of object (default painting)")
		f.text(&b.Medium, "medium-line", "medium and support in your own words")
		f.value(&b.MeantFor, "meant-for-rh", "humidity of the room it is to hang in: 50%")
		f.text(&b.Owner, "own-reference", "your own number")
		word(f, &b.Framed, "framed", "yes, no, unknown")
		f.text(&b.Edition, "edition", "if it is not one of its kind: \"2 of 3\"")
		f.text(&b.Summary, "summary", "what it is, in a few sentences")
		f.text(&b.Note, "note", "remark")
	})
}
