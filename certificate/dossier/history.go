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
			rows = append(rows, joined{at: []record.When{e.At}, seqs: []int64{e.Seq}, cells: []string{b.c.Capital(said)}, byDay: true})
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

// happened tells an event that has no place elsewhere, or nothing.
func (b *builder) happened(e record.Event) string {
	switch x := e.Body.(type) {
	case record.Described, record.Photograph, record.WarmAir, record.Climate:
		return ""
	case record.Inspection:
		if x.Edges == "" && x.Adhesion == "" && x.Remarks == "" && x.By == "" {
			return "" // a bow only, which has its own table
		}
	}
	if e.Body.Kind().Traits().Bench {
		return ""
	}
	return b.c.WholeEvent(e)
}

// glance answers on the first page what is asked first.
func (b *builder) glance() Section {
	g := b.d.Glance
	ps := &pairs{b: b}
	ps.add(g.Is, b.sentence(b.c.Capital(b.MediumLine()), b.Dimensions(), b.DateOfWork()))
	warnings := b.Warnings()
	if warnings == nil {
		warnings = []string{string(g.NoHazard)}
	}
	ps.add(g.Hazards, b.sentence(warnings...))
	ps.add(g.Varnish, b.VarnishLine())
	ps.add(g.Condition, b.condition())
	gaps := string(g.NoGaps)
	if together := b.GapsTogether(); together != nil {
		gaps = b.sentence(append(together, string(g.MoreGaps))...)
	}
	ps.add(g.Gaps, gaps)
	ps.add(g.Changed, b.changed())
	for i := range ps.list {
		ps.list[i].Value = b.c.Capital(ps.list[i].Value)
	}
	front := func(r record.PhotoRole) bool { return r == record.PhotoFront }
	return Section{string(g.Title), append(b.pictures(front, 58), ps.list)}
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
