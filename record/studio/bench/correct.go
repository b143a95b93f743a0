package bench

import (
	"context"
	"errors"
	"reflect"
	"slices"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/stock"
)

// Entry reads one entry of the journal.
func Entry(ctx context.Context, b *book.Book, seq int64) (record.Entry, error) {
	es, err := b.Entries(ctx, book.Filter{From: seq, To: seq})
	if err == nil && len(es) == 0 {
		err = refuse.Cannot("no-such-entry", "there is no entry E%d", seq)
	}
	if err != nil {
		return record.Entry{}, err
	}
	return es[0].Entry, nil
}

// Outdated is a certificate that was issued before a correction of what it
// says.
type Outdated struct {
	Panel       record.Number
	Certificate int64 // its entry
}

// Correct writes a correction of an earlier entry, for the panels of the view
// or, if none are named, for all of the entry. It names the certificates that
// have gone out on the strength of what is corrected.
func Correct(ctx context.Context, v *studio.View, at record.When, old record.Entry, correction record.Body) (studio.Written, []Outdated, error) {
	meaning := *v
	if a, ok := correction.(record.Amended); ok {
		var err error
		if correction, meaning.Meant.As, err = describe(ctx, v, old, a); err != nil {
			return studio.Written{}, nil, err
		}
	}
	w, err := meaning.Write(ctx, record.Entry{At: at, Panels: v.Panels, Body: correction})
	if f, ok := errors.AsType[*record.FieldError](err); ok && f.Field == "entry" { // a number alone could be meant for a panel
		is := []record.Value{record.With("entry", record.EntryRef(old.Seq)), record.With("kind", old.Kind()), record.With("panels", old.Panels)}
		if _, takes := correction.(record.Withdrawn); takes && old.Kind() == (record.Cut{}).Kind() {
			err = refuse.Because("cut-stays", errors.New(f.Why), is...)
		} else if takes && old.Kind().Traits().Stays == "" {
			err = refuse.Because("amend-instead", errors.New(f.Why), is...)
		} else if old.Kind() == (record.Issued{}).Kind() {
			err = refuse.Because("certificate-stays", errors.New(f.Why), is...)
		} else {
			err = refuse.Because("not-corrected", errors.New(f.Why), is...)
		}
	}
	if err != nil {
		return w, nil, err
	}
	ctx = context.WithoutCancel(ctx) // it is on record
	means, warnings, err := After(ctx, v, w.Entries[0])
	if w.Means, w.Warnings = append(w.Means, means...), append(w.Warnings, warnings...); err != nil {
		return w, nil, err
	}
	panels := v.Panels
	if len(panels) == 0 {
		panels = old.Panels
	}
	if len(panels) == 0 {
		return w, nil, nil
	}
	shop, err := v.Book.AtBench(ctx, panels...)
	if err != nil {
		return w, nil, err
	}
	var out []Outdated
	for _, n := range panels {
		p := shop.Panel(n)
		if p == nil {
			continue
		}
		if c, ok := p.Certificate(); ok && c.Seq > old.Seq {
			out = append(out, Outdated{n, c.Seq})
		}
	}
	return w, out, nil
}

// stands returns an entry as it stands: for each of the panels, of none for
// each of its own; or by itself.
func stands(shop *record.Workshop, old record.Entry, panels []record.Number) (out []record.Entry) {
	if len(panels) == 0 {
		panels = old.Panels
	}
	as := func(e record.Event, ns ...record.Number) {
		out = append(out, record.Entry{Seq: e.Seq, At: e.At, Written: e.Written, Panels: ns, Makers: e.Makers, StudioAs: e.StudioAs, Body: e.Body})
	}
	for _, n := range panels {
		if p := shop.Panel(n); p != nil {
			if e, ok := p.Event(old.Seq); ok {
				as(e, n)
			}
		}
	}
	if e, ok := shop.Standing(old.Seq); ok {
		as(e)
	}
	return out
}

// asAct refuses an amendment that makes of an entry what no act may be.
func asAct(v *studio.View, shop *record.Workshop, a record.Amended) error {
	one := *v
	if one.Shop = shop; len(v.Panels) == 0 {
		one.Panels = nil
		for _, p := range shop.Panels {
			if _, of := p.Event(a.Entry); of {
				one.Panels = append(one.Panels, p.Number)
			}
		}
	}
	var last record.Body
	for _, e := range stands(shop, record.Entry{Seq: a.Entry}, one.Panels) {
		now, err := e.Patched(a.Change)
		if written, ok := e.Written.Exact(); err == nil && ok && accept.Ahead(now.At, written) {
			return refuse.Input("set at", "after-written", "%s is after E%d was written down, %s", spelled(v, now.At), a.Entry, written.In(v.Zone).Format(clock)).With(record.With("day", written.In(v.Zone).Format("2006-01-02 15:04")))
		}
		if reflect.DeepEqual(e.Body, last) {
			continue
		}
		last = e.Body
		if _, _, err := judge(&one, e.Body); err != nil {
			continue // it was so before
		}
		if err != nil {
			continue // said where it is written
		}
		_, _, err = judge(&one, now.Body)
		if r, ok := errors.AsType[*refuse.Error](err); ok {
			r.Field = "" // its value says which
			if w, _, _ := e.Wet(); r.Said.Code == "amount-twice" {
				there := map[bool]string{true: "amount-each", false: "amount"}[w.WetTotal.IsZero()]
				return refuse.Unclearly("amount-there", "%w", r).With(record.With("entry", record.EntryRef(a.Entry)), record.With("there", there))
			}
			return r
		}
	}
	return nil
}

