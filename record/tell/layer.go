package tell

import (
	"slices"
	"strings"

	"backleaf/record"
)

// Layer names one layer: "acrylic dispersion ground", "linen, plain weave,
// 18 × 18 threads/cm", "oil paint"; with what was taken off it later: "oil paint
// (taken off in part, 2030)".
func (t *Teller) Layer(l record.Layer) string { return t.withLosses(l, t.layer(l)) }

func (t *Teller) withLosses(l record.Layer, name string) string {
	if len(l.Losses) == 0 {
		return name
	}
	var lost []string
	for _, x := range l.Losses {
		if said := t.say("layer-lost", record.With("extent", x.Extent), record.With("date", x.At)); !slices.Contains(lost, said) {
			lost = append(lost, said)
		}
	}
	return t.c.Join.Bracket.With("text", name, "aside", t.c.Clauses(lost))
}

func (t *Teller) layer(l record.Layer) string {
	lines := t.c.Lines
	switch {
	case l.Cloth != nil:
		return t.list(t.woven(l.Cloth), t.threads(l.Cloth))
	case l.Paint != nil:
		if t.c.Knows(l.Paint.Medium) {
			return t.c.Fill(lines.T("paint-layer"), record.With("medium", l.Paint.Medium))
		}
		return string(lines.T("paint"))
	case l.Varnish != nil:
		return t.varnish(l)
	}
	name := string(lines.T("coat"))
	if t.c.Knows(l.Purpose) {
		name = t.c.Word(l.Purpose)
	}
	if binder := t.Binder(l.Coating); binder != "" {
		return lines.T("binder-layer").With("binder", binder, "layer", name)
	}
	return name
}

func (t *Teller) varnish(l record.Layer) string {
	resin := t.c.beside(record.With("", l.Varnish.Resin), record.With("", l.Varnish.ResinIs))
	if resin == "" {
		resin = t.Binder(l.Coating)
	}
	if resin == "" {
		return string(t.c.Lines.T("varnish"))
	}
	return t.c.Lines.T("varnish-layer").With("resin", resin)
}

// Binder returns the binders of what a coating was mixed of, or nothing if one
// of them is not recorded.
func (t *Teller) Binder(c *record.Coating) string {
	if c == nil {
		return ""
	}
	var names []string
	for _, part := range c.Mix {
		m, _ := t.w.Material(part.Material, part.As)
		if !t.c.Knows(m.Binder) {
			return ""
		}
		if word := t.c.Word(m.Binder); !slices.Contains(names, word) {
			names = append(names, word)
		}
	}
	return t.List(names)
}

// cloth names a cloth by its fibre.
func (t *Teller) cloth(c *record.ClothLaid) string {
	m, _ := t.w.Material(c.Cloth, c.ClothAs)
	if t.c.Knows(m.Cloth.Fibre) {
		return t.c.Word(m.Cloth.Fibre)
	}
	return string(t.c.Lines.T("cloth"))
}

// woven names it by fibre and weave.
func (t *Teller) woven(c *record.ClothLaid) string {
	m, _ := t.w.Material(c.Cloth, c.ClothAs)
	if t.c.Knows(m.Cloth.Weave) {
		return t.list(t.cloth(c), t.c.Word(m.Cloth.Weave))
	}
	return t.cloth(c)
}

// threads counts the threads of a cloth both ways, if they are known of it.
func (t *Teller) threads(c *record.ClothLaid) string {
	m, _ := t.w.Material(c.Cloth, c.ClothAs)
	warp, weft := m.Cloth.Warp, m.Cloth.Weft
	if typical(m) || !known(warp) || !known(weft) {
		return ""
	}
	n := t.c.Number.Number(warp.Number())
	if warp.Unit() != weft.Unit() {
		n = t.Quantity(warp)
	}
	return t.c.Lines.T("threads").With("warp", n, "weft", t.Quantity(weft))
}

// list joins two texts, of which the second may be missing.
func (t *Teller) list(a, b string) string {
	if b == "" {
		return a
	}
	return t.c.Join.List.With("a", a, "b", b)
}

// typical reports that the values of a material are no one's data sheet; they
// are never printed as facts of a panel.
func typical(m record.Material) bool { return m.BasisIs == "typical" }

func known(q Quantity) bool { return !q.IsZero() && !q.IsUnknown() }

