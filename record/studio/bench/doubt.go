package bench

import (
	"cmp"
	"reflect"
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/studio"
)

// doubt says what is unlikely of an act at a time, and what it leaves behind. It
// may be right nevertheless, so nothing is refused.
func doubt(v *studio.View, at record.When, body record.Body) []record.Said {
	return append(doubtAct(v, at, body), certified(v, body)...)
}

// certified says of which panels a certificate is in force that tells what is
// now otherwise.
func certified(v *studio.View, body record.Body) []record.Said {
	p, picture := body.(record.Photograph)
	if !body.Kind().Traits().Bench && !slices.Contains(retold, body.Kind()) && !(picture && p.Role == "front") {
		return nil
	}
	return v.Each(func(p *record.Panel) []record.Said {
		if c, ok := p.Certificate(); ok {
			return []record.Said{record.Say("certified-before", record.With("entry", record.EntryRef(c.Seq)))}
		}
		return nil
	})
}

// retold are the kinds, beside work on the board, that change what a certificate
// tells.
var retold = []record.Kind{record.Described{}.Kind(), record.Resized{}.Kind(), record.UsedAgain{}.Kind(), record.Removed{}.Kind()}

func doubtAct(v *studio.View, at record.When, body record.Body) []record.Said {
	switch b := body.(type) {
	case record.Lot:
		return DoubtLot(v.Shop, b)
	case record.Described:
		return slices.Concat(calledSo(v, b.Owner), calledSo(v, b.Title), madeBeforeCut(v, b))
	case record.Material, record.Maker:
		return slices.Concat(describedBefore(v.Shop, b), v.DescribedSince(at, b), Unlikely(b))
	}
	ws := about("before-cutting", v.Which(func(p *record.Panel) bool { return BeforeCut(v, at, p) }))
	if !body.Kind().Traits().Bench {
		if r, ok := body.(record.Removed); ok {
			ws = append(ws, above(v, r)...)
		}
		return slices.Concat(ws, already(v, at, body), Unlikely(body))
	}
	if _, ok := body.(record.Trimmed); ok {
		ws = append(ws, about("no-cloth-to-trim", v.Which(func(p *record.Panel) bool {
			return !slices.ContainsFunc(record.Each[record.ClothLaid](p), func(l record.Done[record.ClothLaid]) bool { return !at.Before(l.At) })
		}))...)
	}
	if again := twice(v, at, body); again != nil {
		ws = append(ws, again...)
	} else if l, ok := body.(record.ClothLaid); ok && l.AgainOf == 0 {
		ws = append(ws, clothLies(v, l.Faces)...)
	}
	return slices.Concat(ws, purposes(v, body), ofLots(v, at, body), inOrder(v, body), considered(v, at, body), amounts(v, body), Unlikely(body))
}

// BeforeCut reports that an act was before the panel was cut: on an earlier day,
// or by more than an hour. Panels are often numbered after the first coat.
func BeforeCut(v *studio.View, at record.When, p *record.Panel) bool {
	c, _ := record.Latest[record.Cut](p)
	if !at.Before(c.At) {
		return false
	}
	t, exact := at.Exact()
	cut, exact2 := c.At.Exact()
	if exact && exact2 && cut.Sub(t) > within {
		return true
	}
	return daysBefore(v, at, c.At)
}

// daysBefore reports that one time was on an earlier day than another.
func daysBefore(v *studio.View, at, than record.When) bool {
	last, ok := at.Latest()
	first, ok2 := than.Earliest()
	return ok && ok2 && day(v, at, last) < day(v, than, first)
}

// day is the day of a bound of a time; a date alone is of no zone.
func day(v *studio.View, w record.When, bound time.Time) string {
	if _, ok := w.Exact(); ok {
		return bound.In(v.Zone).Format(time.DateOnly)
	}
	return bound.UTC().Format(time.DateOnly)
}

// within is how near two acts of the same sort must be to look like one that
// was written down twice (common practice: nobody recoats within the hour).
const within = time.Hour

