package dossier

import (
	"backleaf/record"
	"backleaf/record/tell"
)

// history tells what happened to the panel apart from the work on it. What was
// done several times on one day is one line.
func (b *builder) history() []Item {
	c := b.d.Columns
	var rows []joined
	for _, e := range b.p.Events {
		if said := b.happened(e); said != "" {
			rows = append(rows, joined{at: []record.When{e.At}, seqs: []int64{e.Seq}, cells: []string{upper(said)}, byDay: true})
		}
	}
	t := Table{Columns: []Column{{string(c.Date), 2}, {string(c.What), 7}, {string(c.Entry), 0.8}}}
	for _, r := range join(rows) {
		t.Rows = append(t.Rows, []string{b.when(r), r.cells[0], b.entries(r.seqs)})
	}
	if t.Rows == nil {
		return nil
	}
	return []Item{t}
}

// happened tells an event that is no work on the panel, or nothing.
func (b *builder) happened(e record.Event) string {
	h, said := b.d.History, ""
	switch x := e.Body.(type) {
	case record.Inspection:
		if x.Edges == "" && x.Adhesion == "" && x.Remarks == "" && x.By == "" {
			return "" // a bow only, which has its own table
		}
		said = sentence(string(h.Inspection), with(h.By, "by", x.By), with(h.Edges, "state", wordOf(b, x.Edges)), with(h.Adhesion, "state", wordOf(b, x.Adhesion)), x.Remarks)
	case record.Condition:
		said = sentence(h.Condition.With("by", x.By, "text", x.Text), with(h.Purpose, "text", x.Why))
	case record.Treatment:
		on := ""
		if len(x.Faces) > 0 {
			on = b.Faces(x.Faces)
		}
		said = sentence(h.Treatment.With("by", x.By, "text", x.Text), on, with(h.With, "text", x.With), with(h.Because, "text", x.Why))
	case record.LabelPrinted:
		said = sentence(string(h.Label), x.Reason)
	case record.Issued:
		replaces := ""
		if x.Replaces > 0 {
			replaces = h.Replaces.With("of", b.Entry(x.Replaces))
		}
		said = sentence(string(h.Certificate), replaces, x.Reason)
	case record.Revoked:
		said = h.Withdrawn.With("of", b.Entry(x.Certificate), "because", x.Because)
	case record.HandedOver:
		said = h.HandedOver.With("how", b.Word(x.How))
		if x.How == "return" {
			said = string(h.Returned)
		}
		said = sentence(said, x.Note)
	case record.Discarded:
		said = h.Discarded.With("because", x.Because)
	case record.Note:
		said = h.Note.With("text", x.Text)
	}
	return said
}

// glance answers on the first page what is asked first.
func (b *builder) glance() Section {
	g := b.d.Glance
	ps := &pairs{b: b}
	ps.add(g.Is, sentence(upper(b.MediumLine()), b.Dimensions(), b.DateOfWork()))
	warnings := b.Warnings()
	if warnings == nil {
		warnings = []string{string(g.NoHazard)}
	}
	ps.add(g.Hazards, sentence(warnings...))
	ps.add(g.Varnish, b.VarnishLine())
	ps.add(g.Condition, b.condition())
	gaps := string(g.NoGaps)
	if together := b.GapsTogether(); together != nil {
		gaps = sentence(together...)
	}
	ps.add(g.Gaps, gaps)
	ps.add(g.Changed, b.changed())
	front := func(r record.PhotoRole) bool { return r == record.PhotoFront }
	return Section{string(g.Title), append(b.pictures(front, 72), ps.list)}
}

// condition is what was last seen of the panel.
func (b *builder) condition() string {
	said := string(b.d.Glance.NoCondition)
	for _, e := range b.p.Events {
		switch e.Body.(type) {
		case record.Inspection, record.Condition, record.Treatment:
			if text := b.happened(e); text != "" {
				said = b.Day(e.At) + ": " + text + " (" + b.Entry(e.Seq) + ")"
			}
		}
	}
	return said
}

// changed counts what was corrected and treated.
func (b *builder) changed() string {
	g := b.d.Glance
	corrected, treated := len(b.p.Corrections), len(record.Each[record.Treatment](b.p))
	if corrected+treated == 0 {
		return string(g.NoChange)
	}
	var parts []string
	for _, x := range []struct {
		n int
		m tell.Message
	}{{corrected, g.Corrected}, {treated, g.Treated}} {
		if x.n > 0 {
			parts = append(parts, b.c.Fill(x.m, record.With("n", x.n)))
		}
	}
	return b.List(parts)
}

// batch tells what became of the panels made together with this one.
func (b *builder) batch() []Item {
	w := b.d.Batch
	all := b.w.Batch(b.p.Batch)
	if len(all) < 2 {
		return []Item{Text{Text: string(w.Alone)}}
	}
	out := []Item{Text{Text: b.c.Fill(w.Of, record.With("n", len(all)), tell.Told("batch", string(b.p.Batch)))}}
	for _, p := range all {
		if p.Number == b.p.Number {
			continue
		}
		for _, e := range p.Events {
			said := ""
			switch x := e.Body.(type) {
			case record.Discarded:
				said = w.Discarded.With("number", string(p.Number), "because", x.Because)
			case record.Treatment:
				said = w.Treated.With("number", string(p.Number), "text", x.Text)
			case record.Inspection:
				if x.Adhesion != "" && x.Adhesion != "sound" || x.Edges != "" && x.Edges != "sound" {
					said = w.Seen.With("number", string(p.Number), "text", b.happened(e))
				}
			}
			if said != "" {
				out = append(out, Text{Text: b.Day(e.At) + ": " + said + " (" + b.Entry(e.Seq) + ")"})
			}
		}
	}
	if len(out) == 1 {
		out = append(out, Text{Text: string(w.Well)})
	}
	return out
}
