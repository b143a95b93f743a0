package book

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"

	"backleaf/record"
)

// lookupTables are the look-up tables: all of them follow from the journal.
var lookupTables = []string{"lookup", "about", "mention", "correction", "described", "panel", "used", "words"}

// index writes the look-up rows that later entries of the same transaction
// are checked against, and notes which panels must be looked at again.
func (d *Draft) index(e record.Entry) error {
	if err := d.s.write("about", "INSERT INTO about (seq, kind, panels) VALUES (?, ?, ?)", e.Seq, string(e.Kind()), len(e.Panels)); err != nil {
		return err
	}
	if len(e.Panels) > 0 {
		if err := d.s.write("mention", "INSERT INTO mention (panel, seq) SELECT value, ? FROM json_each(?)", e.Seq, jsonList(e.Panels)); err != nil {
			return err
		}
	}
	for _, n := range e.Panels {
		d.touched[n] = true
	}
	if s, ok := e.Body.(record.Studio); ok {
		d.studio, d.open = s, true
	}
	if of := e.Corrects(); of != 0 {
		if err := d.s.write("correction", "INSERT INTO correction (of, seq) VALUES (?, ?)", of, e.Seq); err != nil {
			return err
		}
		return d.corrected(of)
	}
	return d.describe(e)
}

// describe writes from when on an entry describes the studio, a maker or a
// thing on the shelf, as its corrections leave it.
func (d *Draft) describe(e record.Entry) error {
	key := record.KeyOf(e.Body)
	if key == "" && e.Kind() != "studio" {
		return nil
	}
	clear(d.versions)
	clear(d.lots)
	w, err := d.standing(e.Seq)
	if err != nil {
		return err
	}
	now, _ := w.Standing(e.Seq)
	from := now.At.String()
	if !now.At.Known() {
		from = e.Written.String()
	}
	return d.s.write("described", "INSERT OR REPLACE INTO described (kind, name, seq, at) VALUES (?, ?, ?, ?)", string(e.Kind()), string(key), e.Seq, from)
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
		return d.describe(e)
	}
}

// indexPanels writes the rows of all panels that were touched.
func (d *Draft) indexPanels(ctx context.Context) error {
	done := 0
	// In portions, so that a large import does not hold all its panels at once.
	for part := range slices.Chunk(slices.Sorted(maps.Keys(d.touched)), 500) {
		es, err := d.s.entries(`WITH RECURSIVE need (seq) AS (
			SELECT seq FROM mention WHERE panel IN (SELECT value FROM json_each(?1))
			UNION SELECT c.seq FROM correction c JOIN need n ON c.of = n.seq)
			SELECT seq, bytes FROM entry WHERE seq IN need ORDER BY seq`, jsonList(part))
		if err = cmp.Or(err, ctx.Err()); err != nil {
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
			if done++; d.Panels != nil {
				d.Panels(int64(done), int64(len(d.touched)))
			}
		}
	}
	clear(d.touched)
	return nil
}

func (d *Draft) indexPanel(p *record.Panel) error {
	if err := d.s.write("panel", putPresent, present(p).values()...); err != nil {
		return err
	}
	if err := d.indexUsed(p); err != nil {
		return err
	}
	// The index of words is dear to write, and most work adds none.
	row, text, was := int64(p.Year())*10_000_000+int64(p.Number.Serial()), wordsOf(p), ""
	if there, err := d.s.one("SELECT text FROM words WHERE rowid = ?", []any{row}, &was); err != nil || there && was == text {
		return err
	}
	return d.s.write("words", "INSERT OR REPLACE INTO words (rowid, panel, text) VALUES (?, ?, ?)", row, string(p.Number), text)
}

// indexUsed writes which materials and lots went into a panel. Most work adds
// none, so only what changed is written.
func (d *Draft) indexUsed(p *record.Panel) error {
	want := map[string]bool{}
	for _, ev := range p.Events {
		materials, lots := record.Shelf(ev.Body)
		for _, k := range materials {
			want[Material(k)] = true
		}
		for _, k := range lots {
			want[Lot(k)] = true
		}
	}
	var gone []string
	err := d.s.each("SELECT thing FROM used WHERE panel = ?", []any{string(p.Number)}, func(scan func(...any) error) error {
		var thing string
		err := scan(&thing)
		if !want[thing] {
			gone = append(gone, thing)
		}
		delete(want, thing)
		return err
	})
	for thing := range want {
		err = cmp.Or(err, d.s.write("used", "INSERT INTO used (panel, thing) VALUES (?, ?)", string(p.Number), thing))
	}
	for _, thing := range gone {
		err = cmp.Or(err, d.s.write("used", "DELETE FROM used WHERE panel = ? AND thing = ?", string(p.Number), thing))
	}
	return err
}

// wordsOf collects what is written freely about a panel, as it stands.
func wordsOf(p *record.Panel) string {
	var words []string
	for _, ev := range p.Events {
		for _, text := range record.FreeText(ev.Body) {
			if !slices.Contains(words, text) {
				words = append(words, text)
			}
		}
	}
	return strings.Join(words, "\n")
}