func twice(v *studio.View, at record.When, body record.Body) []record.Said {
	now, ok := at.Exact()
	if l, is := body.(record.ClothLaid); !ok || is && l.AgainOf != 0 {
		return nil
	}
	var seq int64
	near := within
	again := v.Which(func(p *record.Panel) (found bool) {
		for _, e := range p.Events {
			t, ok := e.At.Exact()
			d := now.Sub(t).Abs()
			if !ok || d > within || !sameSort(e.Body, body) {
				continue
			}
			if found = true; d <= near {
				near, seq = d, e.Seq
			}
		}
		return found
	})
	if again == nil {
		return nil
	}
	return []record.Said{record.Say("done-twice", record.With("panels", again), record.With("entry", record.EntryRef(seq)))}
}

// clothLies doubts a cloth where one lies; of no faces on the front.
func clothLies(v *studio.View, faces []record.Face) []record.Said {
	return v.Each(func(p *record.Panel) []record.Said {
		for _, l := range p.Layers() {
			if l.Cloth != nil && l.Stands() && (slices.Contains(faces, l.Face) || faces == nil && l.Face == record.Front) {
				return []record.Said{record.Say("cloth-lies", record.With("entry", record.EntryRef(l.Seq)))}
			}
		}
		return nil
	})
}

// already doubts what was said in the same words of the same time, and a picture
// that is kept or a state of a panel, as the record says it stands.
func already(v *studio.View, at record.When, body record.Body) []record.Said {
	var seq int64
	code := "said-already"
	again := v.Which(func(p *record.Panel) bool {
		var is bool
		switch b := body.(type) {
		case record.Photograph:
			for _, x := range record.Each[record.Photograph](p) {
				switch {
				case x.Body.Role != b.Role:
				case x.Body.SHA256 == b.SHA256:
					code, seq, is = "said-already", x.Seq, true
				case b.Role == record.PhotoFront && !is: // papers show one
					code, seq, is = "front-there", x.Seq, true
				}
			}
		default:
			for _, e := range p.Events {
				state := slices.Contains(states, b.Kind())
				switch same := reflect.DeepEqual(e.Body, b); {
				case e.Body.Kind() != b.Kind() || !state && e.At != at:
				case same:
					is, seq = true, e.Seq
				case state: // another one came between
					is = false
				}
			}
		}
		return is
	})
	if again == nil {
		return nil
	}
	return []record.Said{record.Say(code, record.With("panels", again), record.With("entry", record.EntryRef(seq)))}
}

// states are the kinds that say how a panel stands until the next of them.
var states = []record.Kind{record.Published{}.Kind(), record.Intended{}.Kind(), record.UsedAgain{}.Kind()}

// sameSort reports that two acts may be the same: none says by a word, a material
// or a grit what the other says otherwise. Layers of paint often follow one
// another, so these must say the same.
func sameSort(a, b record.Body) bool {
	if a.Kind() != b.Kind() {
		return false
	}
	va, vb := reflect.ValueOf(a), reflect.ValueOf(b)
	for _, f := range a.Kind().Fields() {
		x, y := f.In(va), f.In(vb)
		if f.Words() == nil && f.Ref != "material" && f.Name != "grit" && f.Name != "pigments" || a.Kind() != "paint" && (x.IsZero() || y.IsZero()) {
			continue
		}
		if !reflect.DeepEqual(x.Interface(), y.Interface()) {
			return false
		}
	}
	ka, kb := keysOf(a), keysOf(b)
	return len(ka) == 0 || len(kb) == 0 || slices.Equal(ka, kb)
}

func keysOf(b record.Body) (ks []record.Key) {
	for _, m := range record.Mentions(b) {
		ks = append(ks, m.Material)
	}
	return ks
}

