package studio

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/book"
	"backleaf/record/studio/refuse"
)

// Create makes a new book of a studio. A zero studio gives an empty book, to
// be filled by an import.
func Create(ctx context.Context, path string, clock func() time.Time, random io.Reader, s record.Studio) error {
	var es []record.Entry
	now := clock()
	if s != (record.Studio{}) {
		now = now.In(Zone(s))
		e := record.Entry{At: record.Moment(now), Body: s}
		if err := accept.Check(e); err != nil {
			field := ""
			if f, ok := errors.AsType[*record.FieldError](err); ok {
				field = f.Field
			}
			return refuse.Unclearly("not-a-studio", "%w", err).With(record.With("field", field))
		}
		es = append(es, e)
	}
	b, err := book.Create(ctx, path)
	if errors.Is(err, fs.ErrExist) {
		return refuse.Because("book-there", fmt.Errorf("no studio was made: %w", err))
	}
	if err != nil {
		return err
	}
	if random != nil {
		b.Random = random // it names the journal
	}
	if len(es) > 0 {
		_, err = b.Append(ctx, now, es...)
	}
	return errors.Join(err, b.Close())
}

// Change replaces what the studio says of itself.
func (v *View) Change(ctx context.Context, at record.When, s record.Studio) (Written, error) {
	if s == v.Shop.Studio {
		return Written{}, refuse.Unclearly("nothing-to-change", "nothing to change")
	}
	w, err := v.Write(ctx, record.Entry{At: at, Body: s})
	w.Warnings = append(v.DescribedSince(at, s), w.Warnings...)
	var lacks []string
	for _, of := range []struct {
		name string
		is   bool
	}{{"page", s.Sheet.Page.IsZero()}, {"label", s.Sheet.Label.IsZero()}, {"rows", s.Sheet.Rows == 0}, {"columns", s.Sheet.Cols == 0}} {
		if of.is {
			lacks = append(lacks, of.name)
		}
	}
	if err == nil && lacks != nil && s.Sheet != v.Shop.Studio.Sheet {
		w.Warn("sheet-lacks", record.With("lacks", lacks))
	}
	return w, err
}

// DescribedSince doubts a description that is dated before a later one: what is
// written last is what holds now. The first holds from the beginning.
func (v *View) DescribedSince(at record.When, b record.Body) []record.Said {
	vs := v.Shop.Versions(b.Kind(), record.KeyOf(b))
	for _, e := range vs[min(1, len(vs)):] {
		if at.Before(e.At) {
			return []record.Said{record.Say("described-since", record.With("entry", record.EntryRef(e.Seq)), record.With("at", e.At))}
		}
	}
	return nil
}
