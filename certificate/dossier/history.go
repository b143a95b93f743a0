package dossier

import (
	"backleaf/record"
	"backleaf/record/tell"
)

// history tells what happened to the panel apart from the work on it. What was
// done several times on one day is one line.
func (b *builder) history() []Item {
	c := b.d
	var rows []joined
	for _, e := range b.p.Events {
		if said := b.happened(e); said != "" {
			rows = append(rows, joined{at: []record.When{e.At}, seqs: []int64{e.Seq}, cells: []string{b.c.Capital(said)}, byDay: true})
		}
	}
	t := Table{Columns: []Column{{string(c.T("columns-date")), 2}, {string(c.T("columns-what")), 7}, {string(c.T("columns-entry")), 0.8}}}
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
	g := b.d
	ps := &pairs{b: b}
	ps.add(g.T("glance-is"), b.sentence(b.c.Capital(b.MediumLine()), b.Dimensions(), b.DateOfWork()))
	warnings := b.Warnings()
	if warnings == nil {
		warnings = []string{string(g.T("glance-no-hazard"))}
	}
	ps.add(g.T("glance-hazards"), b.sentence(warnings...))
	ps.add(g.T("glance-varnish"), b.VarnishLine())
	ps.add(g.T("glance-condition"), b.condition())
	gaps := string(g.T("glance-no-gaps"))
	if together := b.GapsTogether(); together != nil {
		gaps = b.sentence(append(together, string(g.T("glance-more-gaps")))...)
	}
	ps.add(g.T("glance-gaps"), gaps)
	ps.add(g.T("glance-changed"), b.changed())
	for i := range ps.list {
		ps.list[i].Value = b.c.Capital(ps.list[i].Value)
	}
	front := func(r record.PhotoRole) bool { return r == record.PhotoFront }
	return Section{string(g.T("glance-title")), append(b.pictures(front, 58), ps.list)}
}

// condition is what was last seen of the panel; a treatment is none.
func (b *builder) condition() string {
	said := string(b.d.T("glance-no-condition"))
	for _, e := range b.p.Events {
		switch e.Body.(type) {
		case record.Inspection, record.Condition:
			if text := b.happened(e); text != "" {
				said = b.Day(e.At) + ": " + text + " (" + b.Entry(e.Seq) + ")"
			}
		}
	}
	return said
}

// changed counts what was corrected and treated, and tells what was taken off
// or cut down.
func (b *builder) changed() string {
	g := b.d
	corrected, treated := len(b.p.Corrections), len(record.Each[record.Treatment](b.p))
	var parts []string
	for _, x := range []struct {
		n int
		m tell.Message
	}{{corrected, g.T("glance-corrected")}, {treated, g.T("glance-treated")}} {
		if x.n > 0 {
			parts = append(parts, b.c.Fill(x.m, record.With("n", x.n)))
		}
	}
	for _, e := range b.p.Events {
		switch e.Body.(type) {
		case record.Removed, record.Resized, record.UsedAgain:
			parts = append(parts, b.c.WholeEvent(e)+" ("+b.Entry(e.Seq)+")")
		}
	}
	if parts == nil {
		return string(g.T("glance-no-change"))
	}
	return b.c.Clauses(parts)
}

// batch tells what became of the panels made together with this one.
func (b *builder) batch() []Item {
	w := b.d
	all := b.w.Batch(b.p.Batch)
	if len(all) < 2 {
		return []Item{Text{Text: string(w.T("batch-alone"))}}
	}
	out := []Item{Text{Text: b.c.Fill(w.T("batch-of"), record.With("n", len(all)), tell.Told("batch", string(b.p.Batch)))}}
	for _, p := range all {
		if p.Number == b.p.Number {
			continue
		}
		for _, e := range p.Events {
			said := ""
			switch x := e.Body.(type) {
			case record.Discarded:
				said = w.T("batch-discarded").With("number", string(p.Number), "because", x.Because)
			case record.Treatment:
				said = w.T("batch-treated").With("number", string(p.Number), "text", x.Text)
			case record.Inspection:
				if x.Adhesion != "" && x.Adhesion != "sound" || x.Edges != "" && x.Edges != "sound" {
					said = w.T("batch-seen").With("number", string(p.Number), "text", b.happened(e))
				}
			}
			if said != "" {
				out = append(out, Text{Text: b.Day(e.At) + ": " + said + " (" + b.Entry(e.Seq) + ")"})
			}
		}
	}
	if len(out) == 1 {
		out = append(out, Text{Text: string(w.T("batch-well"))})
	}
	return out
}
