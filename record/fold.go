package record

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"sync"
)

// Workshop is what a journal adds up to.
type Workshop struct {
	Studio    Studio           // as it is now
	Materials []Done[Material] // as they are now, one of each key
	Makers    []Done[Maker]
	Recipes   []Done[Recipe]
	Lots      []Done[Lot]
	Panels    []*Panel        // in order of year and serial
	Climate   []Done[Climate] // readings of the room, not of a panel
	Notes     []Done[Note]    // about no panel in particular
	Keys      []Event         // the life of the signing key
	Last      int64           // number of the last entry
	Written   When            // when the last entry was written down
	Newer     []int64         // entries about no panel that a later program wrote

	described map[int64]Event          // every entry that describes a thing or the studio
	versions  map[Kind]map[Key][]int64 // which of them are of one thing, in order
	means     map[int64][]int64        // of entries that nothing corrected: those that describe what they name
	panels    map[Number]*Panel
	only      map[Number]bool // the panels that are folded; none: all
	air       []Done[Climate] // readings of at most a day, in order of time
	vague     []Done[Climate] // the others
	once      sync.Map        // see [Workshop.Once]
}

// Done is a body of one type as it stands after all corrections, with the
// entry it comes from.
type Done[B Body] struct {
	Seq         int64
	At, Written When
	Body        B
	Corrections []Correction
	Panels      []Number // all the panels the entry names, of which some may be in another part of the journal
	Sharing     []Number // those of them of which its amount in all is said: all, or those of the correction that gave it
	Makers      []Hand   // who did it; none: the studio's maker
	StudioAs    []int64  // entries that describe the studio then
	Imported    Imported
	ByWriting   bool // nothing but the order of writing says that it came after the event before it
}

// Event is something that happened to a panel, of any kind.
type Event = Done[Body]

// Fold turns entries, in the order of the journal, into panels. It is pure and
// judges nothing: the same entries give the same panels in any process, and
// every entry that could once be written can be folded. The entries may be a
// part of a journal as long as everything they refer to is among them. Where
// panels are named, only these are folded.
func Fold(entries []Entry, only ...Number) (*Workshop, error) {
	w := &Workshop{only: map[Number]bool{}, described: map[int64]Event{}, versions: map[Kind]map[Key][]int64{}, means: map[int64][]int64{}, panels: map[Number]*Panel{}}
	for _, n := range only {
		w.only[n] = true
	}
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
	w.airInOrder()
	slices.SortFunc(w.Panels, comparePanels)
	for _, p := range w.Panels {
		w.finish(p)
	}
	return w, nil
}

func (w *Workshop) take(e Entry, fixes map[int64][]Entry) error {
	if e.Corrects() != 0 {
		return nil
	}
	if c, ok := e.Body.(Cut); ok {
		for _, n := range w.wanted(e.Panels) {
			if w.panels[n] != nil {
				return fmt.Errorf("%s is cut twice", n)
			}
			w.begin(n, c.Batch)
		}
	}
	e = w.Bound(e)
	_, foreign := e.Body.(Foreign)
	for _, n := range w.wanted(e.Panels) {
		p := w.panels[n]
		if p == nil && foreign {
			p = w.begin(n, "") // a later program may let panels begin in its own way
		}
		if p == nil {
			if len(e.Panels) > 1 {
				continue // a part of a journal: the others of the batch are elsewhere
			}
			return fmt.Errorf("there is no panel %s", n)
		}
		ev, in, newer, err := effective(e, n, fixes)
		if err != nil {
			return err
		}
		if newer {
			p.Newer = append(p.Newer, e.Seq)
		}
		p.Corrections = append(p.Corrections, ev.Corrections...)
		if in {
			p.add(ev)
		}
	}
	if len(e.Panels) > 0 {
		return nil
	}
	ev, in, newer, err := effective(e, "", fixes)
	if err != nil || !in {
		return err
	}
	if newer {
		w.Newer = append(w.Newer, e.Seq)
	}
	w.shelve(ev)
	return nil
}

// wanted returns those of an entry's panels that are folded.
func (w *Workshop) wanted(all []Number) []Number {
	if len(w.only) == 0 {
		return all
	}
	var some []Number
	for _, n := range all {
		if w.only[n] {
			some = append(some, n)
		}
	}
	return some
}

func (w *Workshop) begin(n Number, batch Key) *Panel {
	p := &Panel{Number: n, Batch: batch}
	w.panels[n] = p
	w.Panels = append(w.Panels, p)
	return p
}

// shelve keeps what is about no panel.
func (w *Workshop) shelve(ev Event) {
	switch b := ev.Body.(type) {
	case Studio:
		b.Journal = cmp.Or(w.Studio.Journal, b.Journal)
		w.Studio = b
		w.describe(ev, "")
	case Maker:
		w.Makers = latest(w.Makers, ev, b, w.describe(ev, b.Key))
	case Material:
		w.Materials = latest(w.Materials, ev, b, w.describe(ev, b.Key))
	case Recipe:
		w.Recipes = latest(w.Recipes, ev, b, w.describe(ev, b.Key))
	case Lot:
		w.Lots = latest(w.Lots, ev, b, w.describe(ev, b.Key))
	case Climate:
		w.Climate = append(w.Climate, as(ev, b))
	case Note:
		w.Notes = append(w.Notes, as(ev, b))
	case KeyMade, KeyRetired, KeyLost:
		w.Keys = append(w.Keys, ev)
	}
}

