package questions

import (
	"cmp"
	"slices"

	"backleaf/record"
	"backleaf/record/amount"
	"backleaf/record/tell"
)

// ofLine is where what a line lacks would be told: a field, as it is asked for,
// of its lot, of the material of that, or of the act itself.
var ofLine = map[string]struct {
	of    record.Kind
	field string
}{
	"cost-lot-open": {}, "cost-price-open": {}, "cost-quantity-other": {}, "mix-open": {}, "amount-open": {"", "amount"},
	"cost-quantity-open": {"lot", "quantity"}, "cost-more-than-lot": {"lot", "quantity"}, "cost-sheets-open": {"lot", "quantity"}, "cost-sheet-open": {"lot", "sheet"},
	"cost-bolt-open": {"material", "cloth.width"}, "cost-density-open": {"material", "density"},
}

// tellers says, once for all lines that lack the same, by what amendment it
// would be told.
func tellers(c *tell.Catalogue, w *record.Workshop, lines []amount.CostLine) (out []record.Said) {
	type lack struct {
		said    record.Said
		field   string
		entries []record.EntryRef
		lots    []record.Key
	}
	var lacks []lack
	for _, l := range lines {
		t, known := ofLine[l.Missing.Code]
		if !known || l.Lot == record.Unknown {
			continue
		}
		seq := l.Entry
		lot, _ := w.Lot(l.Lot)
		if vs := w.Versions(t.of, map[record.Kind]record.Key{"lot": l.Lot, "material": lot.Material}[t.of]); len(vs) > 0 {
			seq = vs[len(vs)-1].Seq
		}
		if t.of == "material" && len(lot.As) > 0 {
			seq = lot.As[0]
		}
		field := cmp.Or(t.field, map[string]string{"board": "board", "cloth": "cloth"}[l.What.Text()], "with")
		if l.Missing.Code == "cost-price-open" {
			field = "" // of no entry: what was done is amended after it is told
		}
		i := slices.IndexFunc(lacks, func(k lack) bool { return k.said.Code == l.Missing.Code && k.field == field })
		if i < 0 {
			i, lacks = len(lacks), append(lacks, lack{said: l.Missing, field: field})
		}
		if k := &lacks[i]; !slices.Contains(k.entries, record.EntryRef(seq)) {
			k.entries = append(k.entries, record.EntryRef(seq))
		}
		if k := &lacks[i]; l.Lot != "" && !slices.Contains(k.lots, l.Lot) {
			k.lots = append(k.lots, l.Lot)
		}
	}
	for _, k := range lacks {
		out = append(out, record.Say("cost-next", tell.Told("why", tell.Say(c, k.said)), record.With("entries", k.entries), record.With("entry", k.entries[0]),
			record.With("lots", k.lots), record.With("field", k.field)))
	}
	return out
}
