package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newNote(a *app) *cobra.Command {
	var o moment
	c := &cobra.Command{
		Use: "note [" + panelWords + "] TEXT", Short: "write down anything else",
		Example: `  backleaf note 0142 "small dent in the lower left corner, filled"
  backleaf note "new brush for the sealer from today"`,
		Args: wanted(1, -1, "the text of the note, last"),
		RunE: func(c *cobra.Command, args []string) error {
			last := len(args) - 1
			return act(a, c.Context(), &o, args[:last], func(*typed.Reader) record.Note { return record.Note{Text: args[last]} })
		},
	}
	o.flags(c)
	return c
}
