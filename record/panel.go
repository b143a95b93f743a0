package record

import "slices"

// Panel is one panel as the journal tells it, after all corrections.
type Panel struct {
	Number      Number
	Batch       Key
	Events      []Event      // in the order in which they happened
	Corrections []Correction // in the order in which they were written
}

// Each returns what of one kind happened to a panel, in order.
func Each[B Body](p *Panel) []Done[B] {
	var out []Done[B]
	for _, e := range p.Events {
		if b, ok := e.Body.(B); ok {
			out = append(out, as(e, b))
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

func (p *Panel) finish() {
	slices.SortStableFunc(p.Corrections, func(a, b Correction) int { return int(a.Seq - b.Seq) })
	if c, ok := Latest[Cut](p); ok {
		p.Batch = c.Body.Batch
	}
}

// Cut returns how the panel began.
func (p *Panel) Cut() Cut { c, _ := Latest[Cut](p); return c.Body }

// Size returns the size of the board as cut.
func (p *Panel) Size() Size { return p.Cut().Size }

// Description joins all descriptions: a later one replaces the fields it gives.
func (p *Panel) Description() Described {
	var d Described
	set := func(to *string, from string) {
		if from != "" {
			*to = from
		}
	}
	for _, e := range Each[Described](p) {
		b := e.Body
		for _, f := range []struct {
			to   *string
			from string
		}{{&d.Title, b.Title}, {&d.Subject, b.Subject}, {&d.Inscription, b.Inscription}, {&d.Signed, b.Signed},
			{&d.Features, b.Features}, {&d.Type, b.Type}, {&d.Medium, b.Medium}, {&d.Owner, b.Owner}, {&d.Note, b.Note}} {
			set(f.to, f.from)
		}
		if !b.Made.IsZero() {
			d.Made = b.Made
		}
		if !b.MeantFor.IsZero() {
			d.MeantFor = b.MeantFor
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
	StageBoard     Stage = "board"
	StageSealed    Stage = "sealed"
	StageClothed   Stage = "cloth laid"
	StageGrounded  Stage = "ground laid"
	StagePainted   Stage = "painted"
	StageVarnished Stage = "varnished"
)

// Stages lists the stages in order.
var Stages = []Stage{StageBoard, StageSealed, StageClothed, StageGrounded, StagePainted, StageVarnished}

// Stage returns how far the work has come.
func (p *Panel) Stage() Stage {
	at := 0
	for _, l := range p.Layers() {
		s := 1
		switch {
		case l.Varnish != nil:
			s = 5
		case l.Paint != nil:
			s = 4
		case l.Purpose == Ground && l.Face == Front:
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

// Certificate returns the certificate that stands: the last one issued that
// was neither taken back nor replaced. What a certificate replaced does not
// come back into force when that certificate is taken back.
func (p *Panel) Certificate() (Done[Issued], bool) {
	gone := map[int64]bool{}
	for _, r := range Each[Revoked](p) {
		gone[r.Body.Certificate] = true
	}
	all := Each[Issued](p)
	for _, c := range all {
		gone[c.Body.Replaces] = true
	}
	for _, c := range slices.Backward(all) {
		if !gone[c.Seq] {
			return c, true
		}
	}
	return Done[Issued]{}, false
}
