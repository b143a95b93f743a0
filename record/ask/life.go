package ask

import (
	"fmt"
	"slices"
	"strings"

	"backleaf/record"
)

// described answers with a field of the description and the entries that set it.
func (r *reader) described(field func(record.Described) string) Answer {
	var es []int64
	for _, e := range record.Each[record.Described](r.p) {
		if field(e.Body) != "" {
			es = append(es, e.Seq)
		}
	}
	return r.said(field(r.p.Description()), es...)
}

func (r *reader) title() Answer {
	return r.described(func(d record.Described) string { return d.Title })
}
func (r *reader) subject() Answer {
	return r.described(func(d record.Described) string { return d.Subject })
}
func (r *reader) features() Answer {
	return r.described(func(d record.Described) string { return d.Features })
}

func (r *reader) signed() Answer {
	s := r.described(func(d record.Described) string { return d.Signed })
	i := r.described(func(d record.Described) string { return d.Inscription })
	if !s.Recorded && !i.Recorded {
		return none()
	}
	return Answer{Lines: []string{"signed: " + s.Lines[0], "inscription: " + i.Lines[0]}, Entries: append(s.Entries, i.Entries...), Recorded: true}
}

func (r *reader) dimensions() Answer {
	_, seq := r.cut()
	a := recorded([]int64{seq}, r.Dimensions())
	a.Recorded = known(r.p.Size().Height.String())
	return a
}

func (r *reader) maker() Answer {
	if r.Maker() == "" {
		return none()
	}
	line := r.Maker()
	if r.MakerPlace() != "" {
		line += ", " + r.MakerPlace()
	}
	contact := r.w.Studio.Contact
	if contact != "" {
		contact = "contact: " + contact
	}
	return recorded(nil, line, contact)
}

func (r *reader) place() Answer {
	a := r.said(r.MakerPlace())
	if a.Recorded {
		a.Lines[0] = "the studio is in " + a.Lines[0]
	}
	return a
}

func (r *reader) number() Answer {
	line := r.Number()
	if o := r.p.Description().Owner; o != "" {
		line += "; the studio's own reference " + o
	}
	_, seq := r.cut()
	return recorded([]int64{seq}, line)
}

func (r *reader) batch() Answer {
	c, seq := r.cut()
	line := "batch " + string(c.Batch)
	if cut, ok := record.Latest[record.Cut](r.p); ok && len(cut.Panels) > 1 {
		line += fmt.Sprintf(", %d panels cut together", len(cut.Panels))
	}
	return recorded([]int64{seq}, line)
}

func (r *reader) private() Answer {
	return Answer{Lines: []string{"not answered here: buyer and price are kept outside the journal", "what may be said is when the panel left: ask \"where\""}}
}

func (r *reader) where() Answer {
	h, ok := record.Latest[record.HandedOver](r.p)
	if !ok {
		return Answer{Lines: []string{"nothing is recorded of its leaving the studio"}}
	}
	line := "handed over: " + r.Word(h.Body.How)
	if h.Body.How == "return" {
		line = "came back to the studio"
	}
	return recorded([]int64{h.Seq}, line+", "+r.Day(h.At), h.Body.Note)
}

func (r *reader) lots() Answer {
	var out []string
	var es []int64
	add := func(m record.Key, as []int64, lot record.Key, seq int64) {
		if !known(string(m)) {
			return
		}
		if s := r.productLot(m, as, lot); !slices.Contains(out, s) {
			out = append(out, s)
		}
		if !slices.Contains(es, seq) {
			es = append(es, seq)
		}
	}
	c, seq := r.cut()
	add(c.Board, c.BoardAs, c.Lot, seq)
	for _, a := range r.applications(func(record.Layer) bool { return true }) {
		if a.Cloth != nil {
			add(a.Cloth.Cloth, a.Cloth.ClothAs, a.Cloth.ClothLot, a.Seq)
			continue
		}
		for _, p := range a.Coating.Mix {
			add(p.Material, p.As, p.Lot, a.Seq)
		}
	}
	if out == nil {
		return none()
	}
	return recorded(es, strings.Join(out, "; "))
}

func (r *reader) products() Answer { return r.lots() }

func (r *reader) binders() Answer {
	var out []string
	as := r.applications(func(l record.Layer) bool { return l.Coating != nil })
	var es []int64
	for _, a := range as {
		if b := r.Binder(a.Coating); b != "" && !slices.Contains(out, b) {
			out, es = append(out, b), append(es, a.Seq)
		}
	}
	if out == nil {
		return none()
	}
	return recorded(es, few(out), "the dossier lists what each is sensitive to; test first, a conservator decides")
}

func (r *reader) care() Answer {
	return recorded(nil, r.CareLine(), "general advice; its sources stand in the certificate")
}

func (r *reader) condition() Answer {
	a := events(r, func(e record.Done[record.Condition]) string { return e.Body.By + ": " + e.Body.Text })
	if !a.Recorded {
		return r.sound()
	}
	return a
}

func (r *reader) treatment() Answer {
	return events(r, func(e record.Done[record.Treatment]) string {
		s := e.Body.By + ": " + e.Body.Text
		if e.Body.With != "" {
			s += ", with " + e.Body.With
		}
		return s
	})
}

func (r *reader) certificate() Answer {
	all := record.Each[record.Issued](r.p)
	if len(all) == 0 {
		return Answer{Lines: []string{"no certificate was issued"}}
	}
	var es []int64
	for _, c := range all {
		es = append(es, c.Seq)
	}
	c, ok := r.p.Certificate()
	if !ok {
		return recorded(es, "issued, and taken back: none is in force")
	}
	return recorded(es, "in force: issued "+r.Day(c.At), "it states what the maker recorded, and is no proof of authorship by itself")
}

func (r *reader) label() Answer {
	return events(r, func(e record.Done[record.LabelPrinted]) string { return "label printed" })
}

func (r *reader) photographs() Answer {
	return events(r, func(e record.Done[record.Photograph]) string {
		s := r.Word(e.Body.Role)
		if e.Body.Caption != "" {
			s += ", " + e.Body.Caption
		}
		return s
	})
}

func (r *reader) corrections() Answer {
	lines := r.Corrections()
	if len(lines) == 0 {
		return recorded(nil, "nothing was amended or withdrawn")
	}
	var es []int64
	for _, c := range r.p.Corrections {
		es = append(es, c.Seq)
	}
	return recorded(es, few(lines))
}

func (r *reader) gaps() Answer {
	gaps := r.Gaps()
	if len(gaps) == 0 {
		return recorded(nil, "nothing that a reader would look for is missing")
	}
	return recorded(nil, strings.Join(gaps, "; "))
}

func (r *reader) notes() Answer {
	return events(r, func(e record.Done[record.Note]) string { return e.Body.Text })
}