// clock is how a time is spelled that can be typed so.
const clock = "2006-01-02 15:04"

func spelled(v *studio.View, w record.When) string {
	if t, ok := w.Exact(); ok {
		return t.In(v.Zone).Format(clock)
	}
	return w.String()
}

// describe lets an amendment name the descriptions that are said to be meant,
// and returns those that it does not mean.
func describe(ctx context.Context, v *studio.View, old record.Entry, a record.Amended) (record.Amended, []int64, error) {
	left := v.Meant.As
	shop, err := v.Book.AtBench(ctx, old.Panels...)
	if err != nil {
		return a, left, err
	}
	stand := stands(shop, old, v.Panels)
	if err := asAct(v, shop, a); err != nil || len(left) == 0 {
		return a, left, err
	}
	for _, e := range stand {
		if !reflect.DeepEqual(e.Body, stand[0].Body) {
			return a, left, refuse.Unclearly("stands-otherwise", "E%d stands otherwise for some of its panels", old.Seq)
		}
	}
	if stand != nil {
		a.Change, err = accept.Describe(stand[0], a.Change, func(m record.Meant) []int64 {
			as := v.Meant.Named(v.Versions(m))
			if as == nil {
				return m.As
			}
			left = slices.DeleteFunc(slices.Clone(left), func(seq int64) bool { return slices.Contains(as, seq) })
			return as
		})
	}
	return a, left, err
}

// corrected says what an entry comes to as it stands after a correction, and
// doubts it as if it were written anew.
func corrected(ctx context.Context, v *studio.View, c record.Entry) (means, warnings []record.Said, err error) {
	old, err := Entry(ctx, v.Book, c.Corrects())
	if err != nil {
		return nil, nil, err
	}
	if _, ok := c.Body.(record.Withdrawn); ok {
		if old, means, warnings, err = undone(ctx, v, c, old); err != nil {
			return means, warnings, err
		}
		if means != nil { // what stands again is doubted as if it were new
			c.Panels = nil
		}
	}
	if a, ok := c.Body.(record.Amended); ok {
		if warnings, err = amendedAlready(ctx, v.Book, c, a); err != nil {
			return nil, nil, err
		}
	}
	now := *v
	if now.Shop, err = v.Book.AtBench(ctx, old.Panels...); err != nil {
		return nil, nil, err
	}
	stand := stands(now.Shop, old, c.Panels)
	if _, ok := c.Body.(record.Amended); ok && stand == nil {
		by, err := takenBack(ctx, v.Book)
		if err != nil {
			return nil, nil, err
		}
		first := by(old.Seq, 0, slices.Concat(c.Panels, old.Panels)...)
		warnings = append(warnings, record.Say("amends-withdrawn", record.With("entry", record.EntryRef(old.Seq)), record.With("by", record.EntryRef(first))))
	}
	var moved []record.Said
	var change map[string]jsontext.Value
	if a, ok := c.Body.(record.Amended); ok && json.Unmarshal(a.Change, &change) == nil && change["at"] != nil {
		var early []record.Number
		for _, e := range stand {
			e, err := e.Patched(a.Change) // in a trial it is not yet so
			if err != nil {
				continue
			}
			moved = append(moved, now.Moved(e)...)
			for _, n := range e.Panels {
				if BeforeCut(&now, e.At, now.Shop.Panel(n)) {
					early = append(early, n)
				}
			}
		}
		moved = append(once(moved), about("before-cutting", early)...)
	}
	warnings = append(warnings, moved...)
	for _, e := range now.Shop.Alike(old.Seq, old.Panels) {
		now.Panels = e.Panels
		if _, taken := c.Body.(record.Withdrawn); taken && means == nil {
			means = append(means, stays(&now, c, e)...)
		}
		if len(c.Panels) > 0 && !slices.ContainsFunc(e.Panels, func(n record.Number) bool { return slices.Contains(c.Panels, n) }) {
			continue // it says nothing of these
		}
		left, over, err := stock.Left(ctx, v.Book, now.Shop, e.Body)
		if err != nil {
			return nil, nil, err
		}
		if !slices.ContainsFunc(e.Sharing, func(n record.Number) bool {
			_, stands := now.Shop.Panel(n).Event(e.Seq)
			return stands && !slices.Contains(e.Panels, n)
		}) {
			means, warnings = append(means, mean(&now, e.Body)...), append(warnings, amounts(&now, e.Body)...)
		}
		means, warnings = append(means, left...), slices.Concat(warnings, purposes(&now, e.Body), madeBeforeCut(&now, e.Body), Unlikely(e.Body), thickness(&now, e.Body), over)
	}
	return once(means), once(warnings), nil
}

