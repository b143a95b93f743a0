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
var lookupTables = []string{"lookup", "about", "mention", "correction", "described", "reading", "panel", "used", "taken", "words"}

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
	if of := e.Corrects(); of >= e.Seq {
		return fmt.Errorf("%w: entry %d is missing", ErrBroken, of)
	} else if of != 0 {
		if err := d.s.write("correction", "INSERT INTO correction (of, seq) VALUES (?, ?)", of, e.Seq); err != nil {
			return err
		}
		return d.corrected(of)
	}
	if _, ok := e.Body.(record.Resized); ok {
		return d.resizedStock(e)
	}
	return cmp.Or(d.describe(e), d.reads(e), d.takes(nil, record.Event{Seq: e.Seq, Body: e.Body, Panels: e.Panels}, 0))
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
		return cmp.Or(d.describe(e), d.correctedAir(e), d.correctedStock(e), d.resizedStock(e))
	}
}

// folding is how many panels are looked at again at once: a large import does not
// hold all of them.
const folding = 250

// indexPanels writes the rows of all panels that were touched. While those of one
// portion are written the next are folded.
func (d *Draft) indexPanels(ctx context.Context) error {
	type folded struct {
		rows []row
		err  error
	}
	var turns []chan folded
	done := 0
	finish := func(most int) error {
		for ; len(turns) > most; turns = turns[1:] {
			f := <-turns[0]
			if err := cmp.Or(f.err, ctx.Err()); err != nil {
				return err
			}
			if err := d.indexRows(f.rows); err != nil {
				return err
			}
			if done += len(f.rows); d.Panels != nil {
				d.Panels(int64(done), int64(len(d.touched)))
			}
		}
		return nil
	}
	for part := range slices.Chunk(slices.Sorted(maps.Keys(d.touched)), folding) {
		if rows := d.foreseen(part); rows != nil {
			done := make(chan folded, 1)
			done <- folded{rows, nil}
			turns = append(turns, done)
			continue
		}
		read := d.s.few
		if len(part) == folding {
			read = d.s.entries // of an import; nobody looks again
		}
		es, err := read(aboutPanels, jsonList(part))
		if err != nil {
			return err
		}
		turn := make(chan folded, 1)
		work := func() {
			rows, err := rowsOf(es, part)
			turn <- folded{rows, err}
		}
		if turns = append(turns, turn); len(part) < folding {
			work()
		} else {
			go work()
		}
		if err := finish(1); err != nil {
			return err
		}
	}
	err := finish(0)
	clear(d.touched)
	return err
}

// foreseen makes rows out of the fold by which an act was judged, with what was
// added since; nil if it is of another journal, or all has to be folded anew.
func (d *Draft) foreseen(part []record.Number) (rows []row) {
	w := d.s.seen.foldOf(d.root)
	if w == nil || int64(len(d.added)) != d.size-d.began {
		return nil
	}
	used := map[int64][]string{}
	for _, n := range part {
		p := w.Panel(n)
		if p == nil || len(p.Newer) > 0 { // a row counts less as newer
			return nil
		}
		rows = append(rows, rowOf(p.After(naming(n, d.added)...), used))
	}
	return rows
}

func naming(n record.Number, es []record.Entry) []record.Entry {
	return slices.DeleteFunc(slices.Clone(es), func(e record.Entry) bool { return !slices.Contains(e.Panels, n) })
}

// row is what the look-up tables say of one panel.
type row struct {
	Present
	used  []string
	words string
}

// rowsOf folds panels and makes their rows.
func rowsOf(es []record.Entry, part []record.Number) (rows []row, err error) {
	w, err := record.Fold(es, part...)
	if err != nil {
		return nil, err
	}
	used := map[int64][]string{}
	for _, n := range part {
		p := w.Panel(n)
		if p == nil {
			return nil, fmt.Errorf("%w: panel %s has no beginning", ErrBroken, n)
		}
		rows = append(rows, rowOf(p, used))
	}
	return rows, nil
}

// rowOf makes the row of a panel; what entries used that nothing corrected is
// remembered for other panels.
func rowOf(p *record.Panel, used map[int64][]string) row {
	return row{present(p), usedOn(p, used), wordsOf(p)}
}

// indexRows writes of the rows what is not there yet: most work changes little,
// and the index of words is dear to write.
func (d *Draft) indexRows(rows []row) error {
	var numbers []record.Number
	var places []int64
	for _, r := range rows {
		numbers, places = append(numbers, r.Number), append(places, r.place())
	}
	panels, used, words := map[any][]any{}, map[any][]string{}, map[any]string{}
	err := cmp.Or(
		d.s.rows("SELECT "+presentColumns+", year, serial FROM panel WHERE number IN (SELECT value FROM json_each(?))", jsonList(numbers), func(x []any) { panels[x[0]] = x }),
		d.s.rows("SELECT panel, thing FROM used WHERE panel IN (SELECT value FROM json_each(?)) ORDER BY 1, 2", jsonList(numbers), func(x []any) { used[x[0]] = append(used[x[0]], x[1].(string)) }),
		d.s.rows("SELECT rowid, text FROM words WHERE rowid IN (SELECT value FROM json_each(?))", jsonList(places), func(x []any) { words[x[0]] = x[1].(string) }))
	for _, r := range rows {
		n := string(r.Number)
		if x := r.values(); err == nil && !slices.Equal(x, panels[n]) {
			err = d.s.write("panel", insert(panels[n] != nil)+putPresent, x...)
		}
		for _, thing := range r.used {
			if _, there := slices.BinarySearch(used[n], thing); err == nil && !there {
				err = d.s.write("used", "INSERT INTO used (panel, thing) VALUES (?, ?)", n, thing)
			}
		}
		for _, thing := range used[n] {
			if err == nil && !slices.Contains(r.used, thing) {
				err = d.s.write("used", "DELETE FROM used WHERE panel = ? AND thing = ?", n, thing)
			}
		}
		if was, there := words[r.place()]; err == nil && (!there || was != r.words) {
			err = d.s.write("words", insert(there)+"words (rowid, panel, text) VALUES (?, ?, ?)", r.place(), n, r.words)
		}
	}
	return err
}

// insert is dearer where there may be such a row already.
func insert(there bool) string {
	if there {
		return "INSERT OR REPLACE INTO "
	}
	return "INSERT INTO "
}

// place is the row of a panel in the table of words.
func (x Present) place() int64 { return int64(x.year)*10_000_000 + int64(x.Number.Serial()) }

// usedOn lists which materials and lots went into a panel.
func usedOn(p *record.Panel, used map[int64][]string) (things []string) {
	for i := range p.Events {
		ev := &p.Events[i]
		of, known := used[ev.Seq]
		if !known || ev.Corrections != nil {
			of = nil
			materials, lots := record.Shelf(ev.Body)
			for _, k := range materials {
				of = append(of, Material(k))
			}
			for _, k := range lots {
				of = append(of, Lot(k))
			}
		}
		if ev.Corrections == nil {
			used[ev.Seq] = of
		}
		things = append(things, of...)
	}
	slices.Sort(things)
	return slices.Compact(things)
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
