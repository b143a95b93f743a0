package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/sheet"
)

func newList(a *app) *cobra.Command { return listAs(a, "list") }

// listAs is the command under a name: it stands alone and under "panel".
func listAs(a *app, name string) *cobra.Command {
	var batch, stage, title string
	var all bool
	c := &cobra.Command{
		Use: lastWord(name) + " [" + panelWords + "]", Short: "list panels",
		Example: "  backleaf " + name + "\n  backleaf " + name + " --stage painted --batch may",
		RunE: func(c *cobra.Command, args []string) error {
			if err := checkStage(stage); err != nil {
				return err
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
					rows = append(rows, rowOf(p))
				}
				return a.sayPanelRows(rows, len(w.Panels))
			})
		},
	}
	c.Flags().StringVar(&batch, "batch", "", "only of this batch")
	c.Flags().StringVar(&stage, "stage", "", "only at this stage: board, sealed, \"cloth laid\", \"ground laid\", painted, varnished")
	c.Flags().StringVar(&title, "title", "", "only with these words in the title")
	c.Flags().BoolVar(&all, "all", false, "discarded panels too")
	return a.csvFlag(a.jsonFlag(c))
}

func checkStage(stage string) error {
	if stage == "" || slices.Contains(record.Stages, record.Stage(stage)) {
		return nil
	}
	var s []string
	for _, st := range record.Stages {
		s = append(s, string(st))
	}
	return usage("", "--stage: %q is not one of %s", stage, strings.Join(s, ", "))
}

// panelRow is one line of a list of panels.
type panelRow struct {
	Number record.Number `json:"number"`
	Own    string        `json:"own_reference,omitzero"`
	Batch  record.Key    `json:"batch"`
	Size   record.Size   `json:"size"`
	Board  string        `json:"board,omitzero"` // lot, or else material
	Stage  record.Stage  `json:"stage"`
	Where  string        `json:"where"`
	Since  record.When   `json:"where_since,omitzero"`
	Title  string        `json:"title,omitzero"`
	Made   record.When   `json:"made,omitzero"`
}

func rowOf(p *record.Panel) panelRow {
	d, cut := p.Description(), p.Cut()
	r := panelRow{p.Number, d.Owner, p.Batch, p.Size(), shelfName(cut.Board, cut.Lot), p.Stage(), whereabouts(p), record.When{}, d.Title, d.Made}
	if x, ok := p.Discarded(); ok {
		r.Since = x.At
	} else if h, ok := record.Latest[record.HandedOver](p); ok {
		r.Since = h.At
	}
	return r
}

// csvOf is the table of panels for a spreadsheet. Dates are EDTF texts.
func csvOf(rows []panelRow) [][]string {
	out := [][]string{{"number", "own_reference", "batch", "title", "made", "size", "board", "stage", "where", "where_since"}}
	for _, r := range rows {
		out = append(out, []string{string(r.Number), r.Own, string(r.Batch), r.Title, r.Made.String(), r.Size.String(),
			r.Board, string(r.Stage), r.Where, r.Since.String()})
	}
	return out
}

func (a *app) sayPanelRows(rows []panelRow, of int) error {
	if a.asCSV {
		return sheet.Write(a.out, csvOf(rows))
	}
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
