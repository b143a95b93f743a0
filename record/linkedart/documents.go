package linkedart

import (
	"crypto/sha1"
	"fmt"
	"strings"
	"time"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
)

// ContextURL is the published context of Linked Art.
const ContextURL = "https://linked.art/ns/v1/linked-art.json"

// Document is one JSON-LD document and the name of its file.
type Document struct {
	Name string
	JSON []byte
}

type node = map[string]any

// maker builds the documents of one panel.
type maker struct {
	w    *record.Workshop
	p    *record.Panel
	base string
	docs []Document
}

// Documents returns the documents of a panel: the panel itself first, then the
// board and every layer, front, back and edges, from the board outwards.
func Documents(w *record.Workshop, p *record.Panel) ([]Document, error) {
	m := &maker{w: w, p: p, base: objectID(w, p.Number)}
	m.add("panel", m.panel())
	m.add("board", m.board())
	for _, f := range record.Faces {
		for i, l := range p.BuildUp(f) {
			name := fmt.Sprintf("%s-%02d", f, i+1)
			m.add(name, m.layer(name, l))
		}
	}
	for i := range m.docs {
		v := jsontext.Value(m.docs[i].JSON)
		if err := v.Indent(jsontext.WithIndent("  ")); err != nil {
			return nil, fmt.Errorf("cannot write %s: %w", m.docs[i].Name, err)
		}
		m.docs[i].JSON = append(v, '\n')
	}
	return m.docs, nil
}

// objectID names a panel for good: its link where the studio has one, else a
// UUID of version 5 (RFC 9562) over its number and maker.
func objectID(w *record.Workshop, n record.Number) string {
	if w.Studio.LinkBase != "" {
		return w.Studio.LinkBase + n.Bare()
	}
	h := sha1.New()
	h.Write([]byte("\x6b\xa7\xb8\x11\x9d\xad\x11\xd1\x80\xb4\x00\xc0\x4f\xd4\x30\xc8")) // the URL name space
	fmt.Fprintf(h, "%s\n%s", n, w.Studio.Maker)
	u := h.Sum(nil)[:16]
	u[6], u[8] = u[6]&0x0f|0x50, u[8]&0x3f|0x80
	return fmt.Sprintf("urn:uuid:%x-%x-%x-%x-%x", u[:4], u[4:6], u[6:8], u[8:10], u[10:])
}

func (m *maker) add(name string, n node) {
	n["@context"] = ContextURL
	b, err := json.Marshal(n, json.Deterministic(true))
	if err != nil {
		panic("linkedart: a document is plain data: " + err.Error())
	}
	m.docs = append(m.docs, Document{name + ".json", b})
}

func (m *maker) panel() node {
	d := m.p.Description()
	names := []node{{"type": "Identifier", "content": string(m.p.Number), "classified_as": []node{ownNumber.node("Type")}}}
	label := "panel " + string(m.p.Number)
	if d.Title != "" {
		label = d.Title
		names = append(names, node{"type": "Name", "content": d.Title, "classified_as": []node{preferredName.node("Type")}})
	}
	n := node{"id": m.base, "type": "HumanMadeObject", "_label": label, "identified_by": names, "produced_by": m.production(m.workDate(d), paintingAct)}
	if d.Title != "" {
		n["classified_as"] = []node{painting.node("Type")}
	}
	if dims := m.dimensions(); len(dims) > 0 {
		n["dimension"] = dims
	}
	said := func(c concept, text string) {
		if text != "" {
			list, _ := n["referred_to_by"].([]node)
			n["referred_to_by"] = append(list, node{"type": "LinguisticObject", "content": text, "classified_as": []node{c.node("Type")}})
		}
	}
	said(sizeText, m.p.Size().String())
	said(materialText, d.Medium)
	said(signatureText, d.Signed)
	said(markText, d.Inscription)
	said(description, d.Subject)
	for _, c := range record.Each[record.Condition](m.p) {
		said(conditionText, c.Body.Text+" ("+c.Body.By+")")
	}
	var mods []node
	for _, t := range record.Each[record.Treatment](m.p) {
		mod := node{"type": "Modification", "_label": t.Body.Text,
			"referred_to_by": []node{{"type": "LinguisticObject", "content": strings.TrimSuffix(t.Body.Text+"; with "+t.Body.With, "; with ") + " (" + t.Body.By + ")"}}}
		if s := span(t.At); s != nil {
			mod["timespan"] = s
		}
		mods = append(mods, mod)
	}
	if mods != nil {
		n["modified_by"] = mods
	}
	return n
}

// workDate is the date of the work, else of the last layer.
func (m *maker) workDate(d record.Described) record.When {
	if d.Made.Known() {
		return d.Made
	}
	ls := m.p.Layers()
	if len(ls) > 0 {
		return ls[len(ls)-1].At
	}
	return record.When{}
}

