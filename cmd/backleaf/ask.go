package main

import (
	"os"
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
		Use: "ask PANEL|FILE WORDS…", Short: "a short question about a panel, in the trade's words",
		Long: `Answers a short question from the record of a panel: first which question was
understood, then what is recorded with the entries it rests on, or "not recorded".
Nothing is guessed: where too little is understood it says so and names the nearest
topics. A certificate or record file can be asked too, without any book.

It can be asked about

` + wrapList(topicNames()) + ``,
		Example: `  backleaf ask 0142 adhesive
  backleaf ask 0142 is the back sealed
  backleaf ask KB26-0142-1 who took the varnish off
  backleaf ask certificate.pdf what is not recorded`,
		Args: wanted(2, -1, "one panel and a question"),
		RunE: func(c *cobra.Command, args []string) error {
			question := strings.Join(args[1:], " ")
			if isFile(args[0]) {
				r, err := questions.AskFile(a.catalogue(), args[0], a.now(), question)
				if err != nil {
					return err
				}
				return a.sayReply(r)
			}
			return a.read(c.Context(), func(s *studio.Session) error {
				r, err := questions.Ask(c.Context(), a.catalogue(), s, args[0], question)
				if err != nil {
					return err
				}
				return a.sayReply(r)
			})
		},
	})
}

// isFile reports whether a word names a file or folder rather than a panel.
func isFile(word string) bool {
	_, err := os.Stat(word)
	return err == nil && strings.ContainsAny(word, "./\\")
}

func (a *app) sayReply(r questions.Reply) error {
	if a.asJSON {
		return a.sayJSON(r)
	}
	c := a.catalogue()
	if !r.AsOf.IsZero() {
		a.tell(c, record.Say("ask-as-of", record.With("panel", r.Panel), record.With("date", r.AsOf)))
	}
	if r.First != "" {
		a.say("%s.", c.Capital(r.First))
	}
	for _, t := range r.Taken {
		a.tell(c, record.Say("ask-taken", record.With("typed", t.Typed), record.With("meant", t.Meant)))
	}
	if r.Passed != nil {
		a.tell(c, record.Say("ask-passed", tell.Told("words", c.List(r.Passed))))
	}
	for _, x := range r.Answers {
		a.tell(c, record.Say("ask-understood", tell.Told("topic", x.Asked)))
		for i, l := range x.Lines {
			if es := c.Entries(x.Entries); i == len(x.Lines)-1 && es != "" {
				l = tell.Say(c, record.Say("resting-on", tell.Told("what", l), tell.Told("entries", es)))
			}
			a.say("  %s", c.Capital(l))
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
		if n+len(w) > 76 {
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
