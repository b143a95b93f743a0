package dossier

import (
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/paper"
	"backleaf/record/section"
	"backleaf/record/tell"
)

func isGround(l record.Layer) bool {
	return l.Cloth == nil && l.Paint == nil && l.Varnish == nil && l.Purpose == record.Ground
}

// isSealing takes every coat that has no section of its own, so that none is
// lost: size, sealer, adhesive, stain block, barrier, and what has no purpose.
func isSealing(l record.Layer) bool {
	return l.Cloth == nil && l.Paint == nil && l.Varnish == nil && l.Purpose != record.Ground && l.Purpose != record.Isolation
}

func isCoating(l record.Layer) bool { return l.Varnish != nil || l.Purpose == record.Isolation }

// Shares of the width, the same in all tables of layers.
const (
	layerShare   = 2.4
	dateShare    = 1.8
	entryShare   = 0.9
	betweenShare = 1.4 + 2.7 + 2.1 + 2
)

// layers is a table of the layers of one kind, one row for each application
// with all the faces it was laid on.
func (b *builder) layers(which func(record.Layer) bool) []Item {
	c := b.d
	t := Table{Columns: []Column{{string(c.T("columns-layer")), layerShare}, {string(c.T("columns-faces")), 1.4}, {string(c.T("columns-product")), 2.7}, {string(c.T("columns-amount")), 2.1}, {string(c.T("columns-thickness")), 2}, {string(c.T("columns-date")), dateShare}, {string(c.T("columns-entry")), entryShare}}}
	estimate := false
	var done []int64
	var rows []joined
	for _, l := range b.p.Layers() {
		if !which(l) || slices.Contains(done, l.Seq) {
			continue
		}
		done = append(done, l.Seq)
		faces, extra := b.facesOf(l)
		on := b.Faces(faces)
		if extra != nil {
			on = b.sentence(on, b.d.T("layers-extra").With("faces", b.Faces(extra)))
		}
		thick, guess := b.thickness(l, faces)
		estimate = estimate || guess
		rows = append(rows, joined{at: []record.When{l.At}, seqs: []int64{l.Seq}, cells: []string{b.Layer(l), on, b.mix(l.Coating), b.amount(l), thick}})
	}
	for _, r := range join(rows) {
		cells := slices.Clone(r.cells)
		if n := len(r.seqs); n > 1 {
			cells[0] = b.c.Fill(b.c.Lines.T("coats"), record.With("n", n), tell.Told("layer", cells[0]))
			for _, i := range []int{3, 4} {
				if cells[i] != b.Said("") {
					cells[i] = b.d.T("layers-each").With("what", cells[i])
				}
			}
		}
		t.Rows = append(t.Rows, append(cells, b.when(r), b.entries(r.seqs)))
	}
	if t.Rows == nil {
		return nil
	}
	out := []Item{t}
	if estimate && !b.noted {
		b.noted = true // once is enough
		out = append(out, Text{Text: string(b.d.T("layers-estimate-note")), Small: true})
	}
	return out
}

// facesOf returns the faces of the application that a layer is of.
func (b *builder) facesOf(l record.Layer) (faces, extra []record.Face) {
	for _, o := range b.p.Layers() {
		if o.Seq != l.Seq || (o.Cloth == nil) != (l.Cloth == nil) {
			continue
		}
		faces = append(faces, o.Face)
		if o.Extra {
			extra = append(extra, o.Face)
		}
	}
	return faces, extra
}

func (b *builder) amount(l record.Layer) string {
	panels := 1
	for _, e := range b.p.Events {
		if e.Seq == l.Seq {
			panels = len(e.Panels)
		}
	}
	return b.Amount(l.Coating, panels)
}

// thickness says the dry thickness of an application, face by face where they
// differ, and whether any of it is an estimate.
func (b *builder) thickness(l record.Layer, faces []record.Face) (text string, estimate bool) {
	var said []string
	on := map[string][]record.Face{}
	for _, f := range faces {
		one := l
		one.Face = f
		um, how := b.Thickness(one)
		s := b.Said("")
		switch how {
		case section.Measured:
			s = b.d.T("layers-measured").With("t", section.Thickness(um))
		case section.Estimated:
			s, estimate = b.d.T("layers-estimated").With("t", section.Thickness(um)), true
		}
		if on[s] == nil {
			said = append(said, s)
		}
		on[s] = append(on[s], f)
	}
	if len(said) > 1 {
		for i, s := range said {
			said[i] = b.d.T("layers-on-face").With("faces", b.Faces(on[s]), "t", s)
		}
	}
	return b.sentence(said...), estimate
}

// mix says what a coating was made of, how it was thinned and laid.
func (b *builder) mix(c *record.Coating) string {
	if c == nil {
		return ""
	}
	w := b.d
	var parts []string
	for _, p := range c.Mix {
		name := b.Said(b.productName(p.Material, p.As))
		if known(string(p.Lot)) {
			name = w.T("layers-lot-of").With("product", name, "lot", held(b.lotName(p.Lot)))
		}
		if len(c.Mix) > 1 {
			name = b.c.Fill(w.T("layers-parts"), record.With("n", p.Parts), tell.Told("product", name))
		}
		parts = append(parts, name)
	}
	said := b.Said("")
	if parts != nil {
		said = b.List(parts)
	}
	thinned := ""
	if !c.Thinned.IsZero() {
		thinned = w.T("layers-thinned").With("share", b.Quantity(c.Thinned))
		if c.Thinner != "" || c.ThinnerIs != "" {
			thinned = w.T("layers-thinned-with").With("share", b.Quantity(c.Thinned), "thinner", b.c.Beside(c.Thinner, c.ThinnerIs))
		}
	}
	return b.sentence(said, thinned, with(w.T("layers-tool"), "tool", b.tool(c.Tool, c.ToolIs)), filmBy(b, c), c.Note)
}