func (m *maker) production(at record.When, technique concept) node {
	s := m.w.Studio
	n := node{"type": "Production", "carried_out_by": []node{{"type": "Person", "_label": s.Maker,
		"identified_by": []node{{"type": "Name", "content": s.Maker}}}}}
	if s.Place != "" {
		n["took_place_at"] = []node{{"type": "Place", "_label": s.Place}}
	}
	if technique.aat != "" {
		n["technique"] = []node{technique.node("Type")}
	}
	if t := span(at); t != nil {
		n["timespan"] = t
	}
	return n
}

// span gives the bounds of a date; nil when nothing is known.
func span(w record.When) node {
	from, ok := w.Earliest()
	to, ok2 := w.Latest()
	if !ok && !ok2 {
		return nil
	}
	n := node{"type": "TimeSpan", "identified_by": []node{{"type": "Name", "content": w.String()}}}
	if ok {
		n["begin_of_the_begin"] = from.UTC().Format(time.RFC3339)
	}
	if ok2 {
		n["end_of_the_end"] = to.UTC().Format(time.RFC3339)
	}
	return n
}

func (m *maker) dimensions() []node {
	var out []node
	size := m.p.Size()
	for _, d := range []struct {
		l record.Length
		c concept
	}{{size.Height, heightOf}, {size.Width, widthOf}, {size.Depth, depthOf}} {
		um, ok := d.l.Micrometers()
		if !ok {
			continue
		}
		// A fraction of an inch has no exact decimal here; the statement of
		// the dimensions keeps what was measured.
		value, unit := float64(um)/1000, units["mm"]
		switch d.l.Unit() {
		case "cm":
			value, unit = float64(um)/10000, units["cm"]
		case "in":
			value, unit = float64(um)/25400, units["in"]
		}
		out = append(out, node{"type": "Dimension", "value": value, "unit": unit.node("MeasurementUnit"), "classified_as": []node{d.c.node("Type")}})
	}
	return out
}

func (m *maker) part(name, label string) node {
	return node{"id": m.base + "#" + name, "type": "HumanMadeObject", "_label": label,
		"part_of": []node{{"id": m.base, "type": "HumanMadeObject"}}}
}

func (m *maker) board() node {
	c := m.p.Cut()
	mat, _ := m.w.Material(c.Board, c.BoardAs)
	n := m.part("board", "board")
	n["classified_as"] = []node{support.node("Type", partType)}
	if b, ok := boards[mat.Board.Kind]; ok {
		n["made_of"] = []node{b.node("Material")}
	}
	if mat.Name != "" {
		n["referred_to_by"] = []node{{"type": "LinguisticObject", "content": mat.Name, "classified_as": []node{materialText.node("Type")}}}
	}
	if cut, ok := record.Latest[record.Cut](m.p); ok {
		n["produced_by"] = m.production(cut.At, concept{})
	}
	return n
}

func (m *maker) layer(name string, l record.Layer) node {
	n := m.part(name, l.Name()+" on the "+string(l.Face))
	var kinds, of []node
	var words []string
	made := func(c concept, ok bool) {
		if ok {
			of = append(of, c.node("Material"))
		}
	}
	switch l.Face {
	case record.Front:
		kinds = append(kinds, frontOf.node("Type"))
	case record.Back:
		kinds = append(kinds, backOf.node("Type"))
	}
	switch {
	case l.Cloth != nil:
		mat, _ := m.w.Material(l.Cloth.Cloth, l.Cloth.ClothAs)
		c, ok := fibres[mat.Cloth.Fibre]
		made(c, ok)
		words = append(words, mat.Name)
	case l.Paint != nil:
		c, ok := media[l.Paint.Medium]
		made(c, ok)
		words = append(words, l.Paint.Technique)
		for _, p := range l.Paint.Pigments {
			words = append(words, strings.TrimSpace(p.Name+" "+p.Index))
		}
	case l.Varnish != nil:
		made(varnish, true)
		words = append(words, l.Varnish.Resin)
	case l.Purpose == record.Ground:
		made(ground, true)
	case l.Purpose == record.Sizing:
		made(sizeMaterial, true)
	}
	if l.Coating != nil {
		for _, part := range l.Coating.Mix {
			mat, _ := m.w.Material(part.Material, part.As)
			c, ok := binders[mat.Binder]
			made(c, ok)
			words = append(words, mat.Name)
		}
	}
	if kinds != nil {
		n["classified_as"] = kinds
	}
	if of != nil {
		n["made_of"] = of
	}
	if text := strings.Join(nonEmpty(words), "; "); text != "" {
		n["referred_to_by"] = []node{{"type": "LinguisticObject", "content": text, "classified_as": []node{materialText.node("Type")}}}
	}
	technique := concept{}
	if l.Paint != nil {
		technique = paintingAct
	}
	n["produced_by"] = m.production(l.At, technique)
	return n
}

func nonEmpty(ss []string) []string {
	var out []string
	for _, s := range ss {
		if s != "" {
			out = append(out, s)
		}
	}
	return out
}
