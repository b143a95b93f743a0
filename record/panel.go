package record

import (
	"cmp"
	"reflect"
	"slices"
	"strings"
	"time"
)

// Panel is one panel as the journal tells it, after all corrections.
type Panel struct {
	Number      Number
	Batch       Key
	Events      []Event      // in the order in which they happened
	Corrections []Correction // of it and of what it names, in the order in which they were written
	Newer       []int64      // entries that a later program wrote: nothing is judged, issued or printed
	layers      []Layer
	size        Size
}

// asMadeWithin is how long after the event an entry may be written for the
// panel to count as recorded as it was made, where nobody said (common
// practice: the week's work is written down at its end).
const asMadeWithin = 7 * 24 * time.Hour

// Year returns the full year in the panel's number. Where it was not stored,
// the century is that in which the panel was entered.
func (p *Panel) Year() int {
	c, _ := Latest[Cut](p)
	if c.Body.Year != 0 {
		return int(c.Body.Year)
	}
	y := 2000 + p.Number.Year()
	if t, ok := c.Written.Exact(); ok {
		if y = t.Year()/100*100 + p.Number.Year(); y > t.Year()+1 {
			y -= 100
		}
	}
	return y
}

// comparePanels orders panels by year, then serial, then number.
func comparePanels(a, b *Panel) int {
	return cmp.Or(a.Year()-b.Year(), a.Number.Serial()-b.Number.Serial(), strings.Compare(string(a.Number), string(b.Number)))
}

// AsMade reports that the making was recorded as it happened, so that what is
// absent was not done. The maker can say so; else it depends on how long after
// the cutting it was written down, and whether it was brought in from elsewhere.
func (p *Panel) AsMade() bool {
	c, _ := Latest[Cut](p)
	if c.Body.Recorded != "" {
		return c.Body.Recorded == "as-made"
	}
	at, ok := c.At.Latest()
	written, ok2 := c.Written.Exact()
	return ok && ok2 && c.Imported == (Imported{}) && written.Sub(at) <= asMadeWithin
}

// ClothIntended says whether the panel is meant to carry cloth: as last said,
// or yes where cloth was laid; empty where nobody said.
func (p *Panel) ClothIntended() Answer {
	if i, ok := Latest[Intended](p); ok {
		return i.Body.Cloth
	}
	if _, ok := Latest[ClothLaid](p); ok {
		return Yes
	}
	return ""
}

func (p *Panel) leftBare(f Face) bool {
	return slices.ContainsFunc(Each[LeftBare](p), func(b Done[LeftBare]) bool { return slices.Contains(b.Body.Faces, f) })
}

// Each returns what of one kind happened to a panel, in order.
func Each[B Body](p *Panel) []Done[B] {
	var out []Done[B]
	for i := range p.Events { // an event is large
		if b, ok := p.Events[i].Body.(B); ok {
			out = append(out, as(p.Events[i], b))
		}
	}
	return out
}

// Latest returns the last of one kind, and whether there is one.
func Latest[B Body](p *Panel) (Done[B], bool) {
	for i := len(p.Events) - 1; i >= 0; i-- {
		if b, ok := p.Events[i].Body.(B); ok {
			return as(p.Events[i], b), true
		}
	}
	return Done[B]{}, false
}

// Event returns what came of one entry; false on a panel that is not there or
// for which it does not stand.
func (p *Panel) Event(seq int64) (Event, bool) {
	if p != nil {
		for i := range p.Events {
			if p.Events[i].Seq == seq {
				return p.Events[i], true
			}
		}
	}
	return Event{}, false
}

// add places an event among those before it. Exact and inexact dates mix, so
// the order of writing stands unless an event was certainly earlier than one
// of them: then it goes before the first such. No event ever stands after one
// that was certainly later.
func (p *Panel) add(e Event) {
	i := 0
	for i < len(p.Events) && !e.At.Before(p.Events[i].At) {
		i++
	}
	p.Events = slices.Insert(p.Events, i, e)
}

// After returns the panel as it stands once entries were written that correct
// nothing. What describes their materials is not looked at.
func (p *Panel) After(es ...Entry) *Panel {
	q := *p
	q.Events = append(make([]Event, 0, len(p.Events)+len(es)), p.Events...)
	for _, e := range es {
		if ev, in, _, _ := effective(e, p.Number, nil); in {
			q.add(ev)
		}
	}
	q.order()
	q.join()
	return &q
}

