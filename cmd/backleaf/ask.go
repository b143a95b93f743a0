package main

import (
	"errors"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/ask"
	"backleaf/record/book"
)

// answerView is an answer for a program to read.
type answerView struct {
	Topic    string   `json:"topic"`
	Lines    []string `json:"lines"`
	Entries  []int64  `json:"entries"`
	Recorded bool     `json:"recorded"`
}

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
			return a.onePanel(c, args[0], func(b *book.Book, _ *record.Workshop, p *record.Panel) error {
				w, err := around(c.Context(), b, []record.Number{p.Number})
				if err != nil {
					return err
				}
				as, err := ask.Ask(w, w.Panel(p.Number), strings.Join(args[1:], " "))
				var no *ask.NotUnderstood
				if errors.As(err, &no) {
					return usage("\"backleaf ask --help\" lists what can be asked about", "%v", err)
				}
				if err != nil {
					return err
				}
				return a.sayAnswers(as)
			})
		},
	})
}

func (a *app) sayAnswers(as []ask.Answer) error {
	if a.asJSON {
		out := []answerView{}
		for _, x := range as {
			out = append(out, answerView{x.Topic, x.Lines, append([]int64{}, x.Entries...), x.Recorded})
		}
		return a.sayJSON(out)
	}
	for _, x := range as {
		name := x.Topic + ": "
		for i, l := range x.Lines {
			if i == len(x.Lines)-1 {
				l += after(" ", bracket(sayEntries(x.Entries)))
			}
			if i > 0 {
				name = "  "
			}
			a.say("%s%s", name, l)
		}
	}
	return nil
}

func sayEntries(seqs []int64) string {
	var out []string
	for i, s := range seqs {
		if i == 0 || s != seqs[i-1] {
			out = append(out, "E"+strconv.FormatInt(s, 10))
		}
	}
	return strings.Join(out, ", ")
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