// purposes doubts a material that is recorded as meant for other things.
func purposes(v *studio.View, body record.Body) (ws []record.Said) {
	doubt := func(k record.Key, purpose record.Purpose, use record.Use) {
		m, _ := v.Shop.MaterialNow(k)
		ws = append(ws, misused(m, purpose, use)...)
	}
	switch b := body.(type) {
	case record.Coat:
		for _, p := range b.Mix {
			doubt(p.Material, b.Purpose, "")
			if m, _ := v.Shop.MaterialNow(p.Material); (b.Purpose == "" || m.Serves(b.Purpose) == record.Unknown) && noCoat(m) {
				ws = append(ws, record.Say("meant-otherwise", record.With("material", m.Key), record.With("uses", m.Uses)))
			}
		}
	case record.ClothLaid:
		doubt(b.Cloth, "", "cloth")
		for _, p := range b.Mix {
			doubt(p.Material, record.Adhesive, "")
		}
	case record.PaintLayer:
		for _, p := range b.Mix {
			m, _ := v.Shop.MaterialNow(p.Material)
			if !slices.Contains(m.Uses, "medium") && !slices.Contains(m.Uses, "thinner") {
				doubt(p.Material, "", "paint")
			}
			if m.Waterborne == record.Yes && slices.Contains(waterless, b.Medium) {
				ws = append(ws, record.Say("water-in-oil", record.With("material", m.Key), record.With("medium", b.Medium)))
			}
		}
	case record.Varnish:
		for _, p := range b.Mix {
			doubt(p.Material, "", "varnish")
		}
	}
	return ws
}

// waterless are the media into which nothing water-borne is stirred (common practice).
var waterless = []record.PaintMedium{"oil", "alkyd", "encaustic"}

// noCoat tells that a material is recorded as meant for other things than coats.
func noCoat(m record.Material) bool {
	return len(m.Uses) > 0 && !slices.ContainsFunc(m.Uses, func(u record.Use) bool {
		return slices.Contains([]record.Use{"thinner", "medium"}, u) || slices.Contains(record.Words("Purpose"), string(u))
	})
}

// ofLots doubts a lot that was good only until a time before the act, or came on
// a later day.
func ofLots(v *studio.View, at record.When, body record.Body) (ws []record.Said) {
	for _, m := range record.Mentions(body) {
		if l, ok := v.Shop.Lot(m.Lot); ok && l.Expires.Before(at) {
			ws = append(ws, record.Say("lot-past", record.With("lot", m.Lot), record.With("expires", l.Expires)))
		}
		for _, l := range v.Shop.Lots {
			if m.Lot != "" && l.Body.Key == m.Lot && daysBefore(v, at, l.At) {
				ws = append(ws, record.Say("lot-not-yet", record.With("lot", m.Lot), record.With("at", l.At), record.With("entry", record.EntryRef(l.Seq))))
			}
		}
	}
	return ws
}

// misused doubts that a material serves a purpose or is of a use. Nothing is
// said of one of which no use is recorded.
func misused(m record.Material, purpose record.Purpose, use record.Use) []record.Said {
	if len(m.Uses) == 0 || (purpose == "" || m.Serves(purpose) != record.No) && (use == "" || slices.Contains(m.Uses, use)) {
		return nil
	}
	return []record.Said{record.Say("not-meant-for", record.With("material", m.Key), record.With("use", record.Use(cmp.Or(string(use), string(purpose)))))}
}

// place is how far out a layer of the front usually lies (common practice):
// cloth, ground, paint, varnish. Nought is a layer that may lie anywhere.
func place(l record.Layer) int {
	switch {
	case l.Varnish != nil:
		return 4
	case l.Paint != nil:
		return 3
	case l.Purpose == record.Ground:
		return 2
	case l.Cloth != nil:
		return 1
	}
	return 0
}

// inOrder doubts a layer that is laid over what usually comes after it.
func inOrder(v *studio.View, body record.Body) []record.Said {
	var l record.Layer
	switch b := body.(type) {
	case record.ClothLaid:
		l.Cloth = &b
	case record.PaintLayer:
		l.Paint = &b
	case record.Varnish:
		l.Varnish = &b
	case record.Coat:
		l.Purpose = b.Purpose
		if !slices.Contains(b.Faces, record.Front) {
			return nil
		}
	}
	mine := place(l)
	if mine == 0 {
		return nil
	}
	return v.Each(func(p *record.Panel) []record.Said {
		for _, l := range p.BuildUp(record.Front) {
			if is := place(l); is > mine {
				return []record.Said{record.Say("out-of-order", record.With("over", []record.Code{"", "", "ground", "paint", "varnish"}[is]), record.With("entry", record.EntryRef(l.Seq)))}
			}
		}
		return nil
	})
}

