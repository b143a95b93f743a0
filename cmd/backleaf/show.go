package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

func newShow(a *app) *cobra.Command { return showAs(a, "show") }

func showAs(a *app, name string) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: lastWord(name) + " NUMBER", Short: "the whole story of a panel",
		Example: "  backleaf " + name + " 0142\n  backleaf " + name + " KB26-0142-1 --json",
		Args:    wanted(1, 1, "one panel"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.onePanel(c, args[0], func(_ *studio.Session, w *record.Workshop, p *record.Panel) error {
				if a.asJSON {
					return a.sayJSON(questions.StoryOf(w, p))
				}
				return a.story(w, p)
			})
		},
	})
}

// onePanel finds one panel and hands it to a reading command.
func (a *app) onePanel(c *cobra.Command, typed string, do func(*studio.Session, *record.Workshop, *record.Panel) error) error {
	return a.read(c.Context(), func(s *studio.Session) error {
		w, p, err := questions.One(c.Context(), s.Book, typed)
		if err == nil && len(p.Newer) > 0 {
			a.noted("panel-newer", tell.Told("entries", a.catalogue().Entries(p.Newer)))
		}
		if err != nil {
			return err
		}
		return do(s, w, p)
	})
}

// story prints a panel for a reader.
func (a *app) story(w *record.Workshop, p *record.Panel) error {
	c := a.words(w.Studio)
	k := tell.New(c, w, p)
	a.say("%s", tell.Say(c, record.Say("panel", record.With("panel", p.Number), record.With("title", p.Description().Title))))
	t := a.table()
	for _, pair := range k.Particulars() {
		t.pair("  "+pair[0], pair[1])
	}
	if err := t.done(); err != nil {
		return err
	}
	for _, f := range record.Faces {
		layers := p.BuildUp(f)
		if len(layers) == 0 {
			continue
		}
		a.say("")
		a.tell(c, record.Say("build-up-of", record.With("face", f)))
		t := a.table()
		for _, l := range layers {
			t.row("  "+k.LayerLine(l), near(c, l.At), a.entry(l.Seq))
		}
		if err := t.done(); err != nil {
			return err
		}
	}
	return a.storyRest(c, k, w, p)
}

func (a *app) storyRest(c *tell.Catalogue, k *tell.Teller, w *record.Workshop, p *record.Panel) error {
	a.say("")
	a.tell(c, record.Say("what-happened"))
	t := a.table()
	for _, e := range p.Events {
		t.row("  "+near(c, e.At), a.entry(e.Seq), c.WholeEvent(e))
	}
	if err := t.done(); err != nil {
		return err
	}
	a.sayList(c, "corrections", k.Corrections())
	a.sayList(c, "gaps", k.Gaps())
	return nil
}

// sayList prints lines under a heading, if there are any.
func (a *app) sayList(c *tell.Catalogue, heading string, lines []string) {
	if len(lines) == 0 {
		return
	}
	a.say("")
	a.tell(c, record.Say(heading))
	for _, l := range lines {
		a.say("  %s", l)
	}
}
