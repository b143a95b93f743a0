package book

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"time"

	"golang.org/x/mod/sumdb/tlog"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/form"
)

// Draft is the book inside a transaction that writes. It implements
// [accept.Known].
type Draft struct {
	s       *session
	began   int64  // entries before this transaction
	size    int64  // entries now
	root    []byte // of the tree of those before
	studio  record.Studio
	open    bool
	touched map[record.Number]bool // panels whose look-up rows are stale
	there   map[record.Number]bool // of those that an entry names
	added   []record.Entry         // while all that was put only adds to panels
	random  io.Reader

	// What entries name again and again, read once until a description changes.
	versions map[described][]accept.Version
	lots     map[record.Key]record.Lot

	now    time.Time // of what does not say when it was written down
	erased bool      // a private part
	latest [64]hashAt

	// Panels, if it is set, is told how many panels have been looked at again.
	Panels func(done, total int64)
}

// hashAt is a hash of the tree and where it stands.
type hashAt struct {
	idx  int64
	hash tlog.Hash
}

type described struct {
	kind record.Kind
	name record.Key
}

var _ accept.Known = (*Draft)(nil)

func blank(s *session) *Draft {
	return &Draft{s: s, touched: map[record.Number]bool{}, there: map[record.Number]bool{}, versions: map[described][]accept.Version{}, lots: map[record.Key]record.Lot{}}
}

func newDraft(s *session, random io.Reader) (*Draft, error) {
	d := blank(s)
	d.random = random
	if _, err := s.one("SELECT coalesce(max(seq), 0) FROM entry", nil, &d.size); err != nil {
		return nil, err
	}
	d.began = d.size
	// Going on would cover up that entries and tree no longer fit.
	var size int64
	if _, err := s.one("SELECT size, root FROM tip", nil, &size, &d.root); err != nil {
		return nil, err
	}
	root, err := tlog.TreeHash(d.size, tlog.HashReaderFunc(d.recent))
	if err != nil {
		return nil, err
	}
	if size != d.size || size > 0 && !bytes.Equal(d.root, root[:]) {
		return nil, fmt.Errorf("%w: nothing can be added; verify it to learn more", ErrBroken)
	}
	d.studio, d.open, err = s.studio()
	return d, err
}

// studio returns the studio as it stands. A studio entry is never amended.
func (s *session) studio() (record.Studio, bool, error) {
	var data []byte
	ok, err := s.one("SELECT bytes FROM entry WHERE seq = (SELECT max(seq) FROM about WHERE kind = 'studio')", nil, &data)
	if err != nil || !ok {
		return record.Studio{}, false, err
	}
	e, err := s.seen.decode(data)
	if err != nil {
		return record.Studio{}, false, err
	}
	st, ok := e.Body.(record.Studio)
	if !ok {
		return st, false, fmt.Errorf("the look-up tables do not fit the journal")
	}
	if st.Journal == "" && e.Seq > 1 {
		if _, err := s.one("SELECT bytes FROM entry WHERE seq = 1", nil, &data); err != nil {
			return st, false, err
		}
		if e, err = s.seen.decode(data); err != nil {
			return st, false, err
		}
		if first, ok := e.Body.(record.Studio); ok {
			st.Journal = first.Journal
		}
	}
	return st, true, nil
}

// StudioNow implements [accept.Known].
func (d *Draft) StudioNow() (record.Studio, bool) { return d.studio, d.open }

// HasPanel implements [accept.Known].
func (d *Draft) HasPanel(n record.Number) (bool, error) {
	there, met := d.there[n]
	if met || d.touched[n] { // the row of one that is touched is written at the end
		return there || d.touched[n], nil
	}
	return d.s.one("SELECT 1 FROM panel WHERE number = ?", []any{string(n)}, new(int))
}

// meet looks which panels are there, all at once.
func (d *Draft) meet(ns []record.Number) error {
	clear(d.there)
	if !slices.ContainsFunc(ns, func(n record.Number) bool { return !d.touched[n] }) {
		return nil
	}
	for _, n := range ns {
		d.there[n] = false
	}
	return d.s.rows("SELECT number FROM panel WHERE number IN (SELECT value FROM json_each(?))", jsonList(ns), func(x []any) { d.there[record.Number(x[0].(string))] = true })
}

// Versions implements [accept.Known].
func (d *Draft) Versions(kind record.Kind, key record.Key) ([]accept.Version, error) {
	out, known := d.versions[described{kind, key}]
	if known {
		return out, nil
	}
	err := d.s.each("SELECT seq, at, json_extract(CAST(bytes AS TEXT), '$.written') FROM described JOIN entry USING (seq) WHERE kind = ? AND name = ? ORDER BY seq", []any{string(kind), string(key)},
		func(scan func(...any) error) error {
			var v accept.Version
			var at, written string
			if err := scan(&v.Seq, &at, &written); err != nil {
				return err
			}
			v.From, _ = record.ParseWhen(at) // a date that a later program wrote is not known
			v.Written, _ = record.ParseWhen(written)
			out = append(out, v)
			return nil
		})
	if err == nil {
		d.versions[described{kind, key}] = out
	}
	return out, err
}

