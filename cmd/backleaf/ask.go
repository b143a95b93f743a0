package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/ask"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

func newAsk(a *app) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: "ask NUMBER WORDS…", Short: "a short question about a panel, in the trade's words",
		Long: `Answers a short question from the record of a panel, by a thesaurus of trade terms:
what is recorded with the entries it rests on, or "not recorded". Nothing is guessed:
a word that is not understood is named. It can be asked about

` + wrapList(topicNames()) + ``,
		Example: `  backleaf ask 0142 adhesive
  backleaf ask 0142 is the back sealed
  backleaf ask KB26-0142-1 varnish remover`,
		Args: wanted(2, -1, "one panel and a question"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.read(c.Context(), func(s *studio.Session) error {
				as, err := questions.Ask(c.Context(), a.catalogue(), s.Book, args[0], strings.Join(args[1:], " "))
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
	c := a.catalogue()
	for _, x := range as {
		for i, l := range x.Lines {
			if es := c.Entries(x.Entries); i == len(x.Lines)-1 && es != "" {
				l = tell.Say(c, record.Say("resting-on", tell.Told("what", l), tell.Told("entries", es)))
			}
			if i > 0 {
				a.say("  %s", l)
				continue
			}
			a.tell(c, record.Say("ask-answer", tell.Told("topic", c.Question(x.Topic)), tell.Told("line", l)))
		}
	}
	return nil
}

// topicNames are what can be asked, in the order of the alphabet.
func topicNames() []string {
	var out []string
	for _, t := range ask.Topics() {
		out = append(out, tell.English.Question(t))
	}
	slices.Sort(out)
	return out
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
