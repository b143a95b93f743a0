package dossier

import (
	"crypto/sha256"
	"fmt"
	"strings"

	"backleaf/certificate/photo"
	"backleaf/record"
	"backleaf/record/paper"
	"backleaf/record/tell"
)

// identification answers every category of Object ID: the photographs, the
// nine questions, the description, and the five further categories that many
// use (Introduction to Object ID, Getty 1999).
func (b *builder) identification() []Item {
	n := b.d
	d := b.p.Description()
	ps := &pairs{b: b}
	object := d.Type
	if object == "" {
		object = string(n.T("names-blank-panel"))
		if b.Painted() {
			object = string(n.T("names-painting"))
		}
	}
	marks := d.Inscription
	if known(d.Signed) {
		marks = strings.TrimSpace(d.Inscription + "\n" + n.T("names-signed").With("where", d.Signed))
	}
	own := b.Number()
	if known(d.Owner) {
		own = n.T("names-own-reference").With("number", own, "own", d.Owner)
	}
	ps.add(n.T("names-photographs"), b.photographs())
	ps.add(n.T("names-type"), object)
	ps.add(n.T("names-materials"), b.MediumLine())
	ps.add(n.T("names-measurements"), b.Dimensions())
	ps.add(n.T("names-inscriptions"), marks)
	ps.add(n.T("names-features"), d.Features)
	title := d.Title
	if known(title) {
		title = b.PrintTitle()
	}
	ps.add(n.T("names-title"), title)
	ps.add(n.T("names-subject"), d.Subject)
	ps.add(n.T("names-date"), b.DateOfWork())
	ps.add(n.T("names-maker"), b.Maker())
	ps.add(n.T("names-description"), b.BuildUpSentence())
	ps.add(n.T("names-inventory"), own)
	ps.add(n.T("names-written"), b.writtenMaterial())
	ps.add(n.T("names-origin"), b.MakerPlace())
	ps.add(n.T("names-cross-references"), n.T("names-batch").With("batch", string(b.p.Batch)))
	ps.add(n.T("names-documented"), b.documented())
	ps.others(d, "title", "made", "subject", "inscription", "signed", "distinguishing_features", "type_of_object", "medium_line", "own_reference")
	return []Item{ps.list}
}

func (b *builder) photographs() string {
	var out []string
	for _, p := range record.Each[record.Photograph](b.p) {
		more := []string{p.Body.Caption, b.c.OtherClauses(p.Body, "role", "media_type", "width_px", "height_px", "caption")}
		out = append(out, b.d.T("names-photograph").With("role", b.Word(p.Body.Role), "more", b.sentence(more...), "entry", b.Entry(p.Seq)))
	}
	if out == nil {
		return string(b.d.T("names-no-photograph"))
	}
	return strings.Join(out, "\n")
}

// pictures shows the photographs of some roles, of each role the last. One
// whose file is not at hand, or not the one on record, is named and not shown.
func (b *builder) pictures(which func(record.PhotoRole) bool, mostMM float64) []Item {
	if b.book.Photograph == nil {
		return nil
	}
	var out []Item
	last := map[record.PhotoRole]record.Done[record.Photograph]{}
	var roles []record.PhotoRole
	for _, p := range record.Each[record.Photograph](b.p) {
		if !which(p.Body.Role) {
			continue
		}
		if _, again := last[p.Body.Role]; !again {
			roles = append(roles, p.Body.Role)
		}
		last[p.Body.Role] = p
	}
	for _, role := range roles {
		p := last[role]
		words := b.d.T("figures-picture").With("role", b.Word(role), "entry", b.Entry(p.Seq))
		file, err := b.book.Photograph(p.Body)
		if err != nil {
			out = append(out, Text{Text: b.d.T("figures-no-picture").With("picture", words), Small: true})
			continue
		}
		img, err := photo.Print(file, 1400, 1400)
		if err != nil || fmt.Sprintf("%x", sha256.Sum256(file)) != p.Body.SHA256 {
			out = append(out, Text{Text: b.d.T("figures-other-picture").With("picture", words), Strong: true})
			continue
		}
		out = append(out, b.figure(tell.Message(words), func(width, height float64) ([]paper.Drawing, error) {
			size := img.Bounds()
			w := min(width, min(mostMM, height)*float64(size.Dx())/float64(size.Dy()))
			h := w * float64(size.Dy()) / float64(size.Dx())
			return []paper.Drawing{{WidthMM: w, HeightMM: h, Title: words, Desc: p.Body.Caption, Shapes: []paper.Shape{paper.Picture{W: w, H: h, Image: img, Title: words}}}}, nil
		}))
	}
	return out
}

// writtenMaterial lists labels and certificates; their history has its own part.
func (b *builder) writtenMaterial() string {
	var rows []joined
	add := func(e record.Event, said string) {
		rows = append(rows, joined{at: []record.When{e.At}, seqs: []int64{e.Seq}, cells: []string{said}})
	}
	for _, e := range b.p.Events {
		day, w := b.Day(e.At), b.d
		switch body := e.Body.(type) {
		case record.LabelPrinted:
			add(e, w.T("names-label-printed").With("date", day, "entry", "{entry}"))
		case record.Issued:
			add(e, w.T("names-certificate-issued").With("date", day, "entry", "{entry}"))
		case record.Revoked:
			add(e, w.T("names-certificate-gone").With("of", b.Entry(body.Certificate), "date", day, "entry", "{entry}"))
		}
	}
	var out []string
	for _, r := range join(rows) {
		out = append(out, tell.Message(r.cells[0]).With("entry", b.entries(r.seqs)))
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
	return b.c.Span(first, last)
}
