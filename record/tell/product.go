package tell

import (
	"backleaf/record"
	"slices"
)

// Pigments lists the pigments of the paint, each once; nothing if none is recorded.
func (t *Teller) Pigments() string {
	var out []string
	missing := false
	for _, l := range t.p.BuildUp(record.Front) {
		if l.Paint == nil {
			continue
		}
		missing = missing || len(l.Paint.Pigments) == 0
		for _, p := range l.Paint.Pigments {
			name := p.Name
			if p.Index != "" && p.Index != record.Unknown {
				name = t.c.Join.Bracket.With("text", name, "aside", p.Index)
			}
			if !slices.Contains(out, name) {
				out = append(out, name)
			}
		}
	}
	if out != nil && missing {
		return t.c.Clauses([]string{t.List(out), string(t.c.Lines.T("other-coats"))})
	}
	return t.List(out)
}

// Product names a material as an act meant it, as on its tin, with the lot by
// its producer's number where that is known.
func (t *Teller) Product(material record.Key, as []int64, lot record.Key) string {
	name := string(material)
	if m, ok := t.w.Material(material, as); ok {
		name = m.Name
	}
	if l, ok := t.w.Lot(lot); ok && l.MakerLot != "" && l.MakerLot != record.Unknown {
		lot = record.Key(l.MakerLot)
	}
	return t.say("product-of-lot", record.With("product", name), record.With("lot", lot))
}

// Question names what can be asked of a panel.
func (c *Catalogue) Question(q record.Code) string { return c.own("Question", string(q)) }

// Asked repeats a question on a topic.
func (c *Catalogue) Asked(q record.Code) string { return c.Words["Question"][string(q)].Forms["asked"] }

// Mix names what a coating was made of and how far it was thinned.
func (t *Teller) Mix(c *record.Coating) string {
	if len(c.Mix) == 0 {
		return t.say("product-not-recorded")
	}
	var parts []string
	for _, p := range c.Mix {
		parts = append(parts, t.say("part-of-mix", record.With("of", len(c.Mix)), record.With("parts", p.Parts), Told("product", t.Product(p.Material, p.As, p.Lot))))
	}
	return t.say("mix", Told("parts", t.List(parts)), record.With("thinned", c.Thinned), Told("thinner", t.c.beside(record.With("", c.Thinner), record.With("", c.ThinnerIs))))
}