// Lot implements [accept.Known].
func (d *Draft) Lot(k record.Key) (record.Lot, bool, error) {
	if l, known := d.lots[k]; known {
		return l, true, nil
	}
	vs, err := d.Versions("lot", k)
	if err != nil || len(vs) == 0 {
		return record.Lot{}, false, err
	}
	w, err := d.standing(vs[len(vs)-1].Seq)
	if err != nil {
		return record.Lot{}, false, err
	}
	l, ok := w.Lot(k)
	if ok {
		d.lots[k] = l
	}
	return l, ok, nil
}

// standing folds an entry that names no panel with all its corrections.
func (d *Draft) standing(seq int64) (*record.Workshop, error) {
	es, err := d.s.few(corrected("SELECT ?1"), seq)
	if err != nil {
		return nil, err
	}
	return record.Fold(es)
}

// History implements [accept.Known].
func (d *Draft) History(seq int64) (record.Entry, []record.Entry, bool, error) {
	var data []byte
	ok, err := d.s.one("SELECT bytes FROM entry WHERE seq = ?", []any{seq}, &data)
	if err != nil || !ok {
		return record.Entry{}, nil, false, err
	}
	e, err := form.Decode(data)
	if err != nil {
		return record.Entry{}, nil, false, err
	}
	fixes, err := d.s.entries(
		`SELECT seq, bytes FROM entry WHERE seq IN (SELECT c.seq FROM correction c JOIN about a ON a.seq = c.seq
		 WHERE c.of = ? AND a.kind = 'amended') ORDER BY seq`, seq)
	return e, fixes, true, err
}

// NextSerial returns the next free serial number of a year (four figures): one
// that no number with its two figures bears, whatever the century.
func (d *Draft) NextSerial(year int) (int, error) {
	n, err := d.s.nextSerial(year)
	for t := range d.touched {
		if t.Year() == year%100 {
			n = max(n, t.Serial()+1)
		}
	}
	return n, err
}

func (s *session) nextSerial(year int) (int, error) {
	var n int
	_, err := s.one(`SELECT max(coalesce((SELECT max(serial) FROM panel WHERE year % 100 = ?1), 0),
		coalesce((SELECT CAST(value AS INTEGER) FROM setting WHERE name = ?2), 0)) + 1`, []any{year % 100, numbersUsed(year)}, &n)
	return n, err
}

// raiseUsed sets such a number, and never a lower one than before.
const raiseUsed = `INSERT INTO setting (name, value) VALUES (?1, ?2) ON CONFLICT (name) DO UPDATE
	SET value = max(CAST(value AS INTEGER), CAST(excluded.value AS INTEGER))`

// Used keeps numbers that stand on labels though this book may not know of
// them: it never gives them, nor a lower one of the same year, to another panel.
func (b *Book) Used(ctx context.Context, numbers ...record.Number) error {
	return b.update(ctx, func(s *session) error { return (&Draft{s: s}).Used(numbers...) })
}

// Used is [Book.Used] beside what is written.
func (d *Draft) Used(numbers ...record.Number) (err error) {
	for _, n := range numbers {
		err = errors.Join(err, d.s.exec(raiseUsed, numbersUsed(n.Year()), fmt.Sprint(n.Serial())))
	}
	return err
}

// Size is how many entries there are.
func (d *Draft) Size() int64 { return d.size }

// Written is when the last entry was written down.
func (d *Draft) Written() (record.When, error) {
	var at string
	_, err := d.s.one("SELECT json_extract(CAST(bytes AS TEXT), '$.written') FROM entry WHERE seq = ?", []any{d.size}, &at)
	w, _ := record.ParseWhen(at) // what a later program wrote is not known
	return w, err
}

// Needed returns what must be folded for these panels, of what was put too.
func (d *Draft) Needed(numbers []record.Number) ([]record.Entry, error) {
	return d.s.entries(needed+" SELECT seq, bytes FROM entry WHERE seq IN need ORDER BY seq", jsonList(numbers))
}

// Private returns what is kept outside the journal of these panels.
func (d *Draft) Private(panels []record.Number) (out []Private, err error) {
	err = d.s.each("SELECT salt, data FROM mention JOIN private USING (seq) WHERE panel IN (SELECT value FROM json_each(?)) GROUP BY seq", []any{jsonList(panels)}, func(scan func(...any) error) error {
		var p Private
		err := scan(&p.Salt, &p.Data)
		out = append(out, p)
		return err
	})
	return out, err
}

// numbersUsed names the setting that holds the highest serial number of a year
// that stands on labels, where this copy of the book does not know of it.
func numbersUsed(year int) string { return fmt.Sprintf("numbers-used-%02d", year%100) }
