package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
)

func newList(a *app) *cobra.Command { return newListAs(a, "list") }

func newListAs(a *app, use string) *cobra.Command {
	var batch, stage, title string
	var all bool
	c := &cobra.Command{
		Use: use + " [" + panelWords + "]", Short: "list panels",
		Example: `  backleaf list
  backleaf list --stage painted --batch may`,
		RunE: func(c *cobra.Command, args []string) error {
			if stage != "" && !slices.Contains(record.Stages, record.Stage(stage)) {
				var s []string
				for _, st := range record.Stages {
					s = append(s, string(st))
				}
				return usage("", "--stage: %q is not one of %s", stage, strings.Join(s, ", "))
			}
			return a.read(c.Context(), func(b *book.Book) error {
				roll, err := b.Roll(c.Context())
				if err != nil {
					return err
				}
				var only []record.Number
				if len(args) > 0 {
					if only, err = roll.Select(args, nil); err != nil {
						return hinted(err, "\"backleaf list\" without words shows all")
					}
				}
				w, err := b.Workshop(c.Context())
				if err != nil {
					return err
				}
				rows := []panelRow{}
				for _, p := range w.Panels {
					d := p.Description()
					_, gone := p.Discarded()
					switch {
					case only != nil && !slices.Contains(only, p.Number),
						batch != "" && p.Batch != record.Key(batch),
						stage != "" && p.Stage() != record.Stage(stage),
						title != "" && !strings.Contains(strings.ToLower(d.Title), strings.ToLower(title)),
						gone && !all && only == nil:
						continue
					}
					rows = append(rows, panelRow{p.Number, p.Batch, p.Size(), p.Stage(), whereabouts(p), d.Title})
				}
				return a.sayPanelRows(rows, len(w.Panels))
			})
		},
	}
	c.Flags().StringVar(&batch, "batch", "", "only of this batch")
	c.Flags().StringVar(&stage, "stage", "", "only at this stage: board, sealed, \"cloth laid\", \"ground laid\", painted, varnished")
	c.Flags().StringVar(&title, "title", "", "only with these words in the title")
	c.Flags().BoolVar(&all, "all", false, "discarded panels too")
	return a.jsonFlag(c)
}

// panelRow is one line of a list of panels.
type panelRow struct {
	Number record.Number `json:"number"`
	Batch  record.Key    `json:"batch"`
	Size   record.Size   `json:"size"`
	Stage  record.Stage  `json:"stage"`
	Where  string        `json:"where"`
	Title  string        `json:"title,omitzero"`
}

func (a *app) sayPanelRows(rows []panelRow, of int) error {
	if a.asJSON {
		return a.sayJSON(rows)
	}
	if of == 0 {
		a.talk("there are no panels yet; \"backleaf panel add\" numbers some")
		return nil
	}
	if len(rows) == 0 {
		a.talk("none of the %d panels", of)
		return nil
	}
	t := a.table()
	for _, r := range rows {
		t.row(string(r.Number), string(r.Batch), r.Size.String(), string(r.Stage), r.Where, quoted(r.Title))
	}
	return t.done()
}

func newJournal(a *app) *cobra.Command {
	var last int
	c := &cobra.Command{
		Use: "journal [ENTRY]", Short: "list the entries, or show one with all its fields",
		Example: `  backleaf journal --last 20
  backleaf journal E27`,
		Args: wanted(0, 1, "at most one entry"),
		RunE: func(c *cobra.Command, args []string) error {
			f := book.Filter{Last: last}
			if len(args) == 1 {
				seq, err := parseEntry(args[0])
				if err != nil {
					return err
				}
				f = book.Filter{From: seq, To: seq}
			}
			return a.read(c.Context(), func(b *book.Book) error {
				es, err := b.Entries(c.Context(), f)
				if err != nil {
					return err
				}
				if len(args) == 1 && len(es) == 0 {
					return hinted(fmt.Errorf("there is no entry %s", args[0]), "\"backleaf journal\" lists the entries")
				}
				if a.asJSON {
					return a.sayStored(es)
				}
				w, err := b.WorkshopOf(c.Context())
				if err != nil {
					return err
				}
				now, loc := a.now(), zone(w.Studio)
				if len(args) == 1 {
					e := es[0].Entry
					a.say("E%d  %s  %s", e.Seq, e.Kind(), sayPanels(e.Panels))
					t := a.table()
					t.pair("at", e.At.String())
					t.pair("written", e.Written.String())
					fieldRows(t, "", valueOf(e.Body))
					return t.done()
				}
				t := a.table()
				for _, s := range es {
					e := s.Entry
					t.row(fmt.Sprintf("E%d", e.Seq), sayWhen(e.At, now, loc), storyLine(w, record.Event{Seq: e.Seq, At: e.At, Panels: e.Panels, Body: e.Body}), sayPanels(e.Panels))
				}
				return t.done()
			})
		},
	}
	c.Flags().IntVar(&last, "last", 0, "only the last so many")
	return a.jsonFlag(c)
}
