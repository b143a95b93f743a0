package dossier

import (
	"slices"

	"backleaf/record"
)

func (b *builder) products() []Item {
	c, w := b.d, b.d
	t := Table{Columns: []Column{{string(c.T("columns-use")), 3}, {string(c.T("columns-binder")), 1.8}, {string(c.T("columns-lots")), 3.2}, {string(c.T("columns-basis")), 2}}}
	var stated []Item
	for _, u := range b.p.Used() {
		m, ok := b.w.Material(u.Material, u.As)
		if !ok {
			t.Rows = append(t.Rows, []string{string(u.Material), b.Said(""), b.Said(""), b.Said("")})
			continue
		}
		name := m.Name
		if m.Maker != "" {
			name += ", " + m.Maker
		}
		binder := b.Said("")
		switch {
		case m.Binder != "":
			binder = b.Word(m.Binder)
		case isSheet(m):
			binder = "–"
		}
		var said []string
		for _, key := range u.Lots {
			said = append(said, b.lot(key))
		}
		if said == nil {
			said = append(said, string(w.T("products-no-lot")))
		}
		basis := m.Basis
		if basis == "" {
			basis = string(w.T("products-stated"))
		}
		t.Rows = append(t.Rows, []string{name, binder, b.sentence(said...), basis})
		if rest := b.c.OtherClauses(m, "key", "name", "producer", "binder", "basis", "hazard", "uses"); rest != "" {
			stated = append(stated, Text{Text: w.T("products-also").With("product", m.Name, "stated", rest), Small: true})
		}
	}
	if t.Rows == nil {
		return nil
	}
	if last := len(t.Columns) - 1; !slices.ContainsFunc(t.Rows, func(row []string) bool { return row[last] != string(w.T("products-stated")) && row[last] != b.Said("") }) {
		t.Columns = t.Columns[:last] // said once, below
		for i := range t.Rows {
			t.Rows[i] = t.Rows[i][:last]
		}
		stated = append(stated, Text{Text: string(w.T("products-no-basis")), Small: true})
	}
	return append([]Item{t}, stated...)
}

// isSheet reports that a material is a board or a cloth, which has no binder.
func isSheet(m record.Material) bool {
	return slices.Contains(m.Uses, "board") || slices.Contains(m.Uses, "cloth")
}

func (b *builder) lot(k record.Key) string {
	l, ok := b.w.Lot(k)
	if !ok {
		return string(k)
	}
	return b.sentence(b.lotName(k), b.c.OtherClauses(l, "key", "material", "producer_lot"))
}
