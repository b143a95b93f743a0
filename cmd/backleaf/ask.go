package main

import (
	"os"
	"strings"

	"backleaf/record"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

func newAsk(a *app) {
	a.command("ask", flags{"json": &a.asJSON}, func(r *run) error {
		question := words(r.args[1:])
		if isFile(r.args[0]) {
			reply, err := questions.AskFile(a.catalogue(), r.args[0], a.now(), question)
			if err != nil {
				return err
			}
			return a.sayReply(reply)
		}
		return r.reading(func(r *run) error {
			reply, err := questions.Ask(r.ctx, a.catalogue(), r.Session, r.args[0], question)
			if err != nil {
				return err
			}
			return a.sayReply(reply)
		})
	})
}

// isFile reports whether a word names a file or folder rather than a panel.
func isFile(word string) bool {
	_, err := os.Stat(word)
	return err == nil && strings.ContainsAny(word, "./\\") || strings.HasSuffix(word, ".pdf") || strings.HasSuffix(word, ".json")
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