// considered doubts what comes before or after its window, as due would tell it,
// and then what is usually advised against, as a check would find it. Of a day
// alone its end counts: before that it was early at any hour.
func considered(v *studio.View, at record.When, body record.Body) []record.Said {
	now, ok := at.Latest()
	if !ok {
		return nil
	}
	_, exact := at.Exact()
	against := map[record.Number][]record.Said{}
	ws := v.Each(func(p *record.Panel) []record.Said {
		st, objections := check.Consider(v.Shop, p, now, body)
		against[p.Number] = objections
		switch {
		case st.From.After(now):
			return []record.Said{record.Say("too-early", record.With("from", record.Moment(st.From.In(v.Zone).Truncate(time.Minute))))}
		case st.Overdue && exact:
			return []record.Said{record.Say("too-late", record.With("until", record.Moment(st.Until.In(v.Zone).Truncate(time.Minute))))}
		}
		return nil
	})
	return append(ws, v.Each(func(p *record.Panel) (ws []record.Said) {
		for _, s := range against[p.Number] {
			ws = append(ws, record.Say("against", append([]record.Value{record.With("what", record.Code(s.Code))}, s.Values...)...))
		}
		return ws
	})...)
}

// calledSo doubts a title or a reference of the studio's own by which others are
// called, or several at once.
func calledSo(v *studio.View, name string) []record.Said {
	if name == "" {
		return nil
	}
	ns := slices.Clone(v.Roll.Called[record.CalledAs(name)])
	if n, err := v.Roll.Find(name); err == nil && !slices.Contains(ns, n) {
		ns = append(ns, n)
	}
	ns = slices.DeleteFunc(ns, func(n record.Number) bool { return slices.Contains(v.Panels, n) })
	if len(v.Panels) > 1 {
		ns = append(ns, v.Panels[1:]...)
	}
	if len(ns) == 0 {
		return nil
	}
	return []record.Said{record.Say("called-so", record.With("called", name), record.With("panels", ns))}
}

// madeBeforeCut doubts a work that is older than its board.
func madeBeforeCut(v *studio.View, body record.Body) []record.Said {
	d, _ := body.(record.Described)
	return about("before-cutting", v.Which(func(p *record.Panel) bool {
		c, _ := record.Latest[record.Cut](p)
		return daysBefore(v, d.Made, c.At)
	}))
}

// describedBefore says as what a thing stood there that is described anew.
func describedBefore(w *record.Workshop, b record.Body) []record.Said {
	vs := w.Versions(b.Kind(), record.KeyOf(b))
	if len(vs) == 0 {
		return nil
	}
	last := vs[len(vs)-1]
	name := ""
	switch before := last.Body.(type) {
	case record.Material:
		name = before.Name
	case record.Maker:
		name = before.Name
	}
	return []record.Said{record.Say("described-again", record.With("material", record.KeyOf(b)), record.With("name", name), record.With("entry", record.EntryRef(last.Seq)))}
}

// DoubtLot doubts a lot whose size is out of any usual range, or whose quantity
// is measured as its material is not.
func DoubtLot(w *record.Workshop, l record.Lot) []record.Said {
	ws := Unlikely(l)
	m, _ := w.MaterialNow(l.Material)
	_, mass := l.Quantity.Milligrams()
	_, volume := l.Quantity.Microliters()
	solid := slices.Contains(m.Uses, "board") || slices.Contains(m.Uses, "cloth")
	if l.Quantity.IsZero() || l.Quantity.IsUnknown() || len(m.Uses) == 0 || (mass || volume) != solid {
		return ws
	}
	return append(ws, record.Say("other-quantity", record.With("material", m.Key), record.With("quantity", l.Quantity)))
}
