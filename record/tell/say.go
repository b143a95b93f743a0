package tell

import (
	"backleaf/record"
	"slices"
)

// Say turns a code and its values into words. A code that the catalogue does
// not know, because a newer program wrote it, is told as its code and values:
// nothing is dropped.
func Say(c *Catalogue, s record.Said) string {
	if m, ok := c.Codes[s.Code]; ok {
		return c.fill(m, s)
	}
	var values []string
	for _, v := range s.Values {
		values = append(values, c.Join.Pair.With("name", v.Name, "value", c.value(v, "")))
	}
	if values == nil {
		return c.Lines.T("newer").With("code", s.Code)
	}
	return c.Lines.T("newer-values").With("code", s.Code, "values", c.Clauses(values))
}

// codes joins the tables of all families. A code stands in one of them.
func codes(families ...table) map[string]Message {
	n := 0
	for _, f := range families {
		n += len(f)
	}
	all := make(map[string]Message, n)
	for _, x := range slices.Concat(families...) {
		if _, twice := all[x.code]; twice {
			panic("tell: the code " + x.code + " stands twice in the catalogue")
		}
		all[x.code] = x.Message
	}
	return all
}
