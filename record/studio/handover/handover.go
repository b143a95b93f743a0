// Package handover is how panels leave the studio and come back. To whom and
// for how much stays outside the journal.
package handover

import (
	"context"
	"errors"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/book"
	"backleaf/record/pattern"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
)

// Write writes down that the panels of a view left or came back.
func Write(ctx context.Context, v *studio.View, at record.When, h record.HandedOver, part private.Part) (studio.Written, error) {
	for _, t := range []struct{ field, text string }{{"to", part.To}, {"private-note", part.Note}} {
		if err := accept.CheckLine(t.text); err != nil {
			return studio.Written{}, refuse.Input(t.field, "not-a-line", "%w", err)
		}
	}
	sealed, digest, err := part.Seal(v.Chance())
	if err != nil {
		return studio.Written{}, err
	}
	secret := map[int]book.Private{}
	if sealed != nil {
		h.Private, secret[0] = digest, *sealed
	}
	var doubts []record.Said
	gone := v.Which(func(p *record.Panel) bool {
		_, given := p.Discarded()
		return (given || h.How != "return" && forGood(p)) && !slices.Contains(v.Alone, p.Number)
	})
	if !v.AlsoAway && len(gone) < len(v.Panels) {
		doubts = bench.LeaveOut(v, gone)
	}
	doubts = append(doubts, Doubt(v, at, h.How)...)
	w, err := v.Compose(ctx, func(*book.Draft) ([]record.Entry, map[int]book.Private, error) {
		return []record.Entry{{At: at, Panels: v.Panels, Body: h}}, secret, nil
	})
	w.Warnings = append(doubts, w.Warnings...)
	return w, err
}

// forGood reports that a panel left otherwise than to come back or to be sold from
// there.
func forGood(p *record.Panel) bool {
	h, away := p.Away()
	return away && h.Body.How != "loan" && h.Body.How != "consignment"
}

// Doubt says what does not fit with what the book knows; it may be right
// nevertheless.
func Doubt(v *studio.View, at record.When, how record.Parting) []record.Said {
	return v.Each(func(p *record.Panel) []record.Said {
		d, gone := p.Discarded()
		before, away := p.Away()
		var s record.Said
		entry := record.With("entry", record.EntryRef(before.Seq))
		switch {
		case gone:
			s = record.Say("was-discarded", record.With("entry", record.EntryRef(d.Seq)))
		case how == "return" && !away:
			s = record.Say("was-here")
		case how == "return" && at.Before(before.At):
			s = record.Say("left-after", entry, record.With("when", before.At))
		case how != "return" && before.Seq != 0 && !away && at.Before(before.At):
			s = record.Say("back-after", entry, record.With("when", before.At))
		case how != "return" && (how == before.Body.How && away || forGood(p)):
			s = record.Say("is-away", record.With("how", before.Body.How), entry)
		case bench.BeforeCut(v, at, p):
			s = record.Say("before-cutting", record.With("panels", []record.Number{p.Number}))
		default:
			return nil
		}
		return []record.Said{s}
	})
}

// Parting is one handover of a panel, with its private part.
type Parting struct {
	Entry   int64          `json:"entry"`
	At      record.When    `json:"at,omitzero"`
	How     record.Parting `json:"how"`
	Note    string         `json:"note,omitzero"`
	Panels  int            `json:"panel_count"` // how many left together
	Taken   bool           `json:"withdrawn,omitzero"`
	State   State          `json:"private_state"`
	Private private.Part   `json:"private,omitzero"`
}

// State says what became of a private part.
type State string

const (
	Here      State = "here"
	None      State = "none" // there never was one
	Erased    State = "erased"
	Elsewhere State = "elsewhere" // this copy of the book was made without it
)

