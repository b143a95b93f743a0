package dossier

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/paper"
	"backleaf/record/tell"
)

// A step is something done to the panel, or a reading of the air it stood in.
type step struct {
	n        int // number in the table; 0 for a reading of the air
	seq      int64
	at       record.When
	words    string
	detail   string
	celsius  float64
	humidity float64
	hasTemp  bool
	hasRH    bool
	air      string
}

// timed is the moment at which a step stands on a time line: the exact one, or
// the middle of a day. Anything longer has no place on it.
func (s step) timed() (time.Time, bool) {
	if t, ok := s.at.Exact(); ok {
		return t, true
	}
	from, ok1 := s.at.Earliest()
	to, ok2 := s.at.Latest()
	if !ok1 || !ok2 || !s.at.Date().IsExactDay() {
		return time.Time{}, false
	}
	return from.Add(to.Sub(from) / 2), true
}

// work lists the steps in order, with the readings of the room between the
// first and the last of them.
func (b *builder) work() []step {
	var out []step
	n := 0
	for _, e := range b.p.Events {
		s, ok := b.step(e)
		if !ok {
			continue
		}
		n++
		s.n, s.seq, s.at = n, e.Seq, e.At
		out = append(out, s)
	}
	if len(out) == 0 {
		return nil
	}
	first, last := out[0].at, out[len(out)-1].at
	for _, r := range b.w.Climate {
		if r.At.Before(first) || last.Before(r.At) || !r.At.Known() {
			continue
		}
		s := b.reading(r.Body, step{seq: r.Seq, at: r.At})
		i := slices.IndexFunc(out, func(x step) bool { return r.At.Before(x.at) })
		if i < 0 {
			i = len(out)
		}
		out = slices.Insert(out, i, s)
	}
	return out
}

func (b *builder) step(e record.Event) (s step, ok bool) {
	w := b.d
	answer := func(m tell.Message, a record.Answer) string {
		if a == "" {
			return ""
		}
		return m.With("answer", b.Word(a))
	}
	layer := func(l record.Layer, faces []record.Face) step {
		if len(faces) == 0 {
			faces = []record.Face{record.Front}
		}
		s := b.air(*l.Coating)
		s.words = w.T("steps-on").With("step", b.Layer(l), "faces", b.Faces(faces))
		s.detail = b.mix(l.Coating)
		return s
	}
	switch body := e.Body.(type) {
	case record.Cut:
		return step{words: string(w.T("steps-cut")), detail: body.Note}, true
	case record.Coat:
		return layer(record.Layer{Purpose: body.Purpose, Coating: &body.Coating}, body.Faces), true
	case record.ClothLaid:
		s := layer(record.Layer{Purpose: record.Adhesive, Coating: &body.Coating}, body.Faces)
		s.words = w.T("steps-on").With("step", w.T("steps-cloth").With("cloth", b.Layer(record.Layer{Cloth: &body})), "faces", b.Faces(body.Faces))
		return s, true
	case record.PaintLayer:
		return layer(record.Layer{Paint: &body, Coating: &body.Coating}, body.Faces), true
	case record.Varnish:
		return layer(record.Layer{Varnish: &body, Coating: &body.Coating}, body.Faces), true
	case record.Trimmed:
		return step{words: string(w.T("steps-trimmed")), detail: b.sentence(b.tool(body.Tool, body.ToolIs), answer(w.T("steps-eased"), body.Eased), body.Note)}, true
	case record.Sanded:
		grit := b.Said("")
		if body.Grit > 0 {
			grit = b.Word(body.Scale) + paper.NoBreakSpace + strconv.FormatInt(body.Grit, 10)
		}
		return step{words: w.T("steps-on").With("step", w.T("steps-sanded").With("grit", grit), "faces", b.Faces(body.Faces)),
			detail: b.sentence(answer(w.T("steps-sanded-wet"), body.Wet), answer(w.T("steps-sanded-through"), body.Through), answer(w.T("steps-dusted"), body.Dusted), body.Note)}, true
	case record.Braced:
		return step{words: string(w.T("steps-braced")), detail: b.sentence(wordOf(b, body.Bracing), wordOf(b, body.Fixing), wordOf(b, body.Run), body.Note)}, true
	case record.WarmAir:
		return step{words: w.T("steps-warm-air").With("time", b.Quantity(body.For)), detail: b.sentence(b.Faces(body.Faces), body.Note)}, true
	case record.Climate:
		return b.reading(body, step{}), true
	}
	return step{}, false
}

func (b *builder) reading(c record.Climate, s step) step {
	place := ""
	if c.Place != "" {
		place = ", " + c.Place
	}
	air := b.air(record.Coating{Temperature: c.Temperature, Humidity: c.Humidity})
	air.n, air.seq, air.at = s.n, s.seq, s.at
	air.words = b.d.T("steps-climate").With("place", place)
	return air
}

// air is the climate of a step.
func (b *builder) air(c record.Coating) (s step) {
	var said []string
	if mc, ok := c.Temperature.Millicelsius(); ok {
		s.celsius, s.hasTemp = float64(mc)/1000, true
		said = append(said, b.Quantity(c.Temperature))
	}
	if mp, ok := c.Humidity.Millipercent(); ok {
		s.humidity, s.hasRH = float64(mp)/1000, true
		said = append(said, b.Quantity(c.Humidity))
	}
	s.air = strings.Join(said, ", ")
	return s
}

// number is what stands in the first column.
func (s step) number() string {
	if s.n == 0 {
		return "·"
	}
	return strconv.Itoa(s.n)
}

func (b *builder) steps() []Item {
	work := b.work()
	if len(work) == 0 {
		return nil
	}
	c := b.d
	t := Table{Columns: []Column{{string(c.T("columns-no")), 0.5}, {string(c.T("columns-date")), 1.9}, {string(c.T("columns-step")), 3.6}, {string(c.T("columns-detail")), 3.4}, {string(c.T("columns-air")), 1.4}, {string(c.T("columns-entry")), 0.8}}}
	const airAt = 4
	anyAir := slices.ContainsFunc(work, func(s step) bool { return s.air != "" })
	caption := b.d.T("figures-time-air")
	if !anyAir {
		t.Columns, caption = slices.Delete(t.Columns, airAt, airAt+1), b.d.T("figures-time")
	}
	off := 0
	for _, s := range work {
		row := []string{s.number(), b.Moment(s.at), s.words, s.detail, cmp.Or(s.air, string(b.d.T("steps-no-air"))), b.Entry(s.seq)}
		if !anyAir {
			row = slices.Delete(row, airAt, airAt+1)
		}
		t.Rows = append(t.Rows, row)
		if _, ok := s.timed(); !ok {
			off++
		}
	}
	out := []Item{t}
	if !anyAir {
		out = append(out, Text{Text: string(b.d.T("steps-air-of-none")), Small: true})
	}
	if len(work)-off >= 2 {
		out = append(out, b.figure(caption, func(width, height float64) ([]paper.Drawing, error) { return b.timeLine(work, width) }))
		if off > 0 {
			out = append(out, Text{Text: b.c.Fill(b.d.T("figures-off-the-line"), record.With("n", off)), Small: true})
		}
	}
	return out
}