// Board names the board: "birch plywood".
func (t *Teller) Board() string {
	m, ok := t.w.Material(t.p.Cut().Board, t.p.Cut().BoardAs)
	if !ok || !t.c.Knows(m.Board.Kind) {
		return string(t.c.Lines.T("board"))
	}
	if s := t.c.beside(record.With("", m.Board.Species), record.With("", m.Board.Wood)); s != "" {
		return Message(t.c.WordIn("of", m.Board.Kind)).With("species", s)
	}
	return t.c.Word(m.Board.Kind)
}

// boardLine is the board with its thickness, if that was measured.
func (t *Teller) boardLine() string {
	if d := t.p.Size().Depth; known(d) {
		return t.c.Join.List.With("a", t.Board(), "b", t.Quantity(d))
	}
	return t.Board()
}

// A run is the same kind of layer several times over.
type run struct {
	words string
	extra bool
	n     int
}

// runs returns the layers of a face from the board outwards, equal neighbours
// counted. A face given more of a coat says so.
func (t *Teller) runs(f record.Face) []string {
	var rs []run
	for _, l := range t.p.BuildUp(f) {
		r := run{t.Layer(l), l.Extra, 1}
		if last := len(rs) - 1; last >= 0 && rs[last].words == r.words && l.Cloth == nil {
			rs[last].n++
			rs[last].extra = rs[last].extra || r.extra
			continue
		}
		rs = append(rs, r)
	}
	var out []string
	for _, r := range rs {
		s := t.c.Fill(t.c.Lines.T("coats"), record.With("n", r.n), Told("layer", r.words))
		if r.extra {
			s = t.c.Lines.T("more").With("layer", s)
		}
		out = append(out, s)
	}
	return out
}

// On returns the layers of one face from the board outwards in words, equal
// neighbours counted.
func (t *Teller) On(f record.Face) []string { return t.runs(f) }

// BuildUp returns the build-up from front to back in short lines, then the
// edges. Equal coats that follow each other are one line.
func (t *Teller) BuildUp() []string {
	var out []string
	front := t.runs(record.Front)
	slices.Reverse(front)
	out = append(out, front...)
	out = append(out, t.boardLine())
	for _, s := range t.runs(record.Back) {
		out = append(out, t.c.Lines.T("back-line").With("layer", s))
	}
	for _, s := range t.runs(record.Edges) {
		out = append(out, t.c.Lines.T("edges-line").With("layer", s))
	}
	for i := range out {
		out[i] = t.c.Capital(out[i])
	}
	return out
}

// BuildUpShort names the binders below the paint, for places without room for
// more; where none is known it counts the layers.
func (t *Teller) BuildUpShort() string {
	var binders []string
	for _, l := range slices.Backward(t.p.Layers()) {
		if l.Paint != nil || l.Varnish != nil {
			continue
		}
		if b := t.Binder(l.Coating); b != "" && !slices.Contains(binders, b) {
			binders = append(binders, b)
		}
	}
	if binders == nil {
		return t.c.Fill(t.c.Label.T("short"), record.With("n", len(t.p.Layers())))
	}
	return t.c.Label.T("prepared").With("binders", t.List(binders))
}

// BuildUpSentence tells the same in running words, from the board outwards.
func (t *Teller) BuildUpSentence() string {
	join := t.c.Clauses
	front := join(t.runs(record.Front))
	if front == "" {
		front = string(t.c.Lines.Nothing[t.w.State(t.p, record.Front)])
	}
	s := []string{t.c.Lines.T("build-up").With("board", t.c.Capital(t.boardLine()), "front", front)}
	if back := t.runs(record.Back); back != nil {
		s = append(s, t.c.Lines.T("build-up-back").With("back", join(back)))
	}
	if edges := t.runs(record.Edges); edges != nil {
		s = append(s, t.c.Lines.T("build-up-edges").With("edges", join(edges)))
	}
	return strings.Join(s, " ")
}

// SupportLine names the support as a cataloguer does: "linen laid on birch
// plywood".
func (t *Teller) SupportLine() string {
	for _, l := range t.p.BuildUp(record.Front) {
		if l.Cloth != nil {
			return t.c.Lines.T("laid-on").With("cloth", t.cloth(l.Cloth), "board", t.Board())
		}
	}
	return t.Board()
}

