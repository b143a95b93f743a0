package book

import (
	"context"
	"strings"

	"backleaf/record"
)

// Present is how a panel stands after all corrections: what a list says of it.
type Present struct {
	Number record.Number
	Batch  record.Key
	Own    string // the studio's own reference
	Title  string
	Made   record.When // the work
	Cut    record.When // the panel
	Size   record.Size
	Board  record.Key // lot, or else material
	Stage  record.Stage
	Place  Place
	Since  record.When // when it came there, where that is not the studio from the beginning
	Newer  bool        // a later program wrote of it
	year   int
}

// Place is where a panel is: [Here], [Discarded], or how it left (a
// [record.Parting]).
type Place string

// Places that are no way of parting.
const (
	Here      Place = "studio"
	Discarded Place = "discarded"
)

func present(p *record.Panel) Present {
	d := p.Description()
	cut, _ := record.Latest[record.Cut](p)
	x := Present{Number: p.Number, Batch: p.Batch, Own: d.Owner, Title: d.Title, Made: d.Made, Cut: cut.At, Size: p.Size(),
		Board: cut.Body.Lot, Stage: p.Stage(), Place: Here, Newer: len(p.Newer) > 0, year: p.Year()}
	if x.Board == "" || x.Board == record.Unknown {
		x.Board = cut.Body.Board
	}
	if h, ok := record.Latest[record.HandedOver](p); ok {
		x.Since = h.At
	}
	if h, ok := p.Away(); ok {
		x.Place = Place(h.Body.How)
	}
	if g, ok := p.Discarded(); ok {
		x.Place, x.Since = Discarded, g.At
	}
	return x
}

const (
	presentColumns = "number, batch, own, title, made, cut, size, board, stage, place, since, newer"
	putPresent     = "panel (" + presentColumns + ", year, serial) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"
)

func (x Present) values() []any {
	newer := int64(0)
	if x.Newer {
		newer = 1
	}
	return []any{string(x.Number), string(x.Batch), x.Own, x.Title, x.Made.String(), x.Cut.String(), x.Size.String(), string(x.Board),
		string(x.Stage), string(x.Place), x.Since.String(), newer, int64(x.year), int64(x.Number.Serial())}
}

// presents reads rows. Panels of one batch stand together, and what the one
// before was read from is not read again.
type presents struct {
	made, cut, since read[record.When]
	size             read[record.Size]
}

type read[T any] struct {
	text  string
	value T
}

// of leaves out what a later program wrote: the row says that it is newer.
func (r *read[T]) of(text string, parse func(string) (T, error)) T {
	if text != r.text {
		r.text = text
		r.value, _ = parse(text)
	}
	return r.value
}

func (r *presents) next(scan func(...any) error) (x Present, err error) {
	var made, cut, size, since string
	if err := scan((*string)(&x.Number), (*string)(&x.Batch), &x.Own, &x.Title, &made, &cut, &size, (*string)(&x.Board),
		(*string)(&x.Stage), (*string)(&x.Place), &since, &x.Newer); err != nil {
		return x, err
	}
	x.Made, x.Cut, x.Since = r.made.of(made, record.ParseWhen), r.cut.of(cut, record.ParseWhen), r.since.of(since, record.ParseWhen)
	x.Size = r.size.of(size, record.ParseSize)
	return x, nil
}

// Narrow chooses panels by what the look-up tables hold. Its zero value
// chooses all; each field that is set narrows the choice.
type Narrow struct {
	Numbers []record.Number
	Batch   record.Key
	Stage   record.Stage
	Places  []Place
	Used    [][]string    // of each list one thing went into it: see Material, Lot
	Kinds   []record.Kind // an entry of one of these names it
	Words   []Word        // all of them
}

// Word is looked for, also as the beginning of one, in what was written freely
// about a panel; things that went into it count as well.
type Word struct {
	Text   string
	Things []string // see Material, Lot
}

// Material and Lot name a thing on the shelf for [Narrow].
func Material(k record.Key) string { return "material " + string(k) }

// Lot names a lot.
func Lot(k record.Key) string { return "lot " + string(k) }

// where is the condition for the rows of table panel, and its arguments.
func (n Narrow) where() (string, []any) {
	var terms []string
	var args []any
	add := func(term string, arg any) {
		terms, args = append(terms, term), append(args, arg)
	}
	if n.Numbers != nil {
		add("number IN (SELECT value FROM json_each(?))", jsonList(n.Numbers))
	}
	if n.Batch != "" {
		add("batch = ?", string(n.Batch))
	}
	if n.Stage != "" {
		add("stage = ?", string(n.Stage))
	}
	if n.Places != nil {
		add("place IN (SELECT value FROM json_each(?))", jsonList(n.Places))
	}
	if n.Kinds != nil {
		add("number IN (SELECT value FROM about JOIN entry USING (seq), json_each(CAST(bytes AS TEXT), '$.panels') WHERE kind IN (SELECT value FROM json_each(?)))", jsonList(n.Kinds))
	}
	const used = "number IN (SELECT panel FROM used WHERE thing IN (SELECT value FROM json_each(?)))"
	for _, things := range n.Used {
		add(used, jsonList(things))
	}
	for _, w := range n.Words {
		add("(number IN (SELECT panel FROM words WHERE words MATCH ?)", w.query())
		terms[len(terms)-1] += " OR " + used + ")"
		args = append(args, jsonList(w.Things))
	}
	if terms == nil {
		return "", nil
	}
	return " WHERE " + strings.Join(terms, " AND "), args
}

// query is a word for full-text search. A quoted string has no operators in it
// (FTS5 documentation, section 3.1).
func (w Word) query() string { return `"` + strings.ReplaceAll(w.Text, `"`, `""`) + `" *` }

// Panels calls f for every panel chosen, in order of year and number. An
// error of f ends it.
func (b *Book) Panels(ctx context.Context, n Narrow, f func(Present) error) error {
	where, args := n.where()
	var rows presents
	return b.view(ctx, func(s *session) error {
		return s.each("SELECT "+presentColumns+" FROM panel"+where+" ORDER BY year, serial, number", args, func(scan func(...any) error) error {
			x, err := rows.next(scan)
			if err == nil {
				err = ctx.Err()
			}
			if err == nil {
				err = f(x)
			}
			return err
		})
	})
}

// Count returns how many panels the book knows.
func (b *Book) Count(ctx context.Context) (n int, err error) {
	err = b.view(ctx, func(s *session) error { _, err := s.one("SELECT count(*) FROM panel", nil, &n); return err })
	return n, err
}
