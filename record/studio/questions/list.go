package questions

import (
	"context"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
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

func rowOf(p book.Present) Row {
	return Row{p.Number, p.Own, p.Batch, p.Size, string(p.Board), p.Stage, where(p.Place), p.Since, p.Title, p.Made}
}

// where says where a panel is, as [tell.Whereabouts] does.
func where(p book.Place) record.Said {
	switch p {
	case book.Discarded:
		return record.Say("where-discarded")
	case book.Here:
		return record.Say("where-here")
	}
	return record.Say("where-away", record.With("how", record.Parting(p)))
}

// Columns are the heads of a list of panels for a spreadsheet.
var Columns = []string{"number", "own_reference", "batch", "title", "made", "size", "board", "stage", "where", "where_since"}

// Cells are a row for a spreadsheet, in a language. Dates are EDTF texts.
func (r Row) Cells(c *tell.Catalogue) []string {
	return []string{string(r.Number), r.Own, string(r.Batch), r.Title, r.Made.String(), r.Size.String(),
		r.Board, string(r.Stage), tell.Say(c, r.Where), r.Since.String()}
}

// Listing says which panels are to be listed; each filter narrows it.
type Listing struct {
	Terms               []string // numbers as typed; none: all
	Batch, Stage, Title string
	Discarded           bool // list discarded panels that were not named, too
}

// List gives each panel that is to be listed to f.
func List(ctx context.Context, b *book.Book, l Listing, f func(Row) error) error {
	n := book.Narrow{Batch: record.Key(lower(l.Batch)), Stage: record.Stage(lower(l.Stage))}
	if len(l.Terms) > 0 {
		roll, err := b.Roll(ctx, l.Terms...)
		if err != nil {
			return err
		}
		if n.Numbers, err = roll.Select(l.Terms, nil); err != nil {
			return studio.NoPanel(err)
		}
	}
	title, found := strings.ToLower(l.Title), false
	err := b.Panels(ctx, n, func(p book.Present) error {
		if p.Place == book.Discarded && !l.Discarded && n.Numbers == nil || !strings.Contains(strings.ToLower(p.Title), title) {
			return nil
		}
		found = true
		return f(rowOf(p))
	})
	if err == nil && !found {
		err = knownBatch(ctx, b, n.Batch)
	}
	return err
}

// knownBatch refuses a batch that no panel is of; empty is any.
func knownBatch(ctx context.Context, b *book.Book, k record.Key) error {
	if k == "" {
		return nil
	}
	there := false
	if err := b.Panels(ctx, book.Narrow{Batch: k}, func(book.Present) error { there = true; return nil }); err != nil || there {
		return err
	}
	roll, err := b.Roll(ctx)
	if err == nil {
		_, err = roll.Select([]string{"batch:" + string(k)}, nil) // which names the nearest
	}
	return refuse.Because("no-such-batch", err)
}

// KnownStage refuses what is no stage of the work.
func KnownStage(stage string) error {
	switch stage = lower(stage); {
	case stage == "" || slices.Contains(record.Stages, record.Stage(stage)):
		return nil
	case slices.Contains(Places(), typed.Said("Parting", stage)):
		return refuse.Input("stage", "stage-is-place", "%q is where a panel is, not how far the work on it has come", stage).With(record.With("place", stage))
	}
	var s []string
	for _, st := range record.Stages {
		s = append(s, string(st))
	}
	return typed.NotAmong("stage", stage, s)
}
