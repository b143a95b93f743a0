package ask

import (
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/tell"
	"backleaf/record/trade"
)

func (r *reader) varnish() Answer {
	a := layersOf(isVarnish)(r)
	if a.Recorded {
		a.Lines = []string{r.VarnishLine(), a.Lines[0]}
	}
	return a
}

func (r *reader) removal() Answer {
	as := r.applications(isVarnish)
	if len(as) == 0 {
		return Answer{Lines: []string{"not recorded: no varnish was written down"}}
	}
	last := as[len(as)-1]
	a := recorded(seqs(as), r.VarnishLine(), "test first; a conservator decides")
	a.Recorded = last.Varnish.Removable != "" || slices.ContainsFunc(last.Coating.Mix, func(p record.Part) bool { m, _ := r.w.Material(p.Material, p.As); return m.Removable != "" })
	return a
}

// eachPigment calls f for every pigment of paint and of the products used.
func (r *reader) eachPigment(f func(p record.Pigment, in string, seq int64)) (without []int64) {
	for _, a := range r.applications(func(l record.Layer) bool { return l.Cloth == nil }) {
		some := a.Paint == nil
		if a.Paint != nil {
			for _, p := range a.Paint.Pigments {
				f(p, r.Layer(a.Layer), a.Seq)
				some = true
			}
		}
		for _, part := range a.Coating.Mix {
			m, _ := r.w.Material(part.Material, part.As)
			for _, p := range m.Pigments {
				f(p, r.Layer(a.Layer), a.Seq)
				some = true
			}
		}
		if !some {
			without = append(without, a.Seq)
		}
	}
	return without
}

func pigmentName(p record.Pigment) string {
	if known(p.Index) {
		return p.Name + " (" + p.Index + ")"
	}
	return p.Name
}

// in names the layer of an entry.
func (r *reader) in(seq int64) string {
	for _, a := range r.applications(func(l record.Layer) bool { return l.Cloth == nil && l.Seq == seq }) {
		return " in the " + r.Layer(a.Layer)
	}
	return ""
}

func (r *reader) metals() Answer {
	d := trade.DangersOf(trade.Layers(r.w, r.p))
	var sure, may []string
	var es []int64
	for _, x := range d.Found {
		name := r.Word(record.Code(x.Risk))
		line := pigmentName(x.Pigment) + r.in(x.Seq) + ": " + name
		switch {
		case x.Risk == trade.Stated:
			line = x.Product + ": recorded as harmful when sanded or cleaned"
		case x.Pigment == record.Pigment{}:
			continue
		case !x.Sure:
			may = append(may, pigmentName(x.Pigment)+r.in(x.Seq)+" may hold "+name)
			continue
		}
		if es = append(es, x.Seq); !slices.Contains(sure, line) {
			sure = append(sure, line)
		}
	}
	switch {
	case sure != nil:
		return recorded(es, few(append(sure, may...)), "do not sand dry; local rules come first")
	case d.Harmful == record.No:
		return recorded(nil, "none: every colour is known by its Colour Index name, or its product is recorded as harmless", "only an analysis can say more than the record")
	case len(r.applications(func(l record.Layer) bool { return l.Cloth == nil })) == 0:
		return none()
	}
	lines := []string{"not recorded: it cannot be ruled out, because not every colour has its Colour Index name and not every product says whether it is harmful"}
	if may != nil {
		lines = append(lines, few(may))
	}
	return Answer{Lines: lines, Entries: d.Open}
}

func (r *reader) zinc() Answer {
	var found []string
	var es []int64
	told := true
	without := r.eachPigment(func(p record.Pigment, in string, seq int64) {
		switch trade.HoldsZinc(p) {
		case record.Yes:
			s := pigmentName(p) + " in the " + in
			if trade.HoldsZinc(p, trade.ZincOxide) == record.No {
				s += ", in another form than zinc white"
			}
			found, es = append(found, s), append(es, seq)
		case record.No:
		default:
			told = false
		}
	})
	switch {
	case found != nil:
		return recorded(es, few(found))
	case without != nil || !told || len(r.p.Layers()) == 0:
		return Answer{Lines: []string{"not recorded: not all colours were written down by their Colour Index names"}, Entries: without}
	}
	return recorded(nil, "none among the pigments that are recorded")
}

