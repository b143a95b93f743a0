package studio

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"time"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

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

// StudioAt is what the studio said of itself at a time; where the date leaves
// several, the last of them.
func (v *View) StudioAt(at record.When) record.Studio {
	of := accept.InForce(v.Versions(record.Meant{Kind: record.Studio{}.Kind()}), at)
	s := v.Shop.Studio
	if len(of) > 0 {
		e, _ := v.Shop.Standing(of[len(of)-1])
		s, _ = e.Body.(record.Studio)
		s.Journal = v.Shop.Studio.Journal
	}
	return s
}

// Change replaces what the studio says of itself. What it said later holds on: it
// is written again after what is dated before it.
func (v *View) Change(ctx context.Context, at record.When, s record.Studio) (Written, error) {
	was := v.StudioAt(at)
	if s == was {
		return Written{}, refuse.Unclearly("nothing-to-change", "nothing to change")
	}
	es := []record.Entry{{At: at, Body: s}}
	since := v.DescribedSince(at, s)
	if since != nil {
		es = append(es, record.Entry{At: record.Moment(v.Local()), Body: v.Shop.Studio})
	}
	w, err := v.Write(ctx, es...)
	if err != nil {
		return w, err
	}
	w.Mean("studio-changed", record.Value{Name: "change", Type: "change", Texts: []string{string(changed(was, s))}})
	if since != nil {
		w.Mean("studio-holds-on")
	}
	var lacks []string
	for _, of := range []struct {
		name string
		is   bool
	}{{"page", s.Sheet.Page.IsZero()}, {"label", s.Sheet.Label.IsZero()}, {"rows", s.Sheet.Rows == 0}, {"columns", s.Sheet.Cols == 0}} {
		if of.is {
			lacks = append(lacks, of.name)
		}
	}
	if lacks != nil && s.Sheet != v.Shop.Studio.Sheet {
		w.Warn("sheet-lacks", record.With("lacks", lacks))
	}
	return w, nil
}

// changed are the fields that differ, as the merge patch of an amendment.
func changed(was, now record.Studio) jsontext.Value {
	fields := func(s record.Studio) (out map[string]jsontext.Value) {
		b, _ := json.Marshal(s) // a studio that was read or is about to be written
		_ = json.Unmarshal(b, &out)
		return out
	}
	before, out := fields(was), fields(now)
	for name, v := range before {
		if _, is := out[name]; !is {
			out[name] = jsontext.Value("null")
		} else if bytes.Equal(out[name], v) {
			delete(out, name)
		}
	}
	b, _ := json.Marshal(out, json.Deterministic(true))
	return b
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