// MediumLine names medium and support as a cataloguer does, in the maker's own
// words if there are any: "oil on linen laid on birch plywood". For a blank
// panel it is the support.
func (t *Teller) MediumLine() string {
	if m := t.p.Description().Medium; m != "" && m != record.Unknown {
		return m
	}
	var media []string
	painted := false
	for _, l := range t.p.BuildUp(record.Front) {
		if l.Paint == nil {
			continue
		}
		painted = true
		if m := t.c.Word(l.Paint.Medium); t.c.Knows(l.Paint.Medium) && !slices.Contains(media, m) {
			media = append(media, m)
		}
	}
	switch {
	case media != nil:
		return t.c.Lines.T("on").With("medium", t.List(media), "support", t.SupportLine())
	case painted:
		return t.c.Lines.T("no-medium").With("support", t.SupportLine())
	}
	return t.SupportLine()
}

// SealedFaces says of each face what is known of it: sealed, left bare, nothing
// laid, or not recorded. A ground alone seals nothing.
func (t *Teller) SealedFaces() string {
	states := map[record.FaceState][]record.Face{}
	for _, f := range record.Faces {
		s := t.w.State(t.p, f)
		states[s] = append(states[s], f)
	}
	var parts []string
	for _, s := range []record.FaceState{record.FaceSealed, record.FaceBare, record.FaceCoated, record.FaceNothing, record.FaceUnknown} {
		if fs := states[s]; fs != nil {
			parts = append(parts, t.c.Lines.Faces[s].With("faces", t.Faces(fs)))
		}
	}
	return t.c.Capital(t.c.Clauses(parts))
}

// VarnishLine says the last varnish and whether it can be removed, and with
// what. What only the product is said to be is marked as that.
func (t *Teller) VarnishLine() string {
	var last *record.Layer
	for _, l := range t.p.BuildUp(record.Front) {
		if l.Varnish != nil {
			last = &l
		}
	}
	if last == nil {
		for _, l := range slices.Backward(t.p.Layers()) {
			switch {
			case l.Varnish != nil && l.Stands():
				return t.c.Capital(t.Layer(l))
			case l.Varnish != nil:
				return t.c.Capital(t.c.Lines.T("varnish-gone").With("varnish", t.Layer(l)))
			}
		}
		return t.c.Capital(string(t.c.Lines.T("no-varnish")))
	}
	name := t.Layer(*last)
	if t.c.Knows(last.Varnish.Gloss) {
		name = t.c.Join.List.With("a", name, "b", t.c.Word(last.Varnish.Gloss))
	}
	v := last.Varnish
	if v.Removable != "" {
		return t.c.Capital(t.removable(name, v.Removable, t.remover(v.RemovedWith, v.RemoverIs)))
	}
	for _, part := range last.Coating.Mix {
		m, ok := t.w.Material(part.Material, part.As)
		if !ok || m.Removable == "" {
			continue
		}
		with := t.remover(v.RemovedWith, v.RemoverIs)
		if with == "" {
			with = t.remover(m.RemovedWith, m.RemoverIs)
		}
		return t.c.Capital(t.AsProduct(t.removable(name, m.Removable, with), m))
	}
	return t.c.Capital(t.removable(name, "", ""))
}

// AsProduct marks what is not known of the panel but stated for a product, or
// for no more than the kind of product.
func (t *Teller) AsProduct(line string, m record.Material) string {
	switch {
	case m.Basis == "":
		return t.c.Lines.T("as-product-unstated").With("line", line)
	case typical(m):
		return t.c.Lines.T("as-typical").With("line", line)
	}
	return t.c.Lines.T("as-product").With("line", line, "basis", m.Basis)
}

// remover names what takes a varnish off; "" where that is not known.
func (t *Teller) remover(text string, word record.Solvent) string {
	return t.c.beside(record.With("", text), record.With("", word))
}

func (t *Teller) removable(varnish string, answer record.Answer, with string) string {
	l := t.c.Lines
	switch {
	case answer == record.Yes && with != "":
		return l.T("removable-with").With("varnish", varnish, "solvent", with)
	case answer == record.Yes:
		return l.T("removable").With("varnish", varnish)
	case answer == record.No:
		return l.T("not-removable").With("varnish", varnish)
	case answer == record.Unknown:
		return l.T("removable-unknown").With("varnish", varnish)
	}
	return l.T("removable-not-recorded").With("varnish", varnish)
}
