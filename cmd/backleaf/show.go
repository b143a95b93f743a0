package main

import (
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
)

func newShow(a *app) *cobra.Command { return showAs(a, "show") }

func showAs(a *app, name string) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: lastWord(name) + " NUMBER", Short: "the whole story of a panel",
		Example: "  backleaf " + name + " 0142\n  backleaf " + name + " KB26-0142-1 --json",
		Args:    wanted(1, 1, "one panel"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.onePanel(c, args[0], func(b *book.Book, w *record.Workshop, p *record.Panel) error {
				if a.asJSON {
					return a.sayJSON(panelJSON(w, p))
				}
				return a.story(w, p)
			})
		},
	})
}

// onePanel finds one panel and hands it to a reading command.
func (a *app) onePanel(c *cobra.Command, typed string, do func(*book.Book, *record.Workshop, *record.Panel) error) error {
	return a.read(c.Context(), func(b *book.Book) error {
		roll, err := b.Roll(c.Context())
		if err != nil {
			return err
		}
		n, err := roll.Find(typed)
		if err != nil {
			return hinted(err, "\"backleaf list\" shows the panels of this book")
		}
		w, err := b.WorkshopOf(c.Context(), n)
		if err != nil {
			return err
		}
		return do(b, w, w.Panel(n))
	})
}

// panelView is a panel for a program to read.
type panelView struct {
	Number      record.Number            `json:"number"`
	Batch       record.Key               `json:"batch"`
	Size        record.Size              `json:"size"`
	Stage       record.Stage             `json:"stage"`
	Where       string                   `json:"where"`
	Description record.Described         `json:"description"`
	Events      []eventView              `json:"events"`
	BuildUp     map[record.Face][]string `json:"build_up"`
	Gaps        []gapView                `json:"gaps"`
	Corrections []record.Correction      `json:"corrections"`
}

type eventView struct {
	Entry   int64       `json:"entry"`
	At      record.When `json:"at"`
	Written record.When `json:"written"`
	Kind    record.Kind `json:"kind"`
	Body    record.Body `json:"body"`
}

type gapView struct {
	Topic   string `json:"topic"`
	What    string `json:"what"`
	Entry   int64  `json:"entry,omitzero"`
	Unknown bool   `json:"recorded_as_unknown,omitzero"`
}

func panelJSON(w *record.Workshop, p *record.Panel) panelView {
	v := panelView{Number: p.Number, Batch: p.Batch, Size: p.Size(), Stage: p.Stage(), Where: whereabouts(p),
		Description: p.Description(), BuildUp: map[record.Face][]string{}, Gaps: []gapView{}, Corrections: p.Corrections}
	for _, e := range p.Events {
		v.Events = append(v.Events, eventView{e.Seq, e.At, e.Written, e.Body.Kind(), e.Body})
	}
	for _, f := range record.Faces {
		for _, l := range p.BuildUp(f) {
			v.BuildUp[f] = append(v.BuildUp[f], layerText(p, l))
		}
	}
	for _, g := range w.Gaps(p) {
		v.Gaps = append(v.Gaps, gapView{g.Topic, g.What, g.Seq, g.Unknown})
	}
	return v
}

// layerText says one layer in words, without its date.
func layerText(p *record.Panel, l record.Layer) string {
	panels := 1
	for _, e := range p.Events {
		if e.Seq == l.Seq {
			panels = len(e.Panels)
		}
	}
	switch {
	case l.Cloth != nil:
		return "cloth" + after(", ", shelfName(l.Cloth.Cloth, l.Cloth.ClothLot)) + after(", warp ", strings.ReplaceAll(string(l.Cloth.Run), "-", " "))
	case l.Paint != nil:
		return orElse(string(l.Paint.Medium), "medium not recorded") + " paint" + after(", ", l.Paint.Technique)
	case l.Varnish != nil:
		return "varnish" + after(", ", orElse(l.Varnish.Resin, coatingText(*l.Coating, panels)))
	}
	s := l.Name() + after(", ", coatingText(*l.Coating, panels))
	if l.Extra {
		s += ", more here"
	}
	return s
}

// story prints a panel for a reader.
func (a *app) story(w *record.Workshop, p *record.Panel) error {
	now, loc := a.now(), zone(w.Studio)
	d := p.Description()
	a.say("%s  %s", p.Number, orElse(quoted(d.Title), "no title"))
	t := a.table()
	t.pair("  made by", w.Studio.Maker+after(", ", w.Studio.Place))
	t.pair("  size", p.Size().String()+" (height x width x depth)")
	t.pair("  board", boardText(w, p))
	t.pair("  batch", string(p.Batch))
	t.pair("  stage", string(p.Stage())+", "+whereabouts(p))
	t.pair("  date of the work", dated("", d.Made))
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
			t.row("  "+layerText(p, l), sayWhen(l.At, now, loc), fmt.Sprintf("E%d", l.Seq))
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
		t.row("  "+sayWhen(e.At, now, loc), storyLine(w, e), fmt.Sprintf("E%d", e.Seq))
	}
	if err := t.done(); err != nil {
		return err
	}
	if len(p.Corrections) > 0 {
		a.say("\ncorrections")
		for _, c := range p.Corrections {
			a.say("  E%d, %s: %s (%s)", c.Seq, sayWhen(c.Written, now, loc), correctionText(c), c.Because)
		}
	}
	if gaps := w.Gaps(p); len(gaps) > 0 {
		a.say("\nnot recorded")
		t := a.table()
		for _, g := range gaps {
			what := g.What
			if g.Unknown {
				what += " (recorded as unknown)"
			}
			t.row("  "+g.Topic, what)
		}
		return t.done()
	}
	return nil
}

func correctionText(c record.Correction) string {
	if c.Withdrawal() {
		return fmt.Sprintf("E%d withdrawn", c.Of)
	}
	var s []string
	for _, ch := range c.Changes {
		s = append(s, fmt.Sprintf("%s: %s → %s", strings.ReplaceAll(ch.Field, "_", " "), plainJSON(ch.Was), plainJSON(ch.Now)))
	}
	return fmt.Sprintf("E%d, %s", c.Of, strings.Join(s, "; "))
}

// plainJSON takes the marks off a simple JSON text for reading.
func plainJSON(s string) string {
	if s == "" {
		return "not recorded"
	}
	if !strings.ContainsAny(s, "{}") {
		s = strings.NewReplacer(`"`, "", "[", "", "]", "", ",", ", ").Replace(s)
	}
	return s
}

func boardText(w *record.Workshop, p *record.Panel) string {
	c := p.Cut()
	if c.Board == "" {
		return "not recorded"
	}
	s := string(c.Board)
	if m, ok := w.Material(c.Board); ok {
		s = m.Name
	}
	return s + after(", lot ", string(c.Lot)) + after(", grain along the ", string(c.Grain))
}