// Of reads all handovers of a panel, also those withdrawn: their private parts
// are kept until they are erased.
func Of(ctx context.Context, b *book.Book, p *record.Panel) ([]Parting, error) {
	es, err := b.Entries(ctx, book.Filter{Panels: []record.Number{p.Number}, Kinds: []record.Kind{"handed-over", "private-erased"}})
	if err != nil {
		return nil, err
	}
	stands := map[int64]record.Done[record.HandedOver]{}
	for _, h := range record.Each[record.HandedOver](p) {
		stands[h.Seq] = h
	}
	erased := map[int64]bool{}
	for _, e := range es {
		if f, ok := e.Entry.Body.(record.Forgotten); ok {
			erased[f.Entry] = true
		}
	}
	out := []Parting{}
	for _, e := range es {
		h, ok := e.Entry.Body.(record.HandedOver)
		if !ok {
			continue
		}
		x := Parting{Entry: e.Seq, At: e.Entry.At, How: h.How, Note: h.Note, Panels: len(e.Entry.Panels), Taken: true}
		if now, ok := stands[e.Seq]; ok {
			x.At, x.How, x.Note, x.Taken = now.At, now.Body.How, now.Body.Note, false
		}
		var here bool
		if x.Private, here, err = private.Of(ctx, b, e.Seq); err != nil {
			return nil, err
		}
		switch {
		case here:
			x.State = Here
		case erased[e.Seq]:
			x.State = Erased
		case h.Private != "":
			x.State = Elsewhere
		default:
			x.State = None
		}
		out = append(out, x)
	}
	return out, nil
}

// Forget erases the private part of an entry, whether or not the entry was
// withdrawn; the entry and its proof stay. The entry that says so may be
// written although an error is returned.
func Forget(ctx context.Context, s *studio.Session, seq int64, because string) (w studio.Written, err error) {
	e, err := bench.Entry(ctx, s.Book, seq)
	if err != nil {
		return w, err
	}
	names := []record.Value{record.With("entry", record.EntryRef(seq)), record.With("panels", e.Panels)} // a number alone could be meant for a panel
	if e.Kind() != (record.HandedOver{}).Kind() {
		return w, refuse.Cannot("no-handover", "E%d, of kind %s, is no handover", seq, e.Kind()).With(names...)
	}
	p, here, err := private.Of(ctx, s.Book, seq)
	switch {
	case errors.Is(err, book.ErrBroken): // it is not as it was; it can go all the same
	case err != nil:
		return w, err
	case !here:
		return w, refuse.Cannot("no-private-part", "E%d, of kind %s, has no name or price kept apart in this book", seq, e.Kind()).With(names...)
	case p.Named(because):
		return w, studio.NameInJournal("because")
	}
	v, err := s.Look(ctx, nil, nil)
	if err != nil {
		return w, err
	}
	words, named, printed, err := look(ctx, s.Book, seq, p.To)
	if err != nil {
		return w, err
	}
	e, err = s.Book.ErasePrivate(ctx, v.Local(), seq, because)
	if e.Seq == 0 {
		return w, err
	}
	w.Entries = []record.Entry{e}
	w.Mean("private-part-erased", record.With("entry", record.EntryRef(e.Seq)), record.With("of", record.EntryRef(seq)))
	w.Mean("backups-have-it")
	if named != nil {
		w.Mean("name-may-stand-in", record.With("words", words), record.With("entries", named))
	}
	if printed != nil {
		w.Mean("certificates-print-it", record.With("entries", printed))
	}
	return w, err
}

var (
	nameWord = pattern.Of(`\pL{3,}`)
	jsonKey  = pattern.Of(`"[a-z0-9_]+":`)
)

// look finds where else a name may stand: which of its words in any text in the
// journal, or printed on a kept certificate.
func look(ctx context.Context, b *book.Book, seq int64, name string) (found []string, named, printed []record.EntryRef, err error) {
	es, err := b.Entries(ctx, book.Filter{})
	if err != nil {
		return nil, nil, nil, err
	}
	var panels []record.Number
	for _, e := range es {
		if e.Seq == seq {
			panels = e.Entry.Panels
		}
	}
	words := nameWord().FindAllString(strings.ToLower(name), -1)
	for _, e := range es {
		if c, ok := e.Entry.Body.(record.Issued); ok && c.Private == record.Yes && slices.ContainsFunc(e.Entry.Panels, func(n record.Number) bool { return slices.Contains(panels, n) }) {
			printed = append(printed, record.EntryRef(e.Seq))
		}
		for _, w := range nameWord().FindAllString(strings.ToLower(jsonKey().ReplaceAllString(string(e.Bytes), "")), -1) {
			if slices.Contains(words, w) {
				found, named = append(found, w), append(named, record.EntryRef(e.Seq))
			}
		}
	}
	slices.Sort(found)
	return slices.Compact(found), slices.Compact(named), printed, nil
}