func (r *reader) pigments() Answer {
	var out []string
	var es []int64
	without := r.eachPigment(func(p record.Pigment, in string, seq int64) {
		if s := pigmentName(p) + " in the " + in; !slices.Contains(out, s) {
			out = append(out, s)
		}
		if !slices.Contains(es, seq) {
			es = append(es, seq)
		}
	})
	if out == nil {
		return none(without...)
	}
	a := recorded(es, few(out))
	if without != nil {
		a.Lines = append(a.Lines, "those of another paint layer are not recorded")
	}
	return a
}

func (r *reader) hazards() Answer {
	var out []string
	var es []int64
	for _, u := range r.p.Used() {
		if m, _ := r.w.Material(u.Material, u.As); m.Hazard != "" {
			out = append(out, m.Name+": "+m.Hazard)
		}
	}
	if m := r.metals(); m.Recorded && m.Entries != nil {
		out, es = append([]string{m.Lines[0]}, out...), m.Entries
	}
	if out == nil {
		return none()
	}
	return recorded(es, few(out), "local rules come first; the dossier says more")
}

// used lists the materials that went into the panel.
func (r *reader) size() Answer {
	d, s := r.dimensions(), r.sizing()
	return Answer{Lines: []string{"dimensions: " + d.Lines[0], "size as a coat: " + s.Lines[0]}, Entries: append(d.Entries, s.Entries...), Recorded: d.Recorded || s.Recorded}
}

// sizing answers with the coats of size; a sealer or adhesive below the cloth
// does the work of one and is named as what it is.
func (r *reader) sizing() Answer {
	if a := layersOf(isSize)(r); a.Recorded {
		return a
	}
	if a := layersOf(func(l record.Layer) bool { return isSealer(l) || isAdhesive(l) })(r); a.Recorded {
		a.Lines = []string{"no coat of size by that name; recorded: " + a.Lines[0]}
		return a
	}
	return none()
}

func (r *reader) paint() Answer {
	as := r.applications(isPaint)
	if len(as) == 0 {
		return none()
	}
	var what, how []string
	for _, a := range as {
		what = append(what, r.Layer(a.Layer)+", "+r.Day(a.At))
		if a.Paint.Technique != "" {
			how = append(how, a.Paint.Technique)
		}
	}
	return recorded(seqs(as), few(what), few(how))
}

func (r *reader) underdrawing() Answer {
	var out []string
	var es []int64
	for _, a := range r.applications(isPaint) {
		if a.Paint.Underdrawing != "" {
			out, es = append(out, a.Paint.Underdrawing), append(es, a.Seq)
		}
	}
	if out == nil {
		return none()
	}
	return recorded(es, few(out))
}

func (r *reader) fat() Answer {
	words := map[record.OilContent]string{"lean": "leaner than the layer below", "same": "as fat as the layer below", "fat": "fatter than the layer below", record.Unknown: "recorded as unknown"}
	var out []string
	var es []int64
	for i, a := range r.applications(isPaint) {
		if w, ok := words[a.Paint.Oil]; ok {
			if i == 0 && a.Paint.Oil != record.Unknown {
				w = string(a.Paint.Oil) // no paint lies below the first
			}
			out, es = append(out, r.Layer(a.Layer)+": "+w), append(es, a.Seq)
		}
	}
	if out == nil {
		return none()
	}
	return recorded(es, few(out))
}

func (r *reader) board() Answer {
	c, seq := r.cut()
	if !known(string(c.Board)) {
		return r.said(string(c.Board), seq)
	}
	m := r.material()
	about := []string{r.Board()}
	if known(c.Size.Depth.String()) {
		about = append(about, r.Quantity(c.Size.Depth))
	}
	if c.Grain != "" {
		about = append(about, "grain "+r.Word(c.Grain))
	}
	return recorded([]int64{seq}, strings.Join(about, ", "), r.productLot(m.Key, c.BoardAs, c.Lot))
}

