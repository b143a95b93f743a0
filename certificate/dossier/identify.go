package dossier

import (
	"strconv"
	"strings"

	"backleaf/record"
)

// identification answers every category of Object ID: the photographs, the
// nine questions, the description, and the five further categories that many
// use (Introduction to Object ID, Getty 1999).
func (b *builder) identification() []Item {
	n := b.d.Names
	d := b.p.Description()
	ps := &pairs{b: b}
	object := d.Type
	if object == "" {
		object = string(n.BlankPanel)
		if b.Painted() {
			object = string(n.Painting)
		}
	}
	marks := d.Inscription
	if known(d.Signed) {
		marks = strings.TrimSpace(d.Inscription + "\n" + n.Signed.With("where", d.Signed))
	}
	own := b.Number()
	if known(d.Owner) {
		own = n.OwnReference.With("number", own, "own", d.Owner)
	}
	ps.add(n.Photographs, b.photographs())
	ps.add(n.Type, object)
	ps.add(n.Materials, b.MediumLine())
	ps.add(n.Measurements, b.Dimensions())
	ps.add(n.Inscriptions, marks)
	ps.add(n.Features, d.Features)
	ps.add(n.Title, b.Title())
	ps.add(n.Subject, d.Subject)
	ps.add(n.Date, b.DateOfWork())
	ps.add(n.Maker, b.Maker())
	ps.add(n.Description, b.BuildUpSentence())
	ps.add(n.Inventory, own)
	ps.add(n.Written, b.writtenMaterial())
	ps.add(n.Origin, b.MakerPlace())
	ps.add(n.CrossReferences, n.Batch.With("batch", string(b.p.Batch)))
	ps.add(n.Documented, b.documented())
	ps.some(n.Note, d.Note)
	return []Item{ps.list}
}

func (b *builder) photographs() string {
	var out []string
	for _, p := range record.Each[record.Photograph](b.p) {
		caption := ""
		if p.Body.Caption != "" {
			caption = ", " + p.Body.Caption
		}
		out = append(out, b.d.Names.Photograph.With("role", b.Word(string(p.Body.Role)), "width", strconv.FormatInt(p.Body.Width, 10), "height", strconv.FormatInt(p.Body.Height, 10),
			"caption", caption, "digest", p.Body.SHA256, "entry", b.Entry(p.Seq)))
	}
	if out == nil {
		return string(b.d.Names.NoPhotograph)
	}
	return strings.Join(out, "\n")
}

// writtenMaterial lists labels and certificates.
func (b *builder) writtenMaterial() string {
	var out []string
	for _, e := range b.p.Events {
		switch body := e.Body.(type) {
		case record.LabelPrinted:
			out = append(out, b.d.Names.LabelPrinted.With("date", b.Day(e.At), "entry", b.Entry(e.Seq)))
		case record.Issued:
			out = append(out, b.d.Names.CertificateIssued.With("date", b.Day(e.At), "entry", b.Entry(e.Seq)))
		case record.Revoked:
			out = append(out, b.d.Names.CertificateGone.With("of", b.Entry(body.Certificate), "date", b.Day(e.At), "entry", b.Entry(e.Seq)))
		}
	}
	return strings.Join(out, "\n")
}

// documented says when the first and the last entry on the panel were written.
func (b *builder) documented() string {
	var first, last record.When
	for _, e := range b.p.Events {
		if first.IsZero() || e.Written.Before(first) {
			first = e.Written
		}
		if last.IsZero() || last.Before(e.Written) {
			last = e.Written
		}
	}
	for _, c := range b.p.Corrections {
		if last.Before(c.Written) {
			last = c.Written
		}
	}
	if f, l := b.Day(first), b.Day(last); f != l {
		return b.c.Lines.Between.With("from", f, "to", l)
	}
	return b.Day(first)
}
