package book

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"time"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
)

// indexTables are the look-up tables: all of them follow from the journal.
var indexTables = []string{"about", "mention", "correction", "material", "lot", "panel", "material_use", "lot_use", "words"}

// index writes the look-up rows that later entries of the same transaction
// are checked against, and notes which panels must be looked at again.
func (d *Draft) index(e record.Entry) error {
	if err := d.s.write("about", "INSERT INTO about (seq, kind, at, written, panels) VALUES (?, ?, ?, ?, ?)",
		e.Seq, string(e.Kind()), e.At.String(), e.Written.String(), len(e.Panels)); err != nil {
		return err
	}
	for _, n := range e.Panels {
		if err := d.s.write("mention", "INSERT INTO mention (panel, seq) VALUES (?, ?)", string(n), e.Seq); err != nil {
			return err
		}
		d.touched[n] = true
	}
	switch b := e.Body.(type) {
	case record.Studio:
		d.studio, d.open = b, true
	case record.Material:
		return d.s.write("material", "INSERT INTO material (material, seq, name) VALUES (?, ?, ?) ON CONFLICT (material) DO UPDATE SET seq = excluded.seq, name = excluded.name",
			string(b.Key), e.Seq, b.Name)
	case record.Lot:
		return d.s.write("lot", "INSERT INTO lot (lot, seq, material) VALUES (?, ?, ?)", string(b.Key), e.Seq, string(b.Material))
	}
	if of := e.Corrects(); of != 0 {
		if err := d.s.write("correction", "INSERT INTO correction (of, seq) VALUES (?, ?)", of, e.Seq); err != nil {
			return err
		}
		return d.corrected(of)
	}
	return nil
}

// corrected looks again at what an entry was about, down to the first of a
// chain of corrections.
func (d *Draft) corrected(of int64) error {
	for {
		e, _, ok, err := d.History(of)
		if err != nil {
			return err
		}
		if !ok {
			return fmt.Errorf("%w: entry %d is missing", ErrBroken, of)
		}
		for _, n := range e.Panels {
			d.touched[n] = true
		}
		if next := e.Corrects(); next != 0 && next < of {
			of = next
			continue
		}
		switch e.Kind() {
		case "material", "lot":
			return d.reshelve(e)
		}
		return nil
	}
}

// reshelve writes the row of a material or lot after a correction.
func (d *Draft) reshelve(e record.Entry) error {
	es, err := d.s.entries(`WITH RECURSIVE need (seq) AS (SELECT ?1 UNION SELECT c.seq FROM correction c JOIN need n ON c.of = n.seq)
		SELECT seq, bytes FROM entry WHERE seq IN need ORDER BY seq`, e.Seq)
	if err != nil {
		return err
	}
	w, err := record.Fold(es)
	if err != nil {
		return err
	}
	for _, m := range w.Materials {
		if err := d.s.write("material", "UPDATE material SET name = ? WHERE seq = ?", m.Body.Name, m.Seq); err != nil {
			return err
		}
	}
	for _, l := range w.Lots {
		if err := d.s.write("lot", "UPDATE lot SET material = ? WHERE seq = ?", string(l.Body.Material), l.Seq); err != nil {
			return err
		}
	}
	return nil
}

// indexPanels writes the rows of all panels that were touched.
func (d *Draft) indexPanels() error {
	// In portions, so that a large import does not hold all its panels at once.
	for part := range slices.Chunk(slices.SortedFunc(maps.Keys(d.touched), record.CompareNumbers), 500) {
		es, err := d.s.entries(`WITH RECURSIVE need (seq) AS (
			SELECT seq FROM mention WHERE panel IN (SELECT value FROM json_each(?1))
			UNION SELECT c.seq FROM correction c JOIN need n ON c.of = n.seq)
			SELECT seq, bytes FROM entry WHERE seq IN need ORDER BY seq`, jsonList(part))
		if err != nil {
			return err
		}
		w, err := record.Fold(es)
		if err != nil {
			return err
		}
		for _, n := range part {
			p := w.Panel(n)
			if p == nil {
				return fmt.Errorf("%w: panel %s has no beginning", ErrBroken, n)
			}
			if err := d.indexPanel(p); err != nil {
				return err
			}
		}
	}
	clear(d.touched)
	return nil
}

