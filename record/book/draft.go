package book

import (
	"bytes"
	"fmt"

	"golang.org/x/mod/sumdb/tlog"

	"backleaf/record"
)

// Draft is the book inside a transaction that writes. It implements
// [record.Known].
type Draft struct {
	s       *session
	began   int64 // entries before this transaction
	size    int64 // entries now
	studio  record.Studio
	open    bool
	touched map[record.Number]bool // panels whose look-up rows are stale
}

var _ record.Known = (*Draft)(nil)

func newDraft(s *session) (*Draft, error) {
	d := &Draft{s: s, touched: map[record.Number]bool{}}
	if _, err := s.one("SELECT coalesce(max(seq), 0) FROM entry", nil, &d.size); err != nil {
		return nil, err
	}
	d.began = d.size
	// Going on would cover up that entries and tree no longer fit.
	var size int64
	var kept []byte
	if _, err := s.one("SELECT size, root FROM tip", nil, &size, &kept); err != nil {
		return nil, err
	}
	root, err := tlog.TreeHash(d.size, s)
	if err != nil {
		return nil, err
	}
	if size != d.size || size > 0 && !bytes.Equal(kept, root[:]) {
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
	e, err := record.DecodeStored(data)
	if err != nil {
		return record.Studio{}, false, err
	}
	st, ok := e.Body.(record.Studio)
	if !ok {
		return st, false, fmt.Errorf("the look-up tables do not fit the journal")
	}
	return st, true, nil
}

// StudioNow implements [record.Known].
func (d *Draft) StudioNow() (record.Studio, bool) { return d.studio, d.open }

// HasPanel implements [record.Known].
func (d *Draft) HasPanel(n record.Number) (bool, error) {
	if d.touched[n] { // its row is written at the end
		return true, nil
	}
	return d.s.one("SELECT 1 FROM panel WHERE number = ?", []any{string(n)}, new(int))
}

// HasMaterial implements [record.Known].
func (d *Draft) HasMaterial(k record.Key) (bool, error) {
	return d.s.one("SELECT 1 FROM material WHERE material = ?", []any{string(k)}, new(int))
}

// LotMaterial implements [record.Known].
func (d *Draft) LotMaterial(k record.Key) (record.Key, bool, error) {
	var m string
	ok, err := d.s.one("SELECT material FROM lot WHERE lot = ?", []any{string(k)}, &m)
	return record.Key(m), ok, err
}

// History implements [record.Known].
func (d *Draft) History(seq int64) (record.Entry, []record.Entry, bool, error) {
	var data []byte
	ok, err := d.s.one("SELECT bytes FROM entry WHERE seq = ?", []any{seq}, &data)
	if err != nil || !ok {
		return record.Entry{}, nil, false, err
	}
	e, err := record.DecodeStored(data)
	if err != nil {
		return record.Entry{}, nil, false, err
	}
	fixes, err := d.s.entries(
		`SELECT seq, bytes FROM entry WHERE seq IN (SELECT c.seq FROM correction c JOIN about a ON a.seq = c.seq
		 WHERE c.of = ? AND a.kind = 'amended') ORDER BY seq`, seq)
	return e, fixes, true, err
}

// NextSerial returns the next free serial number of a year.
func (d *Draft) NextSerial(year int) (int, error) {
	n, err := d.s.nextSerial(year)
	for t := range d.touched {
		if t.Year() == ((year%100)+100)%100 {
			n = max(n, t.Serial()+1)
		}
	}
	return n, err
}

func (s *session) nextSerial(year int) (int, error) {
	var n int
	_, err := s.one("SELECT coalesce(max(serial), 0) + 1 FROM panel WHERE year = ?", []any{((year % 100) + 100) % 100}, &n)
	return n, err
}
