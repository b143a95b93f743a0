package tell

import "backleaf/record"

// Edition says whether there are others like the work, and whether it is
// framed; nothing where it is not known whether there are others.
func (t *Teller) Edition() string {
	w, d := t.c.Certificate, t.p.Description()
	line := string(w.Unique)
	switch d.Edition {
	case "":
	case record.Unknown:
		return ""
	default:
		line = w.Edition.With("text", d.Edition)
	}
	switch d.Framed {
	case record.Yes:
		return w.Framed.With("line", line)
	case record.No:
		return w.Unframed.With("line", line)
	}
	return line
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
	return t.c.Fill(t.c.Certificate.Credit, record.With("who", who), Told("when", when))
}
