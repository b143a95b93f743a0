package deed

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/form"
	"backleaf/record/seal"
)

// Deed is the signed record of one panel, as the files that a certificate
// carries. Without a key only Record is there: nothing is signed then, and
// nothing proved.
type Deed struct {
	Record    []byte // record.json, which was read back
	Size      int64  // entries of the journal that it speaks of
	Root      seal.Hash
	Signature []byte // record.sig
	Key       seal.PublicKey
	Head      []byte // head.txt
	Proof     []byte // proof.json
	Statement []byte // signed text for the paper
	Demo      bool   // of a demonstration: every paper must say so
}

// ErrChanged: the panel was read before the book was last written to.
var ErrChanged = errors.New("the book was written to since the panel was read; try again")

// Make makes the deed of a panel from a journal as it stands. w and p are what
// the findings were worked out from, and must be what the book still says. key
// is the studio's current one, or nil if it has none. Nothing is written to
// the book: keeping the head is for the caller.
func Make(ctx context.Context, j Journal, w *record.Workshop, p *record.Panel, findings []check.Finding, key *seal.Key, issued time.Time) (Deed, error) {
	d, err := makeDeed(ctx, j, w, p, findings, key, issued)
	if err != nil {
		return Deed{}, fmt.Errorf("cannot make the record of %s: %w", p.Number, err)
	}
	return d, nil
}

func makeDeed(ctx context.Context, j Journal, w *record.Workshop, p *record.Panel, findings []check.Finding, key *seal.Key, issued time.Time) (Deed, error) {
	size, root, err := j.Tree(ctx)
	if err != nil {
		return Deed{}, err
	}
	stored, err := Entries(ctx, j, p.Number, size)
	if err != nil {
		return Deed{}, err
	}
	f := file{Backleaf: version, Issued: record.Moment(issued), Number: p.Number, Head: head{root, size}}
	for _, s := range stored {
		f.Entries = append(f.Entries, s.Bytes)
	}
	entries, err := bounded(f.Entries) // what could not be read back is not begun
	if err != nil {
		return Deed{}, err
	}
	mine, err := record.Fold(entries, p.Number)
	if err != nil {
		return Deed{}, err
	}
	here := mine.Panel(p.Number)
	if here == nil || !reflect.DeepEqual(here, p) || !reflect.DeepEqual(mine.Studio, w.Studio) {
		return Deed{}, ErrChanged
	}
	if err := f.derive(mine, here, entries); err != nil {
		return Deed{}, err
	}
	for _, x := range findings {
		f.Findings = append(f.Findings, finding{x.Entries, x.Outcome, x.Remedy, x.Rule, x.Said, x.Severity})
	}
	for _, g := range mine.Gaps(here) {
		f.Gaps = append(f.Gaps, gap{g.Seq, g.Topic, g.Unknown, g.Said.Values, g.Said.Code})
	}
	d := Deed{Size: size, Root: root, Demo: w.Studio.Demo}
	if d.Record, err = f.bytes(); err != nil {
		return Deed{}, err
	}
	if _, err := Read(d.Record); err != nil {
		return Deed{}, err // what cannot be read back is not handed out
	}
	if key == nil {
		return d, nil
	}
	return d, d.sign(f, mine, here, *key, j.HashReader(ctx))
}

// sign adds everything that needs the key.
func (d *Deed) sign(f file, w *record.Workshop, p *record.Panel, key seal.Key, hashes seal.HashReader) error {
	ring, err := Keys(w.Keys)
	if err != nil {
		return err
	}
	d.Key = key.Public()
	if s := ring.Standing(d.Key); s != Current {
		return fmt.Errorf("the %s is not the studio's current key: it is %s", key, s)
	}
	d.Demo = d.Demo || d.Key.IsDemo()
	if d.Signature, err = key.SignRecord(d.Record); err != nil {
		return err
	}
	origin, err := seal.Origin(w.Studio.Mark, w.Studio.Journal)
	if err != nil {
		return err
	}
	h := seal.Head{Origin: origin, Size: f.Head.Size, Root: f.Head.Root}
	if d.Head, err = h.Sign(key); err != nil {
		return err
	}
	var places []int64
	for _, e := range f.Entries {
		stored, err := form.Read(e)
		if err != nil {
			return err
		}
		places = append(places, stored.Seq-1) // a proof counts from 0
	}
	proof, err := seal.Prove(h, places, hashes)
	if err != nil {
		return err
	}
	// What is signed is what the journal's hashes were made from.
	var shown []seal.Entry
	for i, e := range f.Entries {
		shown = append(shown, seal.Entry{Seq: places[i], Bytes: e})
	}
	if err := proof.Verify(h, shown); err != nil {
		return fmt.Errorf("the book does not hold: %w", err)
	}
	if d.Proof, err = proof.Bytes(); err != nil {
		return err
	}
	day, _ := f.Issued.Exact()
	d.Statement, err = statement(seal.Statement{
		Origin: origin, Number: string(p.Number), Title: p.Description().Title, Maker: strings.Join(names(w.MadeBy(p)), ", "), Size: p.Size().String(),
		Made: p.Description().Made.String(), Issued: day.Format(time.DateOnly), Record: seal.DigestOf(d.Record),
	}, key)
	return err
}

// statement signs a statement, with a long title or maker shortened until it
// fits the symbol.
func statement(s seal.Statement, key seal.Key) ([]byte, error) {
	if s.Made == record.Unknown {
		s.Made = ""
	}
	title, maker := s.Title, s.Maker
	for limit := maxLine; ; limit -= 10 {
		s.Title, s.Maker = clip(title, limit), clip(maker, limit)
		msg, err := s.Sign(key)
		if err == nil || limit <= 40 {
			return msg, err
		}
	}
}

// maxLine is the longest title or maker that an entry takes.
const maxLine = 300

func clip(s string, most int) string {
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return s
}