// order tells of which events nothing but the order of writing says that they
// came after the one before.
func (p *Panel) order() {
	for i := range p.Events {
		e := &p.Events[i]
		if i > 0 {
			_, exact := e.At.Exact()
			_, before := p.Events[i-1].At.Exact()
			e.ByWriting = !(exact && before) && !p.Events[i-1].At.Before(e.At)
		}
	}
}

// Cut returns how the panel began.
func (p *Panel) Cut() Cut { c, _ := Latest[Cut](p); return c.Body }

// Size returns the size of the panel today: as cut, or as it was cut down or
// enlarged later, which leaves the depth as it is where it names none.
func (p *Panel) Size() Size { return p.size }

func (p *Panel) sizeNow() Size {
	s := p.Cut().Size
	for _, r := range Each[Resized](p) {
		depth := s.Depth
		if s = r.Body.Size; s.Depth.IsZero() && !s.IsZero() {
			s.Depth = depth
		}
	}
	return s
}

// sinceUsedAgain returns the events of the present work: all, or those after
// the panel was last used again.
func (p *Panel) sinceUsedAgain() *Panel {
	for i := len(p.Events) - 1; i >= 0; i-- {
		if _, ok := p.Events[i].Body.(UsedAgain); ok {
			return &Panel{Number: p.Number, Events: p.Events[i:]}
		}
	}
	return p
}

// Description joins all descriptions of the present work: a later one replaces
// the fields it gives.
func (p *Panel) Description() Described {
	var d Described
	to := reflect.ValueOf(&d).Elem()
	for _, e := range Each[Described](p.sinceUsedAgain()) {
		for i, from := range reflect.ValueOf(e.Body).Fields() {
			if !from.IsZero() {
				to.FieldByIndex(i.Index).Set(from)
			}
		}
	}
	if d.Owner == "" {
		d.Owner = p.Cut().Owner
	}
	return d
}

// Stage is how far the work on a panel has come.
type Stage string

// Stages, in order.
const (
	stageBoard     Stage = "board"
	stageSealed    Stage = "sealed"
	stageClothed   Stage = "cloth laid"
	stageGrounded  Stage = "ground laid"
	StagePainted   Stage = "painted"
	StageVarnished Stage = "varnished"
)

// Stages lists the stages in order.
var Stages = []Stage{stageBoard, stageSealed, stageClothed, stageGrounded, StagePainted, StageVarnished}

// Stage returns how far the work has come, by the front.
func (p *Panel) Stage() Stage {
	at := 0
	for _, l := range p.Layers() {
		s := 1
		switch {
		case !l.Stands():
			continue
		case l.Face == Back || l.Face == Edges:
		case l.Varnish != nil:
			s = 5
		case l.Paint != nil:
			s = 4
		case l.Purpose == Ground && l.Face == Front: // where nobody knows the face, it may be a seal
			s = 3
		case l.Cloth != nil:
			s = 2
		}
		at = max(at, s)
	}
	return Stages[at]
}

// Discarded returns why the panel was given up, and whether it was.
func (p *Panel) Discarded() (Done[Discarded], bool) { return Latest[Discarded](p) }

// Away returns how the panel last left the studio; false if it is there.
func (p *Panel) Away() (Done[HandedOver], bool) {
	h, ok := Latest[HandedOver](p)
	return h, ok && h.Body.How != "return"
}

// Certificate returns the certificate that stands: the last one issued, in the
// order of the journal, that was neither taken back nor replaced. What a certificate replaced does not
// come back into force when that certificate is taken back.
func (p *Panel) Certificate() (Done[Issued], bool) {
	gone := map[int64]bool{}
	for _, r := range Each[Revoked](p) {
		gone[r.Body.Certificate] = true
	}
	all := Each[Issued](p.sinceUsedAgain())
	for _, c := range all {
		gone[c.Body.Replaces] = true
	}
	slices.SortFunc(all, func(a, b Done[Issued]) int { return cmp.Compare(a.Seq, b.Seq) })
	for _, c := range slices.Backward(all) {
		if !gone[c.Seq] {
			return c, true
		}
	}
	return Done[Issued]{}, false
}