// describe keeps an entry that describes a thing, and returns the entry that
// described it before, or 0.
func (w *Workshop) describe(ev Event, k Key) (before int64) {
	kind := ev.Body.Kind()
	if w.versions[kind] == nil {
		w.versions[kind] = map[Key][]int64{}
	}
	if vs := w.versions[kind][k]; len(vs) > 0 {
		before = vs[len(vs)-1]
	}
	w.described[ev.Seq] = ev
	w.versions[kind][k] = append(w.versions[kind][k], ev.Seq)
	return before
}

// latest puts a thing into a list, in the place of what it was before.
func latest[B Body](list []Done[B], ev Event, b B, before int64) []Done[B] {
	i := slices.IndexFunc(list, func(d Done[B]) bool { return d.Seq == before })
	if before == 0 || i < 0 {
		return append(list, as(ev, b))
	}
	list[i] = as(ev, b)
	return list
}

// Once reckons something of a workshop when it is first asked for by its key,
// of a type of the asking package: what is the same of many panels is reckoned
// once for all. It may be called from several goroutines.
func (w *Workshop) Once(key any, reckon func() any) any {
	v, known := w.once.Load(key)
	if !known {
		v, _ = w.once.LoadOrStore(key, reckon())
	}
	return v
}

func as[B Body](e Event, b B) Done[B] {
	return Done[B]{e.Seq, e.At, e.Written, b, e.Corrections, e.Panels, e.Sharing, e.Makers, e.StudioAs, e.Imported, e.ByWriting}
}

// Bound returns an entry in which every mention names the entries that it may
// mean: where the entry itself does not say, all that stood before it.
func (w *Workshop) Bound(e Entry) Entry {
	if e.StudioAs != nil && !slices.ContainsFunc(e.Makers, func(h Hand) bool { return h.As == nil }) &&
		!slices.ContainsFunc(Mentions(e.Body), func(m Mention) bool { return m.As == nil }) {
		return e // it says so itself
	}
	return e.Bind(func(m Meant) (as []int64) {
		if m.As != nil {
			return m.As
		}
		for _, seq := range w.versions[m.Kind][m.Key] {
			if seq < e.Seq || e.Seq == 0 {
				as = append(as, seq)
			}
		}
		return as
	})
}

// effective returns an entry as it stands for one panel ("" for entries about
// none); in is false if it was withdrawn, newer true if this program cannot
// read all of it.
func effective(e Entry, n Number, fixes map[int64][]Entry) (ev Event, in, newer bool, err error) {
	ev = Event{Seq: e.Seq, At: e.At, Written: e.Written, Body: e.Body, Panels: e.Panels, Sharing: e.Panels, Makers: e.Makers, StudioAs: e.StudioAs, Imported: e.Imported}
	now := e
	in, newer = true, len(e.Newer) > 0
	for _, f := range fixes[e.Seq] {
		if len(f.Panels) > 0 && !slices.Contains(f.Panels, n) || !stands(f, n, fixes) {
			continue
		}
		newer = newer || len(f.Newer) > 0
		c := Correction{Seq: f.Seq, Of: e.Seq, Kind: e.Body.Kind(), Written: f.Written}
		switch b := f.Body.(type) {
		case Withdrawn:
			c.Because, in = b.Because, false
		case Amended:
			c.Because, c.Amends = b.Because, true
			next, err := now.Patched(b.Change)
			if err != nil {
				newer = true // it was accepted once: a later program can read it
				break
			}
			if b.sharesOut() {
				if ev.Sharing = f.Panels; len(f.Panels) == 0 {
					ev.Sharing = e.Panels
				}
			}
			if c.Changes, err = diff(now, next); err != nil {
				return Event{}, false, false, err
			}
			if len(c.Changes) == 0 {
				continue // it says what stood there already
			}
			newer = newer || len(next.Newer) > 0
			now = next
		}
		ev.Corrections = append(ev.Corrections, c)
	}
	ev.At, ev.Body, ev.Makers, ev.StudioAs = now.At, now.Body, now.Makers, now.StudioAs
	return ev, in, newer, nil
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
	a, err := was.members()
	if err != nil {
		return nil, err
	}
	b, err := now.members()
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
		if text, is := strings.CutSuffix(n, "_kind"); is && string(a[text]) != string(b[text]) {
			continue // the word follows its text
		}
		if string(a[n]) != string(b[n]) {
			out = append(out, Change{n, string(a[n]), string(b[n])})
		}
	}
	return out, nil
}

// finish puts together what follows from all events of a panel.
func (w *Workshop) finish(p *Panel) {
	p.order()
	for i := range p.Events {
		for _, seq := range w.meant(&p.Events[i]) {
			for _, c := range w.described[seq].Corrections {
				if !slices.ContainsFunc(p.Corrections, func(d Correction) bool { return d.Seq == c.Seq }) {
					p.Corrections = append(p.Corrections, c)
				}
			}
			if slices.Contains(w.Newer, seq) && !slices.Contains(p.Newer, seq) {
				p.Newer = append(p.Newer, seq)
			}
		}
	}
	slices.SortStableFunc(p.Corrections, func(a, b Correction) int { return int(a.Seq - b.Seq) })
	slices.Sort(p.Newer)
	if c, ok := Latest[Cut](p); ok {
		p.Batch = c.Body.Batch
	}
	p.join()
}

// meant returns the entries that describe what an event names, its lots too.
// What one entry tells of many panels is looked at once.
func (w *Workshop) meant(e *Event) []int64 {
	seqs, known := w.means[e.Seq]
	if known && e.Corrections == nil {
		return seqs
	}
	_, lots := Shelf(e.Body)
	seqs = Entry{Makers: e.Makers, StudioAs: e.StudioAs, Body: e.Body}.Described()
	for _, l := range lots {
		seqs = append(seqs, w.versions["lot"][l]...)
	}
	if e.Corrections == nil {
		w.means[e.Seq] = seqs
	}
	return seqs
}