// held keeps a short name on one line.
func held(name string) string {
	if len(name) > 14 {
		return name
	}
	return paper.Held(name)
}

// tool names a tool, or nothing where none is recorded.
func (b *builder) tool(text string, word record.Tool) string {
	if text == "" && word == "" {
		return ""
	}
	return b.c.Beside(text, word)
}

func filmBy(b *builder, c *record.Coating) string {
	if !has(c.WetFilm) {
		return ""
	}
	return b.d.T("layers-wet-film").With("film", b.Quantity(c.WetFilm))
}

// with fills a message, or says nothing if there is no value.
func with(m tell.Message, name, value string) string {
	if value == "" {
		return ""
	}
	return m.With(name, value)
}

// paint is a table of the paint layers with what was recorded of each; columns
// in which nothing would stand are left out.
func (b *builder) paint() []Item {
	n, w, c := b.d, b.d, b.d
	heads := []Column{{string(c.T("columns-layer")), layerShare}, {string(n.T("names-pigments")), 3}, {string(n.T("names-technique")), 3}, {string(n.T("names-underdrawing")), 1.6}, {string(c.T("columns-product")), 2.4}, {string(c.T("columns-amount")), 1.7}, {string(c.T("columns-thickness")), 1.7}}
	always := 3
	used := make([]bool, len(heads))
	var rows []joined
	for i, e := range record.Each[record.PaintLayer](b.p) {
		l, faces := b.paintOf(e.Seq), e.Body.Faces
		on := ""
		if len(faces) > 0 && !slices.Equal(faces, []record.Face{record.Front}) {
			on = b.Faces(faces)
		}
		oil := look(w.T("layers-leaner"), w.T("layers-fatter"), w.T("layers-same"), string(e.Body.Oil))
		if i == 0 {
			// A ground is no paint to be leaner than, nor as fat as.
			oil = look(w.T("layers-lean"), w.T("layers-fat"), "", string(e.Body.Oil))
		}
		thick, _ := b.thickness(l, []record.Face{l.Face})
		cells := []string{b.sentence(b.Layer(l), on), b.pigments(e.Body.Pigments), b.sentence(e.Body.Technique, oil, look2(w.T("layers-thin"), w.T("layers-thick"), string(e.Body.Film)), wordOf(b, e.Body.Gloss)),
			e.Body.Underdrawing, b.mix(l.Coating), b.amount(l), thick}
		for k, text := range cells {
			said := text != "" && text != b.Said("")
			used[k] = used[k] || said || k < always
			if !said {
				cells[k] = b.Said("")
			}
		}
		rows = append(rows, joined{at: []record.When{e.At}, seqs: []int64{e.Seq}, cells: cells})
	}
	if rows == nil {
		return nil
	}
	t := Table{}
	between := 0.0
	for k, h := range heads {
		if used[k] {
			t.Columns = append(t.Columns, h)
			between += h.Share
		}
	}
	for k := range t.Columns[1:] { // first and last columns stand where they do for other layers
		t.Columns[1+k].Share *= betweenShare / (between - layerShare)
	}
	t.Columns = append(t.Columns, Column{string(c.T("columns-date")), dateShare}, Column{string(c.T("columns-entry")), entryShare})
	for _, r := range join(rows) {
		var row []string
		for k, text := range r.cells {
			if used[k] {
				row = append(row, text)
			}
		}
		t.Rows = append(t.Rows, append(row, b.when(r), b.entries(r.seqs)))
	}
	out := []Item{t}
	if names := b.unused(heads, used); names != "" {
		out = append(out, Text{Text: w.T("layers-none-of").With("what", names), Small: true})
	}
	return out
}

// paintOf finds the paint that an entry laid.
func (b *builder) paintOf(seq int64) record.Layer {
	layers := b.p.Layers()
	return layers[slices.IndexFunc(layers, func(l record.Layer) bool { return l.Seq == seq && l.Paint != nil })]
}

// unused names the columns that were left out.
func (b *builder) unused(heads []Column, used []bool) string {
	var names []string
	for k, h := range heads {
		if !used[k] {
			names = append(names, strings.ToLower(h.Head[:1])+h.Head[1:])
		}
	}
	return b.List(names)
}

func (b *builder) pigments(ps []record.Pigment) string {
	var out []string
	for _, p := range ps {
		name := p.Name
		if known(p.Index) {
			name = b.d.T("layers-index").With("name", p.Name, "index", paper.Held(p.Index))
		}
		out = append(out, name)
	}
	return b.List(out)
}

func look(lean, fat, same tell.Message, word string) string {
	return string(map[string]tell.Message{"lean": lean, "fat": fat, "same": same}[word])
}

func look2(thin, thick tell.Message, word string) string {
	return string(map[string]tell.Message{"thin": thin, "thick": thick}[word])
}

func (b *builder) coating() []Item {
	out := b.layers(isCoating)
	return append(out, Text{Text: b.VarnishLine() + ".", Small: out != nil})
}
