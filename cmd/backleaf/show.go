package main

import (
	"cmp"
	"fmt"
	"time"

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
		if err != nil {
			return err
		}
		return do(s, w, p)
	})
}

// story prints a panel for a reader.
func (a *app) story(w *record.Workshop, p *record.Panel) error {
	now, loc := a.now(), studio.Zone(w.Studio)
	d := p.Description()
	a.say("%s  %s", p.Number, cmp.Or(tell.Quoted(d.Title), "no title"))
	t := a.table()
	t.pair("  made by", w.Studio.Maker+tell.After(", ", w.Studio.Place))
	t.pair("  size", p.Size().String()+" (height x width x depth)")
	t.pair("  board", tell.BoardLine(w, p))
	t.pair("  batch", string(p.Batch))
	t.pair("  stage", string(p.Stage())+", "+tell.Whereabouts(p))
	t.pair("  date of the work", tell.Dated("", d.Made))
	t.pair("  subject", d.Subject)
	t.pair("  inscription", d.Inscription)
	t.pair("  signed", d.Signed)
	t.pair("  own reference", d.Owner)
	if err := t.done(); err != nil {
		return err
	}
	for _, f := range record.Faces {
		layers := p.BuildUp(f)
		if len(layers) == 0 {
			continue
		}
		a.say("\n%s, from the board outwards", f)
		t := a.table()
		for _, l := range layers {
			t.row("  "+tell.LayerLine(p, l), tell.When(l.At, now, loc), fmt.Sprintf("E%d", l.Seq))
		}
		if err := t.done(); err != nil {
			return err
		}
	}
	return a.storyRest(w, p, now, loc)
}

func (a *app) storyRest(w *record.Workshop, p *record.Panel, now time.Time, loc *time.Location) error {
	a.say("\nwhat happened")
	t := a.table()
	for _, e := range p.Events {
		t.row("  "+tell.When(e.At, now, loc), tell.Event(e), fmt.Sprintf("E%d", e.Seq))
	}
	if err := t.done(); err != nil {
		return err
	}
	if len(p.Corrections) > 0 {
		a.say("\ncorrections")
		for _, c := range p.Corrections {
			a.say("  E%d, %s: %s (%s)", c.Seq, tell.When(c.Written, now, loc), tell.CorrectionLine(c), c.Because)
		}
	}
	if gaps := w.Gaps(p); len(gaps) > 0 {
		a.say("\nnot recorded")
		for _, g := range gaps {
			a.say("  %s", tell.Say(tell.English, g.Say()))
		}
	}
	return nil
}
