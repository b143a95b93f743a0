package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newTreat(a *app) *cobra.Command {
	var o moment
	var t record.Treatment
	var on []string
	var text string
	c := &cobra.Command{
		Use: "treat " + panelWords + " [TEXT]", Short: "write down a treatment: who, what, with what, why",
		Long: `Write down what was done to a panel after it was finished, also years later and by
somebody else. It is a record, no advice: what to do is for a conservator.`,
		Example: `  backleaf treat 0142 "surface cleaned dry" --by "R. Invented, paintings conservator" --with "soft brush" --because "before a loan"
  backleaf treat 0142 --by "R. Invented" --text "scratch toned" --with "watercolour over the varnish" --on front --at 2031-02-24`,
		Args: wanted(1, -1, "the panel, and what was done to it"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needs(t.By, "name and calling, like --by \"R. Invented, paintings conservator\"", "who did it?"); err != nil {
				return err
			}
			terms, said, err := careText(text, args)
			if err != nil {
				return err
			}
			t.Text = said
			return act(a, c.Context(), &o, terms, func(r *typed.Reader) record.Treatment {
				t.Faces = r.Faces("on", on)
				return t
			})
		},
	}
	f := c.Flags()
	f.StringVar(&t.By, "by", "", "who did it; stands in the journal and in papers: no private name without leave")
	f.StringVar(&text, "text", "", "what was done")
	f.StringVar(&t.With, "with", "", "with what")
	f.StringVar(&t.Why, "because", "", "why")
	f.StringSliceVar(&on, "on", nil, "faces")
	o.flags(c)
	return c
}

// careText splits the words of a command into panels and the text, which is
// given by --text or stands last.
func careText(text string, args []string) (terms []string, said string, err error) {
	if text != "" {
		return args, text, nil
	}
	if len(args) < 2 {
		return nil, "", usage("say it with --text \"…\", or as the last words in quotes", "what was seen or done?")
	}
	last := len(args) - 1
	return args[:last], args[last], nil
}
