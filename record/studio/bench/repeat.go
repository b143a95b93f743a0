package bench

import (
	"context"
	"reflect"
	"slices"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/form"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
)

// repeatable reports that an act of a kind can be done on other panels as it
// was: it is of the bench, and says nothing that only those panels had.
func repeatable(k record.Kind) bool {
	return k != "cut" && k != "braced" && (k.Traits().Bench || slices.Contains([]record.Kind{"warm-air", "left-bare", "intended", "inspection"}, k))
}

// Earlier finds an act that was done before, as it stands after corrections:
// that of an entry, or for 0 the last that can be repeated. What was measured
// then is of those panels and that hour, so it is not taken over; what that
// was is named.
func Earlier(ctx context.Context, v *studio.View, seq int64) (record.Body, []record.Said, error) {
	var es []form.Stored
	var err error
	if seq != 0 {
		var e record.Entry
		if e, err = Entry(ctx, v.Book, seq); err != nil {
			return nil, nil, err
		}
		es = []form.Stored{{Entry: e}}
	} else {
		kinds := slices.DeleteFunc(record.Kinds(), func(k record.Kind) bool { return !repeatable(k) })
		if es, err = v.Book.Entries(ctx, book.Filter{Kinds: kinds, Last: 20}); err != nil {
			return nil, nil, err
		}
	}
	for _, e := range slices.Backward(es) {
		if k := e.Entry.Kind(); !repeatable(k) {
			return nil, nil, refuse.Cannot("not-repeatable", "E%d is not repeated: it is no act on panels, or one that is done once", seq).With(record.With("kind", k))
		}
		body, ok, err := standsAs(ctx, v, e.Entry)
		switch {
		case err != nil:
			return nil, nil, err
		case ok:
			body, not := unmeasured(body, len(e.Entry.Panels))
			if _, seen := body.(record.Inspection); seen && nothingSeen(body) {
				return nil, nil, refuse.Cannot("only-measured", "E%d says only what was measured and remarked then, which is not repeated", e.Entry.Seq)
			}
			return body, append([]record.Said{record.Say("repeats", record.With("entry", record.EntryRef(e.Entry.Seq)))}, not...), nil
		case seq != 0:
			return nil, nil, refuse.Cannot("withdrawn-entry", "E%d was taken back", seq)
		}
	}
	return nil, nil, refuse.Cannot("nothing-to-repeat", "there is nothing to repeat yet")
}

// standsAs is what an entry says after corrections, of the first of its panels
// for which it was not taken back.
func standsAs(ctx context.Context, v *studio.View, e record.Entry) (record.Body, bool, error) {
	shop, err := v.Book.AtBench(ctx, e.Panels...)
	if err != nil {
		return nil, false, err
	}
	for _, n := range e.Panels {
		if ev, ok := shop.Panel(n).Event(e.Seq); ok {
			return ev.Body, true, nil
		}
	}
	return nil, false, nil
}

// unmeasured is an act without what was measured or seen of it on some panels.
func unmeasured(body record.Body, panels int) (record.Body, []record.Said) {
	var left []record.Value
	body = recoat(body, func(c *record.Coating) {
		left = []record.Value{record.With("amount", c.WetTotal), record.With("each", c.WetEach), record.With("panels", panels), record.With("wet", c.WetFilm), record.With("dry", c.DryFilm),
			record.With("temperature", c.Temperature), record.With("humidity", c.Humidity), record.With("note", c.Note)}
		was := *c
		c.WetTotal, c.WetEach, c.WetFilm, c.DryFilm = record.Amount{}, record.Amount{}, record.Length{}, record.Length{}
		c.Temperature, c.Humidity, c.Note = record.Temperature{}, record.Percent{}, ""
		if reflect.DeepEqual(was, *c) {
			left = nil
		}
		c.Mix = slices.Clone(c.Mix)
		for i := range c.Mix {
			c.Mix[i].As = nil // as the shelf is now
		}
	})
	switch b := body.(type) {
	case record.ClothLaid:
		b.AgainOf, b.ClothAs = 0, nil
		body = b
	case record.Inspection:
		now := record.Inspection{Edges: b.Edges, Adhesion: b.Adhesion, By: b.By}
		if body = now; b != now {
			left = []record.Value{record.With("bow", b.Bow), record.With("span", b.Span), record.With("note", b.Remarks)}
		}
	}
	if left == nil {
		return body, nil
	}
	return body, []record.Said{record.Say("not-taken-over", left...)}
}

// With puts what is said anew of a coat in the place of what it was. What is
// not a coat takes none.
func With(body record.Body, c record.Coating) (record.Body, []record.Said, error) {
	said := reflect.ValueOf(c)
	if said.IsZero() {
		return body, nil, nil
	}
	if old, _, _ := (record.Entry{Body: body}).Wet(); old == nil {
		return nil, nil, refuse.Unclearly("not-a-coat", "what is repeated is no coat")
	}
	now := body
	if c.Mix != nil {
		now = mixed(body, c.Mix)
	}
	var left []record.Said
	if was, is := body.(record.Varnish); is {
		if was.Coating = now.(record.Varnish).Coating; !reflect.DeepEqual(now, record.Body(was)) {
			left = append(left, record.Say("of-other-product"))
		}
	}
	return recoat(now, func(old *record.Coating) {
		for i := range said.NumField() {
			if f := said.Field(i); !f.IsZero() {
				reflect.ValueOf(old).Elem().Field(i).Set(f)
			}
		}
	}), left, nil
}

// mixed is an act with other materials. Of another product does not hold what was
// said of the first: its resin, its sheen and what takes it off.
func mixed(body record.Body, mix []record.Part) record.Body {
	was := keysOf(body)
	body = recoat(body, func(c *record.Coating) { c.Mix = mix })
	if v, ok := body.(record.Varnish); ok && !slices.Equal(was, keysOf(body)) {
		return record.Varnish{Faces: v.Faces, Coating: v.Coating}
	}
	return body
}
