package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record/ask"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
)

func newAsk(a *app) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: "ask NUMBER WORDS…", Short: "a short question about a panel, in the trade's words",
		Long: `Answers a short question from the record of a panel, by a thesaurus of trade terms:
what is recorded with the entries it rests on, or "not recorded". Nothing is guessed:
a word that is not understood is named. It can be asked about

` + wrapList(ask.Topics()) + ``,
		Example: `  backleaf ask 0142 adhesive
  backleaf ask 0142 is the back sealed
  backleaf ask KB26-0142-1 varnish remover`,
		Args: wanted(2, -1, "one panel and a question"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.read(c.Context(), func(s *studio.Session) error {
				as, err := questions.Ask(c.Context(), s.Book, args[0], strings.Join(args[1:], " "))
				if err != nil {
					return err
				}
				return a.sayAnswers(as)
			})
		},
	})
}

func (a *app) sayAnswers(as []questions.Answer) error {
	if a.asJSON {
		return a.sayJSON(as)
	}
	for _, x := range as {
		name := x.Topic + ": "
		for i, l := range x.Lines {
			if i == len(x.Lines)-1 {
				l += sayEntries(x.Entries)
			}
			if i > 0 {
				name = "  "
			}
			a.say("%s%s", name, l)
		}
	}
	return nil
}

// sayEntries names the entries that something rests on: " (E3, E7)".
func sayEntries(seqs []int64) string {
	var out []string
	for _, s := range slices.Compact(slices.Clone(seqs)) {
		out = append(out, fmt.Sprintf("E%d", s))
	}
	if out == nil {
		return ""
	}
	return " (" + strings.Join(out, ", ") + ")"
}

// wrapList sets words in lines for a help text.
func wrapList(words []string) string {
	var b strings.Builder
	n := 0
	for i, w := range words {
		if i+1 < len(words) {
			w += ","
		}
		if n+len(w) > 82 {
			b.WriteString("\n")
			n = 0
		}
		if n == 0 {
			w = "  " + w
		} else {
			w = " " + w
		}
		b.WriteString(w)
		n += len(w)
	}
	return b.String()
}
