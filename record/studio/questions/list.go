package questions

import (
	"context"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/refuse"
	"backleaf/record/tell"
)

// Row is one line of a list of panels.
type Row struct {
	Number record.Number `json:"number"`
	Own    string        `json:"own_reference,omitzero"`
	Batch  record.Key    `json:"batch"`
	Size   record.Size   `json:"size"`
	Board  string        `json:"board,omitzero"` // lot, or else material
	Stage  record.Stage  `json:"stage"`
	Where  record.Said   `json:"where"`
	Since  record.When   `json:"where_since,omitzero"`
	Title  string        `json:"title,omitzero"`
	Made   record.When   `json:"made,omitzero"`
}

func rowOf(p *record.Panel) Row {
	d, cut := p.Description(), p.Cut()
	board := cut.Lot
	if board == "" || board == record.Unknown {
		board = cut.Board
	}
	r := Row{p.Number, d.Owner, p.Batch, p.Size(), string(board), p.Stage(), tell.Whereabouts(p), record.When{}, d.Title, d.Made}
	if x, ok := p.Discarded(); ok {
		r.Since = x.At
	} else if h, ok := record.Latest[record.HandedOver](p); ok {
		r.Since = h.At
	}
	return r
}

// Table is a list of panels for a spreadsheet, in a language. Dates are EDTF
// texts.
func Table(c *tell.Catalogue, rows []Row) [][]string {
	out := [][]string{{"number", "own_reference", "batch", "title", "made", "size", "board", "stage", "where", "where_since"}}
	for _, r := range rows {
		out = append(out, []string{string(r.Number), r.Own, string(r.Batch), r.Title, r.Made.String(), r.Size.String(),
			r.Board, string(r.Stage), tell.Say(c, r.Where), r.Since.String()})
	}
	return out
}

// Listing says which panels are to be listed; each filter narrows it.
type Listing struct {
	Terms               []string // numbers as typed; none: all
	Batch, Stage, Title string
	Discarded           bool // list discarded panels that were not named, too
}

// List lists panels, and counts all there are.
func List(ctx context.Context, b *book.Book, l Listing) (rows []Row, of int, err error) {
	roll, err := b.Roll(ctx)
	if err != nil {
		return nil, 0, err
	}
	var only []record.Number
	if len(l.Terms) > 0 {
		if only, err = roll.Select(l.Terms, nil); err != nil {
			return nil, 0, refuse.Because("no-such-panel-to-list", err)
		}
	}
	w, err := b.Workshop(ctx)
	if err != nil {
		return nil, 0, err
	}
	rows = []Row{}
	for _, p := range w.Panels {
		_, gone := p.Discarded()
		switch {
		case only != nil && !slices.Contains(only, p.Number),
			l.Batch != "" && p.Batch != record.Key(l.Batch),
			l.Stage != "" && p.Stage() != record.Stage(l.Stage),
			l.Title != "" && !strings.Contains(strings.ToLower(p.Description().Title), strings.ToLower(l.Title)),
			gone && !l.Discarded && only == nil:
			continue
		}
		rows = append(rows, rowOf(p))
	}
	return rows, len(w.Panels), nil
}

// KnownStage refuses what is no stage of the work.
func KnownStage(stage string) error {
	if stage == "" || slices.Contains(record.Stages, record.Stage(stage)) {
		return nil
	}
	var s []string
	for _, st := range record.Stages {
		s = append(s, string(st))
	}
	return refuse.Input("stage", "no-such-stage", "%q is not one of %s", stage, strings.Join(s, ", "))
}
