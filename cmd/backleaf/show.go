package main

import (
	"backleaf/record"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

// newShow tells the story of a panel: the command stands alone and under "panel".
func newShow(a *app) {
	for _, name := range []string{"show", "panel show"} {
		a.ofPanel(name, func(_ *run, w *record.Workshop, p *record.Panel) error {
			if a.asJSON {
				return a.sayJSON(questions.StoryOf(w, p))
			}
			return a.story(w, p)
		})
	}
}

// ofPanel adds a command that reads one panel.
func (a *app) ofPanel(name string, do func(*run, *record.Workshop, *record.Panel) error) {
	a.reads(name, flags{"json": &a.asJSON}, func(r *run) error {
		w, p, err := questions.One(r.ctx, r.Book, r.args[0])
		if err != nil {
			return err
		}
		if len(p.Newer) > 0 {
			a.noted("panel-newer", tell.Told("entries", a.catalogue().Entries(p.Newer)))
		}
		return do(r, w, p)
	})
}

// story prints a panel for a reader.
func (a *app) story(w *record.Workshop, p *record.Panel) error {
	c := a.words(w.Studio)
	k := tell.New(c, w, p)
	a.say("%s", tell.Say(c, record.Say("panel", record.With("panel", p.Number), record.With("title", p.Description().Title))))
	t := a.table()
	for _, pair := range k.Particulars() {
		t.Pair("  "+pair[0], pair[1])
	}
	t.Done()
	for _, f := range record.Faces {
		layers := p.BuildUp(f)
		if len(layers) == 0 {
			continue
		}
		a.say("")
		a.tell(c, record.Say("build-up-of", record.With("face", f)))
		t := a.table()
		for _, l := range layers {
			t.Row("  "+k.LayerLine(l), near(c, l.At), a.entry(l.Seq))
		}
		t.Done()
	}
	a.say("")
	a.tell(c, record.Say("what-happened"))
	t = a.table()
	for _, e := range p.Events {
		t.Row("  "+near(c, e.At), a.entry(e.Seq), c.WholeEvent(e))
	}
	t.Done()
	a.sayList(c, record.Say("corrections"), k.Corrections())
	a.sayList(c, record.Say("gaps"), k.GapsTogether())
	return nil
}

// sayList prints lines under a heading, if there are any.
func (a *app) sayList(c *tell.Catalogue, heading record.Said, lines []string) {
	if len(lines) == 0 {
		return
	}
	a.say("")
	a.tell(c, heading)
	for _, l := range lines {
		a.say("  %s", l)
	}
}