func (r *reader) thick() Answer {
	c, seq := r.cut()
	if c.Size.Depth.IsZero() {
		if t := r.material().Board.Thickness; !t.IsZero() {
			return Answer{Lines: []string{"not measured", "the product is sold as " + r.Quantity(t)}, Entries: []int64{seq}}
		}
	}
	if c.Size.Depth.IsZero() || c.Size.Depth.IsUnknown() {
		return r.said(c.Size.Depth.String(), seq)
	}
	return recorded([]int64{seq}, r.Quantity(c.Size.Depth)+", the board as cut")
}

func (r *reader) grain() Answer {
	c, seq := r.cut()
	if !known(string(c.Grain)) {
		return r.said(string(c.Grain), seq)
	}
	return recorded([]int64{seq}, "the face grain runs "+r.Word(c.Grain))
}

func (r *reader) formaldehyde() Answer {
	_, seq := r.cut()
	m := r.material()
	if !known(m.Board.Formaldehyde) {
		return r.said(m.Board.Formaldehyde, seq)
	}
	return recorded([]int64{seq}, "class on the sheet: "+m.Board.Formaldehyde)
}

func (r *reader) braced() Answer {
	var out []string
	var es []int64
	for _, b := range record.Each[record.Braced](r.p) {
		s := r.Word(b.Body.Bracing)
		if b.Body.Fixing != "" {
			s += ", " + r.Word(b.Body.Fixing)
		}
		out, es = append(out, s+", "+r.Day(b.At)), append(es, b.Seq)
	}
	if out == nil {
		return none()
	}
	return recorded(es, few(out))
}

func (r *reader) cloth() Answer {
	as := r.applications(isCloth)
	if len(as) == 0 {
		return none()
	}
	var what, of []string
	for _, a := range as {
		what = append(what, r.Layer(a.Layer)+", "+r.Faces(a.faces)+", "+r.Day(a.At))
		of = append(of, r.productLot(a.Cloth.Cloth, a.Cloth.ClothAs, a.Cloth.ClothLot))
	}
	return recorded(seqs(as), few(what), few(of))
}

// ofCloth answers with one property of each cloth.
func (r *reader) ofCloth(say func(*record.ClothLaid, record.Material) string) Answer {
	var out []string
	var es []int64
	for _, a := range r.applications(isCloth) {
		m, _ := r.w.Material(a.Cloth.Cloth, a.Cloth.ClothAs)
		if s := say(a.Cloth, m); s != "" {
			out, es = append(out, s), append(es, a.Seq)
		}
	}
	if out == nil {
		return none()
	}
	return recorded(es, few(out))
}

// basis says where the values of a product come from.
func basis(m record.Material) string {
	if m.Basis == "" {
		return " (as stated for the product)"
	}
	if strings.HasPrefix(m.Basis, tell.Typical) {
		return " (typical for this kind; test first)"
	}
	return " (as stated for the product: " + m.Basis + ")"
}

func (r *reader) threads() Answer {
	return r.ofCloth(func(_ *record.ClothLaid, m record.Material) string {
		var s []string
		if m.Cloth.Weave != "" {
			s = append(s, r.Word(m.Cloth.Weave))
		}
		if !m.Cloth.Warp.IsZero() || !m.Cloth.Weft.IsZero() {
			s = append(s, "warp "+r.Quantity(m.Cloth.Warp)+", weft "+r.Quantity(m.Cloth.Weft)+basis(m))
		}
		return strings.Join(s, ", ")
	})
}

func (r *reader) clothMass() Answer {
	return r.ofCloth(func(_ *record.ClothLaid, m record.Material) string {
		if m.Cloth.Mass.IsZero() {
			return ""
		}
		return r.Quantity(m.Cloth.Mass) + basis(m)
	})
}

func (r *reader) run() Answer {
	return r.ofCloth(func(c *record.ClothLaid, _ record.Material) string {
		if c.Run == "" {
			return ""
		}
		return "the warp runs " + r.Word(c.Run)
	})
}
