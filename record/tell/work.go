package tell

import "backleaf/record"

// Unique reports that there is no other work like this one.
func (t *Teller) Unique() bool { return t.p.Description().Edition == "" }

// Edition says whether there are others like the work, as far as that is
// known, and whether it is framed. That it is unique may be said elsewhere.
func (t *Teller) Edition(elsewhere bool) string {
	w, d := t.c.Certificate, t.p.Description()
	line := ""
	switch {
	case d.Edition == "" && !elsewhere:
		line = string(w.T("unique"))
	case d.Edition != "" && d.Edition != record.Unknown:
		line = w.T("edition").With("text", d.Edition)
	}
	switch d.Framed {
	case record.Yes:
		line = w.T("framed").With("line", line)
	case record.No:
		line = w.T("unframed").With("line", line)
	}
	return t.c.Capital(line)
}

// Credit says who took a photograph and when; nothing if neither is on record.
func (t *Teller) Credit(p record.Photograph) string {
	who, when := p.Credit, ""
	if who == record.Unknown {
		who = ""
	}
	if p.Taken.Known() {
		when = t.Day(p.Taken)
	}
	if who == "" && when == "" {
		return ""
	}
	return t.c.Fill(t.c.Certificate.T("credit"), record.With("who", who), Told("when", when))
}