// stays says of panels that an amount in all falls on them now, since others of
// which it was said had nothing of it.
func stays(v *studio.View, c record.Entry, e record.Event) []record.Said {
	w, _, _ := record.Entry{Body: e.Body}.Wet()
	if w == nil || w.WetTotal.IsZero() || !slices.ContainsFunc(e.Sharing, func(n record.Number) bool { return slices.Contains(c.Panels, n) }) {
		return nil
	}
	return append([]record.Said{record.Say("amount-stays", record.With("amount", w.WetTotal), record.With("panels", len(e.Panels)), record.With("entry", record.EntryRef(e.Seq)))}, mean(v, e.Body)...)
}

// amendedAlready doubts an amendment that says what the last one of its entry says.
func amendedAlready(ctx context.Context, b *book.Book, c record.Entry, a record.Amended) ([]record.Said, error) {
	by, err := takenBack(ctx, b)
	if err != nil {
		return nil, err
	}
	all, err := b.Entries(ctx, book.Filter{Kinds: []record.Kind{a.Kind()}})
	var last record.Entry
	for _, e := range all {
		if x, ok := e.Entry.Body.(record.Amended); ok && x.Entry == a.Entry && e.Seq != c.Seq && by(e.Seq, 0) == 0 {
			last = e.Entry
		}
	}
	if x, ok := last.Body.(record.Amended); !ok || !slices.Equal(x.Change, a.Change) || !slices.Equal(last.Panels, c.Panels) {
		return nil, err
	}
	return []record.Said{record.Say("said-already", record.With("entry", record.EntryRef(last.Seq)))}, err
}

// undone says what a withdrawal comes to where it is not the first, or takes
// back another; it returns the entry that stands again, if one does.
func undone(ctx context.Context, v *studio.View, c, old record.Entry) (record.Entry, []record.Said, []record.Said, error) {
	by, err := takenBack(ctx, v.Book)
	if err != nil {
		return old, nil, nil, err
	}
	if first := by(old.Seq, c.Seq); first != 0 {
		return old, nil, []record.Said{record.Say("withdrawn-already", record.With("entry", record.EntryRef(old.Seq)), record.With("by", record.EntryRef(first)))}, nil
	}
	w, ok := old.Body.(record.Withdrawn)
	if !ok || len(c.Panels) > 0 || len(old.Panels) > 0 {
		return old, nil, nil, nil
	}
	again, err := Entry(ctx, v.Book, w.Entry)
	entry := record.With("entry", record.EntryRef(w.Entry))
	if other := by(w.Entry, old.Seq); other != 0 || err != nil {
		return old, nil, []record.Said{record.Say("stays-withdrawn", entry, record.With("by", record.EntryRef(other)))}, err
	}
	return again, []record.Said{record.Say("stands-again", entry, record.With("kind", again.Kind()), record.With("panels", again.Panels))}, nil, nil
}

// takenBack returns what finds the entry that takes another one back for all its
// panels, or for some of those given, but for one that does not count; 0: none.
func takenBack(ctx context.Context, b *book.Book) (func(seq, but int64, of ...record.Number) int64, error) {
	all, err := b.Entries(ctx, book.Filter{Kinds: []record.Kind{record.Withdrawn{}.Kind()}})
	if err != nil {
		return nil, err
	}
	var by func(seq, but int64, of ...record.Number) int64
	by = func(seq, but int64, of ...record.Number) int64 {
		for _, e := range all {
			w, ok := e.Entry.Body.(record.Withdrawn)
			theirs := len(e.Entry.Panels) == 0 || slices.ContainsFunc(of, func(n record.Number) bool { return slices.Contains(e.Entry.Panels, n) })
			if ok && w.Entry == seq && e.Entry.Seq != but && theirs && by(e.Entry.Seq, 0) == 0 {
				return e.Entry.Seq
			}
		}
		return 0
	}
	return by, nil
}

// Corrected says which later entries amend an entry or take it back, and which of
// those were taken back themselves.
func Corrected(ctx context.Context, b *book.Book, seq int64) (said []record.Said, err error) {
	by, err := takenBack(ctx, b)
	if err != nil {
		return nil, err
	}
	all, err := b.Entries(ctx, book.Filter{Kinds: []record.Kind{record.Amended{}.Kind(), record.Withdrawn{}.Kind()}})
	for _, e := range all {
		var s record.Said
		values := []record.Value{record.With("by", record.EntryRef(e.Entry.Seq)), record.With("panels", e.Entry.Panels)}
		if other := by(e.Entry.Seq, 0); other != 0 {
			values = append(values, record.With("undone", record.EntryRef(other)))
		}
		switch c := e.Entry.Body.(type) {
		case record.Amended:
			if c.Entry == seq {
				s = record.Say("amended-by", append(values, record.With("because", c.Because), record.Value{Name: "change", Type: "change", Texts: []string{string(c.Change)}})...)
			}
		case record.Withdrawn:
			if c.Entry == seq {
				s = record.Say("withdrawn-by", append(values, record.With("because", c.Because))...)
			}
		}
		if s.Code != "" {
			said = append(said, s)
		}
	}
	return said, err
}
