package exchange

import (
	"context"
	"errors"
	"fmt"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/refuse"
)

// Noted is what there is to say of one entry of a file.
type Noted struct {
	Line int // where it begins
	Said record.Said
}

// Import appends entries read from a file, all or none; lines are where they
// stand in it. What does not say when it was written down is an act of today:
// it is judged as at the bench, its panels as if each was named by itself.
// What does is a part of another journal and taken as it is.
func Import(ctx context.Context, v *studio.View, name string, es []record.Entry, lines []int) (done []record.Entry, noted []Noted, err error) {
	if len(es) == 0 {
		return nil, nil, nil
	}
	now := v.Now
	if v.Shop.Last > 0 {
		now = now.In(v.Zone)
	}
	es, noted, err = judged(ctx, v, es, lines)
	if err != nil {
		return nil, noted, refuse.Because("not-imported", located(err, name, lines, "entry %d of the file, %w"))
	}
	if done, err = v.Book.Append(ctx, now, es...); err != nil {
		return nil, noted, refuse.Because("not-imported", located(err, name, lines, "entry %d of the file, %w"))
	}
	if v.Shop, err = v.Book.WorkshopOf(ctx); err != nil { // the shelf as it is now
		return done, noted, err
	}
	for i, e := range done {
		if !es[i].Written.IsZero() {
			continue
		}
		_, more, err := bench.After(ctx, v, e)
		if err != nil {
			return done, noted, err
		}
		noted = append(noted, at(lines[i], more)...)
	}
	return done, noted, nil
}

func at(line int, said []record.Said) (out []Noted) {
	for _, s := range said {
		out = append(out, Noted{line, s})
	}
	return out
}

// located names the line of the file that an entry comes from.
func located(err error, name string, lines []int, format string) error {
	at, ok := errors.AsType[*book.AppendError](err)
	if !ok || at.Index >= len(lines) {
		return err
	}
	err = at.Err
	if format != "" {
		err = fmt.Errorf(format, at.Index+1, at.Err)
	}
	return &BadFile{name, lines[at.Index], err}
}
