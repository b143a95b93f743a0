package deposit

import (
	"reflect"
	"slices"
	"strings"

	"backleaf/record"
)

// layerFields are the fields of every sort of layer, each once. Faces and
// whether a face was given more have columns of their own.
func layerFields() []string {
	var names []string
	for _, t := range []reflect.Type{reflect.TypeFor[record.Coating](), reflect.TypeFor[record.ClothLaid](), reflect.TypeFor[record.PaintLayer](), reflect.TypeFor[record.Varnish]()} {
		for _, n := range fieldsOf(t, "") {
			if n != "faces" && !slices.Contains(names, n) {
				names = append(names, n)
			}
		}
	}
	return names
}

// layers is the build-up of every face of every panel, one row a layer.
func layers(w *record.Workshop) [][]string {
	columns := layerFields()
	rows := [][]string{append([]string{"panel", "face", "from_the_board", "layer", "purpose", "at", "entry", "panels_in_entry", "given_more", "products", "binders"}, columns...)}
	for _, p := range w.Panels {
		together := map[int64]int{}
		for _, e := range p.Events {
			together[e.Seq] = len(e.Panels)
		}
		for _, f := range record.Faces {
			for i, l := range p.BuildUp(f) {
				more := ""
				if l.Extra {
					more = "yes"
				}
				products, binders := wentInto(w, l)
				row := []string{string(p.Number), string(f), num(int64(i + 1)), l.Name(), string(l.Purpose), l.At.String(), num(l.Seq), num(int64(together[l.Seq])), more,
					strings.Join(products, "; "), strings.Join(binders, "; ")}
				values := layerValues(l)
				for _, c := range columns {
					row = append(row, values[c])
				}
				rows = append(rows, row)
			}
		}
	}
	return rows
}

// layerValues are the fields of one layer. The adhesive of a cloth is a layer
// of its own and does not stand with the cloth too.
func layerValues(l record.Layer) map[string]string {
	switch {
	case l.Cloth != nil:
		values := valuesOf(*l.Cloth)
		for _, n := range fieldsOf(reflect.TypeFor[record.Coating](), "") {
			delete(values, n)
		}
		return values
	case l.Paint != nil:
		return valuesOf(*l.Paint)
	case l.Varnish != nil:
		return valuesOf(*l.Varnish)
	case l.Coating != nil:
		return valuesOf(*l.Coating)
	}
	return nil
}

// wentInto names products and binders of a layer, as the shelf tells them.
func wentInto(w *record.Workshop, l record.Layer) (products, binders []string) {
	use := func(k record.Key, as []int64) {
		m, ok := w.Material(k, as)
		if !ok {
			return
		}
		products = append(products, m.Name)
		if m.Binder != "" {
			binders = append(binders, string(m.Binder))
		}
	}
	if l.Cloth != nil {
		use(l.Cloth.Cloth, l.Cloth.ClothAs)
		return products, binders
	}
	if l.Coating != nil {
		for _, part := range l.Coating.Mix {
			use(part.Material, part.As)
		}
	}
	return products, binders
}
