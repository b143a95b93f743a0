package record

import (
	"fmt"
	"slices"
	"strings"
)

// Workshop is what a journal adds up to.
type Workshop struct {
	Studio    Studio
	Materials []Done[Material]
	Lots      []Done[Lot]
	Panels    []*Panel        // in order of number
	Climate   []Done[Climate] // readings of the room, not of a panel
	Notes     []Done[Note]    // about no panel in particular
	Keys      []Event         // the life of the signing key
	Last      int64           // number of the last entry
	Written   When            // when the last entry was written down

	materials map[Key]int
	lots      map[Key]int
	panels    map[Number]*Panel
}

// Done is a body of one type as it stands after all corrections, with the
// entry it comes from.
type Done[B Body] struct {
	Seq         int64
	At, Written When
	Body        B
	Corrections []Correction
	Panels      []Number // all the panels the entry names, of which some may be in another part of the journal
}

// Event is something that happened to a panel, of any kind.
type Event = Done[Body]

// Fold turns entries, in the order of the journal, into panels. It is pure:
// the same entries give the same panels in any process. The entries may be a
// part of a journal as long as everything they refer to is among them.
func Fold(entries []Entry) (*Workshop, error) {
	w := &Workshop{materials: map[Key]int{}, lots: map[Key]int{}, panels: map[Number]*Panel{}}
	fixes := map[int64][]Entry{}
	last := int64(0)
	for _, e := range entries {
		if e.Seq <= last {
			return nil, fmt.Errorf("entry %d stands after entry %d", e.Seq, last)
		}
		last = e.Seq
		if of := e.Corrects(); of != 0 {
			fixes[of] = append(fixes[of], e)
		}
	}
	for _, e := range entries {
		if err := w.take(e, fixes); err != nil {
			return nil, fmt.Errorf("entry %d: %w", e.Seq, err)
		}
		w.Last, w.Written = e.Seq, e.Written
	}
	slices.SortFunc(w.Panels, func(a, b *Panel) int { return CompareNumbers(a.Number, b.Number) })
	for _, p := range w.Panels {
		p.finish()
	}
	return w, nil
}

// CompareNumbers orders numbers by year, then serial.
func CompareNumbers(a, b Number) int {
	if d := a.Year() - b.Year(); d != 0 {
		return d
	}
	if d := a.Serial() - b.Serial(); d != 0 {
		return d
	}
	return strings.Compare(string(a), string(b))
}

func (w *Workshop) take(e Entry, fixes map[int64][]Entry) error {
	if e.Corrects() != 0 {
		return nil
	}
	if c, ok := e.Body.(Cut); ok {
		for _, n := range e.Panels {
			if w.panels[n] != nil {
				return fmt.Errorf("%s is cut twice", n)
			}
			p := &Panel{Number: n, Batch: c.Batch}
			w.panels[n] = p
			w.Panels = append(w.Panels, p)
		}
	}
	for _, n := range e.Panels {
		p := w.panels[n]
		if p == nil {
			if len(e.Panels) > 1 {
				continue // a part of a journal: the others of the batch are elsewhere
			}
			return fmt.Errorf("there is no panel %s", n)
		}
		ev, ok, err := effective(e, n, fixes)
		if err != nil {
			return err
		}
		p.Corrections = append(p.Corrections, ev.Corrections...)
		if ok {
			p.add(ev)
		}
	}
	if len(e.Panels) > 0 {
		return nil
	}
	ev, ok, err := effective(e, "", fixes)
	if err != nil || !ok {
		return err
	}
	switch b := ev.Body.(type) {
	case Studio:
		w.Studio = b
	case Material:
		d := as(ev, b)
		if i, again := w.materials[b.Key]; again {
			w.Materials[i] = d
		} else {
			w.materials[b.Key] = len(w.Materials)
			w.Materials = append(w.Materials, d)
		}
	case Lot:
		w.lots[b.Key] = len(w.Lots)
		w.Lots = append(w.Lots, as(ev, b))
	case Climate:
		w.Climate = append(w.Climate, as(ev, b))
	case Note:
		w.Notes = append(w.Notes, as(ev, b))
	case KeyMade, KeyRetired, KeyLost:
		w.Keys = append(w.Keys, ev)
	}
	return nil
}

func as[B Body](e Event, b B) Done[B] {
	return Done[B]{e.Seq, e.At, e.Written, b, e.Corrections, e.Panels}
}

// effective returns an entry as it stands for one panel ("" for entries about
// none), and false if it was withdrawn.
func effective(e Entry, n Number, fixes map[int64][]Entry) (Event, bool, error) {
	ev := Event{Seq: e.Seq, At: e.At, Written: e.Written, Body: e.Body, Panels: e.Panels}
	now, in := e, true
	for _, f := range fixes[e.Seq] {
		if len(f.Panels) > 0 && !slices.Contains(f.Panels, n) || !stands(f, n, fixes) {
			continue
		}
		c := Correction{Seq: f.Seq, Of: e.Seq, Kind: e.Body.Kind(), Written: f.Written}
		switch b := f.Body.(type) {
		case Withdrawn:
			c.Because, in = b.Because, false
		case Amended:
			c.Because = b.Because
			next, err := patched(now, b.Change)
			if err != nil {
				// It fitted when it was written, but what it stood on was taken
				// back later. One such change must not close the whole book.
				c.Unfit = err.Error()
				break
			}
			if c.Changes, err = diff(now, next); err != nil {
				return Event{}, false, err
			}
			if len(c.Changes) == 0 {
				continue // it says what stood there already
			}
			now = next
		}
		ev.Corrections = append(ev.Corrections, c)
	}
	ev.At, ev.Body = now.At, now.Body
	return ev, in, nil
}

// stands reports that a correction was not itself withdrawn.
func stands(f Entry, n Number, fixes map[int64][]Entry) bool {
	for _, g := range fixes[f.Seq] {
		if _, ok := g.Body.(Withdrawn); ok && (len(g.Panels) == 0 || slices.Contains(g.Panels, n)) && stands(g, n, fixes) {
			return false
		}
	}
	return true
}

// diff lists the fields that differ between two versions of an entry.
func diff(was, now Entry) ([]Change, error) {
	a, err := fieldsOf(was)
	if err != nil {
		return nil, err
	}
	b, err := fieldsOf(now)
	if err != nil {
		return nil, err
	}
	var names []string
	for n := range a {
		names = append(names, n)
	}
	for n := range b {
		if a[n] == nil {
			names = append(names, n)
		}
	}
	slices.Sort(names)
	var out []Change
	for _, n := range names {
		if string(a[n]) != string(b[n]) {
			out = append(out, Change{n, string(a[n]), string(b[n])})
		}
	}
	return out, nil
}

// Panel returns a panel by its number, or nil.
func (w *Workshop) Panel(n Number) *Panel { return w.panels[n] }

// Material returns a material by its key.
func (w *Workshop) Material(k Key) (Material, bool) {
	i, ok := w.materials[k]
	if !ok {
		return Material{}, false
	}
	return w.Materials[i].Body, true
}

// Lot returns a lot by its key.
func (w *Workshop) Lot(k Key) (Lot, bool) {
	i, ok := w.lots[k]
	if !ok {
		return Lot{}, false
	}
	return w.Lots[i].Body, true
}

// Batch returns the panels of a batch, in order of number.
func (w *Workshop) Batch(k Key) []*Panel {
	var ps []*Panel
	for _, p := range w.Panels {
		if p.Batch == k {
			ps = append(ps, p)
		}
	}
	return ps
}
