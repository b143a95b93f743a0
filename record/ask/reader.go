package ask

import (
	"fmt"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/section"
	"backleaf/record/tell"
)

// reader answers topics from one panel.
type reader struct {
	*tell.Teller
	w *record.Workshop
	p *record.Panel
}

// none is the honest answer to what nobody wrote down.
func none(entries ...int64) Answer { return Answer{Lines: []string{"not recorded"}, Entries: entries} }

func recorded(entries []int64, lines ...string) Answer {
	var said []string
	for _, l := range lines {
		if l != "" {
			said = append(said, l)
		}
	}
	return Answer{Lines: said, Entries: entries, Recorded: true}
}

// said answers with a recorded text, which may be "unknown" or absent.
func (r *reader) said(text string, entries ...int64) Answer {
	switch text {
	case "":
		return none(entries...)
	case record.Unknown:
		return recorded(entries, "recorded as unknown")
	}
	return recorded(entries, text)
}

func known(s string) bool { return s != "" && s != record.Unknown }

// few joins texts for one line; what would make it long is counted.
func few(texts []string) string {
	const most = 4
	if len(texts) > most {
		return strings.Join(texts[:most], "; ") + fmt.Sprintf("; and %d more", len(texts)-most)
	}
	return strings.Join(texts, "; ")
}

// application is a layer with all the faces it went on at once.
type application struct {
	record.Layer
	faces []record.Face
}

func (r *reader) applications(which func(record.Layer) bool) []application {
	var out []application
	for _, l := range r.p.Layers() {
		if !which(l) {
			continue
		}
		i := slices.IndexFunc(out, func(a application) bool { return a.Seq == l.Seq && (a.Cloth == nil) == (l.Cloth == nil) })
		if i < 0 {
			out = append(out, application{Layer: l})
			i = len(out) - 1
		}
		out[i].faces = append(out[i].faces, l.Face)
	}
	return out
}

func seqs(as []application) []int64 {
	var out []int64
	for _, a := range as {
		out = append(out, a.Seq)
	}
	return out
}

// layersOf answers with the layers of one kind: what, where and when, then of
// which products and lots.
func layersOf(which func(record.Layer) bool) func(*reader) Answer {
	return func(r *reader) Answer {
		as := r.applications(which)
		if len(as) == 0 {
			return none()
		}
		var what, of []string
		for _, a := range as {
			what = append(what, r.Layer(a.Layer)+", "+r.Faces(a.faces)+", "+r.Day(a.At))
			if m := r.mix(a.Coating); !slices.Contains(of, m) {
				of = append(of, m)
			}
		}
		return recorded(seqs(as), few(what), few(of))
	}
}

// mix names what a coating was made of.
func (r *reader) mix(c *record.Coating) string {
	if c == nil {
		return ""
	}
	if len(c.Mix) == 0 {
		return "product not recorded"
	}
	var parts []string
	for _, p := range c.Mix {
		s := r.productLot(p.Material, p.As, p.Lot)
		if len(c.Mix) > 1 {
			s = fmt.Sprintf("%d parts %s", p.Parts, s)
		}
		parts = append(parts, s)
	}
	s := strings.Join(parts, " + ")
	if known(c.Thinned.String()) {
		s += ", thinned " + r.Quantity(c.Thinned)
	}
	return s
}

func (r *reader) productLot(k record.Key, as []int64, lot record.Key) string {
	s := r.Said(string(k))
	if m, ok := r.w.Material(k, as); ok {
		s = m.Name
	}
	if l, ok := r.w.Lot(lot); ok && known(l.MakerLot) {
		return s + ", lot " + l.MakerLot
	}
	if known(string(lot)) {
		return s + ", lot " + string(lot)
	}
	return s + ", lot not recorded"
}

// face answers what is on one face.
func face(f record.Face) func(*reader) Answer {
	return func(r *reader) Answer {
		as := r.applications(func(l record.Layer) bool { return l.Face == f })
		name := r.Faces([]record.Face{f})
		be := "is"
		if f == record.Edges {
			be = "are"
		}
		if len(as) == 0 {
			return Answer{Lines: []string{"not recorded: no coat on the " + name + " was written down"}}
		}
		sealed := slices.ContainsFunc(as, func(a application) bool { return r.w.Seals(a.Layer) })
		line := "whether the " + name + " " + be + " sealed is not recorded"
		if sealed {
			line = "the " + name + " " + be + " sealed"
		}
		return recorded(seqs(as), line, "from the board outwards: "+strings.Join(r.On(f), "; "))
	}
}

func (r *reader) sealed() Answer {
	as := r.applications(r.w.Seals)
	a := recorded(seqs(as), r.SealedFaces())
	a.Recorded = len(as) > 0
	return a
}

func (r *reader) films() Answer {
	var out []string
	var es []int64
	for _, a := range r.applications(func(l record.Layer) bool { return l.Cloth == nil }) {
		um, how := r.Thickness(a.Layer)
		said := r.Layer(a.Layer) + ": not recorded"
		switch how {
		case section.Measured:
			said = r.Layer(a.Layer) + ": " + section.Thickness(um) + ", measured"
		case section.Estimated:
			said = r.Layer(a.Layer) + ": " + section.Thickness(um) + ", estimate"
		}
		out, es = append(out, said), append(es, a.Seq)
	}
	if out == nil {
		return none()
	}
	return recorded(es, few(out), "estimates are reckoned from the amount used: upper bounds")
}

// cut is how the panel began, with its entry.
func (r *reader) cut() (record.Cut, int64) {
	c, _ := record.Latest[record.Cut](r.p)
	return c.Body, c.Seq
}

func (r *reader) material() record.Material {
	c, _ := r.cut()
	m, _ := r.w.Material(c.Board, c.BoardAs)
	return m
}
