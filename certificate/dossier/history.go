package dossier

import "backleaf/record"

// history tells what happened to the panel apart from the work on it.
func (b *builder) history() []Item {
	h, c := b.d.History, b.d.Columns
	t := Table{Columns: []Column{{string(c.Date), 2}, {string(c.What), 7}, {string(c.Entry), 0.8}}}
	for _, e := range b.p.Events {
		said := ""
		switch x := e.Body.(type) {
		case record.Inspection:
			if x.Edges == "" && x.Adhesion == "" && x.Remarks == "" && x.By == "" {
				continue // a bow only, which has its own table
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
		default:
			continue
		}
		t.Rows = append(t.Rows, []string{b.Moment(e.At), upper(said), b.Entry(e.Seq)})
	}
	if t.Rows == nil {
		return nil
	}
	return []Item{t}
}