func (d *Draft) indexPanel(p *record.Panel) error {
	n := string(p.Number)
	for _, table := range []string{"material_use", "lot_use"} {
		if err := d.s.write(table, "DELETE FROM "+table+" WHERE panel = ?", n); err != nil {
			return err
		}
	}
	for _, ev := range p.Events {
		materials, lots := record.Entry{Body: ev.Body}.Shelf()
		for _, m := range materials {
			if err := d.s.write("material_use", "INSERT INTO material_use (panel, seq, material) VALUES (?, ?, ?)", n, ev.Seq, string(m)); err != nil {
				return err
			}
		}
		for _, l := range lots {
			if err := d.s.write("lot_use", "INSERT INTO lot_use (panel, seq, lot) VALUES (?, ?, ?)", n, ev.Seq, string(l)); err != nil {
				return err
			}
		}
	}
	cut, _ := record.Latest[record.Cut](p)
	what := p.Description()
	var discarded, away int64
	if x, ok := p.Discarded(); ok {
		discarded = x.Seq
	}
	if x, ok := p.Away(); ok {
		away = x.Seq
	}
	if err := d.s.write("panel", `INSERT OR REPLACE INTO panel (number, batch, year, serial, size, stage, title, reference,
		cut, cut_from, cut_to, made, made_from, made_to, discarded, away) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
		n, string(p.Batch), p.Number.Year(), p.Number.Serial(), p.Size().String(), string(p.Stage()), what.Title, what.Owner,
		cut.At.String(), day(cut.At.Earliest()), day(cut.At.Latest()),
		what.Made.String(), day(what.Made.Earliest()), day(what.Made.Latest()), discarded, away); err != nil {
		return err
	}
	text, err := wordsOf(p)
	if err != nil {
		return err
	}
	row := int64(p.Number.Year())*10_000_000 + int64(p.Number.Serial())
	if err := d.s.write("words", "DELETE FROM words WHERE rowid = ?", row); err != nil {
		return err
	}
	return d.s.write("words", "INSERT INTO words (rowid, panel, text) VALUES (?, ?, ?)", row, n, text)
}

func day(t time.Time, ok bool) string {
	if !ok {
		return ""
	}
	return t.Format(time.DateOnly)
}

// worded are the fields in which people write freely.
var worded = map[string]bool{
	"title": true, "subject": true, "inscription": true, "signed": true, "distinguishing_features": true,
	"type_of_object": true, "medium_line": true, "own_reference": true, "note": true, "text": true, "remarks": true,
	"caption": true, "technique": true, "underdrawing": true, "because": true, "reason": true, "with": true, "by": true,
	"name": true, "colour_index": true, "resin": true, "tool": true,
}

// wordsOf collects what is written freely about a panel, as it stands.
func wordsOf(p *record.Panel) (string, error) {
	var words []string
	for _, ev := range p.Events {
		data, err := json.Marshal(ev.Body)
		if err != nil {
			return "", err
		}
		for d := jsontext.NewDecoder(bytes.NewReader(data)); ; {
			tok, err := d.ReadToken()
			if err == io.EOF {
				break
			}
			if err != nil {
				return "", err
			}
			kind, length := d.StackIndex(d.StackDepth())
			if tok.Kind() == '"' && kind == '{' && length%2 == 0 && worded[d.StackPointer().LastToken()] && !slices.Contains(words, tok.String()) {
				words = append(words, tok.String())
			}
		}
	}
	return strings.Join(words, "\n"), nil
}

// Rebuild makes all look-up tables anew from the journal.
func (b *Book) Rebuild(ctx context.Context) error {
	return b.update(ctx, func(s *session) error {
		for _, t := range indexTables {
			if err := s.exec("DELETE FROM " + t); err != nil {
				return err
			}
		}
		d := &Draft{s: s, touched: map[record.Number]bool{}}
		var es []record.Entry
		err := s.stored(ctx, "SELECT seq, bytes FROM entry ORDER BY seq", nil, func(st Stored) { es = append(es, st.Entry) })
		if err != nil {
			return err
		}
		for _, e := range es {
			if err := d.index(e); err != nil {
				return err
			}
		}
		return d.indexPanels()
	})
}
