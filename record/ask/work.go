package ask

import (
	"slices"
	"strconv"
	"strings"

	"backleaf/record"
)

// events answers with all entries of one kind that have something to say.
func events[B record.Body](r *reader, say func(record.Done[B]) string) Answer {
	var out []string
	var es []int64
	for _, e := range record.Each[B](r.p) {
		if s := say(e); s != "" {
			out, es = append(out, s+", "+r.Day(e.At)), append(es, e.Seq)
		}
	}
	if out == nil {
		return none()
	}
	return recorded(es, few(out))
}

func (r *reader) trimmed() Answer {
	return events(r, func(e record.Done[record.Trimmed]) string {
		s := "trimmed"
		if e.Body.Tool != "" {
			s += " with " + e.Body.Tool
		}
		if e.Body.Eased != "" {
			s += ", edges eased: " + r.Word(e.Body.Eased)
		}
		return s
	})
}

func (r *reader) sanded() Answer {
	return events(r, func(e record.Done[record.Sanded]) string {
		s := r.Faces(e.Body.Faces)
		if e.Body.Grit > 0 {
			s += " with " + r.Word(e.Body.Scale) + " " + strconv.FormatInt(e.Body.Grit, 10)
		} else {
			s += ", grit not recorded"
		}
		if e.Body.Through != "" {
			s += ", through to fibre or board: " + r.Word(e.Body.Through)
		}
		return s
	})
}

func (r *reader) warm() Answer {
	return events(r, func(e record.Done[record.WarmAir]) string { return "warm air for " + r.Quantity(e.Body.For) })
}

// cured says when the last coat was laid and what its product is said to need:
// nobody sees a film cure, so no moment of it is ever recorded.
func (r *reader) cured() Answer {
	as := r.applications(isCoat)
	if len(as) == 0 {
		return none()
	}
	last := as[len(as)-1]
	var stated []string
	for _, a := range as {
		for _, p := range a.Coating.Mix {
			m, _ := r.w.Material(p.Material, p.As)
			if !known(m.CureFrom.String()) || !known(m.CureTo.String()) {
				continue
			}
			if s := m.Name + " cures in " + r.Quantity(m.CureFrom) + " to " + r.Quantity(m.CureTo) + basis(m); !slices.Contains(stated, s) {
				stated = append(stated, s)
			}
		}
	}
	line := "no product states how long it takes to cure"
	if stated != nil {
		line = few(stated)
	}
	return Answer{Lines: []string{"not recorded as such; the last coat, " + r.Layer(last.Layer) + ", was laid " + r.Moment(last.At), line}, Entries: []int64{last.Seq}}
}

// ofCoats answers with one property of each coating.
func (r *reader) ofCoats(say func(application) string) Answer {
	var out []string
	var es []int64
	for _, a := range r.applications(func(l record.Layer) bool { return l.Coating != nil }) {
		if s := say(a); s != "" {
			out, es = append(out, r.Layer(a.Layer)+": "+s), append(es, a.Seq)
		}
	}
	if out == nil {
		return none()
	}
	return recorded(es, few(out))
}

func (r *reader) thinned() Answer {
	return r.ofCoats(func(a application) string {
		if a.Coating.Thinned.IsZero() {
			return ""
		}
		s := r.Quantity(a.Coating.Thinned)
		if a.Coating.Thinner != "" {
			s += " with " + a.Coating.Thinner
		}
		return s
	})
}

func (r *reader) tools() Answer {
	return r.ofCoats(func(a application) string { return a.Coating.Tool })
}

func (r *reader) amounts() Answer {
	return r.ofCoats(func(a application) string {
		if a.Coating.WetTotal.IsZero() && a.Coating.WetEach.IsZero() {
			return ""
		}
		panels := 1
		for _, e := range r.p.Events {
			if e.Seq == a.Seq {
				panels = len(e.Panels)
			}
		}
		return r.Amount(a.Coating, panels)
	})
}

func (r *reader) air() Answer {
	var out []string
	var es []int64
	read := func(what string, t record.Temperature, h record.Percent, seq int64) {
		var s []string
		if !t.IsZero() {
			s = append(s, r.Quantity(t))
		}
		if !h.IsZero() {
			s = append(s, r.Quantity(h))
		}
		if s != nil {
			out, es = append(out, what+": "+strings.Join(s, ", ")), append(es, seq)
		}
	}
	for _, a := range r.applications(func(l record.Layer) bool { return l.Coating != nil }) {
		read(r.Layer(a.Layer), a.Coating.Temperature, a.Coating.Humidity, a.Seq)
	}
	for _, e := range record.Each[record.Climate](r.p) {
		read("air, "+r.Day(e.At), e.Body.Temperature, e.Body.Humidity, e.Seq)
	}
	if out == nil {
		return none()
	}
	return recorded(es, few(out))
}

func (r *reader) when() Answer {
	d := r.p.Description()
	var es []int64
	for _, e := range record.Each[record.Described](r.p) {
		if !e.Body.Made.IsZero() {
			es = append(es, e.Seq)
		}
	}
	a := recorded(es, r.DateOfWork(), "worked on: "+r.MadeBetween())
	a.Recorded = d.Made.Known()
	return a
}

func (r *reader) steps() Answer {
	var out []string
	var es []int64
	for _, e := range r.p.Events {
		name := ""
		switch b := e.Body.(type) {
		case record.Cut:
			name = "cut"
		case record.Coat:
			name = r.Layer(record.Layer{Purpose: b.Purpose, Coating: &b.Coating})
		case record.ClothLaid:
			name = "cloth laid"
		case record.Trimmed:
			name = "trimmed"
		case record.Sanded:
			name = "sanded"
		case record.PaintLayer:
			name = r.Layer(record.Layer{Paint: &b, Coating: &b.Coating})
		case record.Varnish:
			name = "varnished"
		default:
			continue
		}
		out, es = append(out, name+" "+r.Day(e.At)), append(es, e.Seq)
	}
	if out == nil {
		return none()
	}
	return recorded(es, strings.Join(out, "; "))
}

func (r *reader) bow() Answer {
	return events(r, func(e record.Done[record.Inspection]) string {
		if e.Body.Bow.IsZero() {
			return ""
		}
		s := r.Quantity(e.Body.Bow) + " over " + r.Quantity(e.Body.Span)
		if e.Body.Toward != "" && e.Body.Toward != "flat" {
			s += ", hollow at the " + r.Word(e.Body.Toward)
		}
		return s
	})
}

func (r *reader) sound() Answer {
	return events(r, func(e record.Done[record.Inspection]) string {
		var s []string
		if e.Body.Edges != "" {
			s = append(s, "edges "+r.Word(e.Body.Edges))
		}
		if e.Body.Adhesion != "" {
			s = append(s, "adhesion "+r.Word(e.Body.Adhesion))
		}
		if e.Body.Remarks != "" {
			s = append(s, e.Body.Remarks)
		}
		return strings.Join(s, ", ")
	})
}

func (r *reader) buildUp() Answer {
	as := r.applications(func(record.Layer) bool { return true })
	_, seq := r.cut()
	return recorded(append([]int64{seq}, seqs(as)...), r.BuildUpSentence())
}
