package bench

import (
	"context"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
)

// judge looks at what is to be written: what it says cannot be, it refuses;
// what it leaves open and the shelf answers, it completes; what is unlikely it
// doubts.
func judge(v *studio.View, body record.Body) (record.Body, []record.Said, error) {
	switch b := body.(type) {
	case record.Cut:
		return b, nil, noSuchBoard(v.Shop, b)
	case record.Coat:
		return judgeCoat(v, b)
	case record.ClothLaid:
		return b, slices.Concat(absent("material-not-recorded", len(b.Mix) == 0), absent("cloth-not-recorded", b.Cloth == "")), coating(v, b)
	case record.PaintLayer:
		return b, gap("medium", b.Medium == ""), coating(v, b)
	case record.Braced:
		return b, gap("bracing", b.Bracing == ""), nil
	case record.WarmAir:
		return b, gap("for", b.For == record.Duration{}), nil
	case record.Varnish:
		bare := v.Which(func(p *record.Panel) bool { return !painted(p) })
		return b, slices.Concat(absent("material-not-recorded", len(b.Mix) == 0 && b.Resin == ""), about("no-paint-to-varnish", bare)), coating(v, b)
	case record.Feature:
		return b, outside(v, b.Face, b.Left, b.Top), nil
	case record.Climate:
		if b.Temperature.IsZero() && b.Humidity.IsZero() {
			return b, nil, refuse.Unclearly("no-reading", "a reading has a temperature, a humidity or both")
		}
		return b, nil, room(b.Temperature)
	case record.Note:
		return b, nil, onlyPanels(v, b.Text)
	case record.Treatment:
		return b, nil, onlyPanels(v, b.Text)
	case record.LeftBare:
		if len(b.Faces) == 0 {
			return b, nil, refuse.Unclearly("no-faces", "which faces were left bare?")
		}
		return b, carried(v, b.Faces), nil
	case record.Discarded:
		return b, v.Each(func(p *record.Panel) (ws []record.Said) {
			if d, gone := p.Discarded(); gone {
				ws = append(ws, record.Say("was-discarded", record.With("entry", record.EntryRef(d.Seq))))
			}
			if c, ok := p.Certificate(); ok {
				ws = append(ws, record.Say("discarded-with-paper", record.With("entry", record.EntryRef(c.Seq))))
			}
			if h, away := p.Away(); away {
				ws = append(ws, record.Say("discarded-away", record.With("how", h.Body.How), record.With("entry", record.EntryRef(h.Seq))))
			}
			return ws
		}), nil
	case record.Sanded:
		if b.Scale == "P" && !slices.Contains(papers, b.Grit) {
			return b, nil, refuse.Input("grit", "no-such-paper-grit", "there is no paper %s %d", b.Scale, b.Grit)
		}
		if b.Grit > 0 && b.Grit < coarsest {
			return b, []record.Said{record.Say("coarse-grit", record.With("scale", b.Scale), record.With("grit", b.Grit))}, nil
		}
	case record.Published:
		return b, v.Each(func(p *record.Panel) []record.Said {
			d, gone := p.Discarded()
			_, before := record.Latest[record.Published](p)
			switch {
			case b.Shown == record.No && !before:
				return []record.Said{record.Say("was-not-shown")}
			case b.Shown != record.No && gone:
				return []record.Said{record.Say("was-discarded", record.With("entry", record.EntryRef(d.Seq)))}
			}
			return nil
		}), nil
	case record.Intended:
		return b, about("cloth-lies", v.Which(func(p *record.Panel) bool {
			return b.Cloth == record.No && slices.ContainsFunc(p.Layers(), func(l record.Layer) bool { return l.Cloth != nil && l.Stands() })
		})), nil
	case record.UsedAgain:
		return b, about("no-earlier-work", v.Which(func(p *record.Panel) bool { return !painted(p) })), nil
	case record.Removed:
		return b, nil, removable(v, b)
	case record.Resized:
		if apart(b.Before.Height, b.Size.Height) || apart(b.Before.Width, b.Size.Width) {
			return b, nil, slip("to", b.Size.String(), "it was %s", b.Before)
		}
		if is := resizing(b.Before, b.Size); is != "" && is != b.How {
			return b, nil, refuse.Input("how", "resized-otherwise", "%s is %s than %s", b.Size, map[record.Resizing]string{"cut-down": "smaller", "enlarged": "larger"}[is], b.Before).With(record.With("how", is))
		}
	case record.Inspection:
		if nothingSeen(b) {
			return b, nil, refuse.Unclearly("nothing-seen", "what was seen?")
		}
		if !b.Bow.IsZero() && b.Span.IsZero() {
			return b, nil, refuse.Input("bow", "bow-without-span", "a bow means nothing without its span")
		}
		if bow, _ := b.Bow.Micrometers(); bow > 0 {
			if span, ok := b.Span.Micrometers(); ok && bow >= span {
				return b, nil, slip("bow", b.Bow.String(), "it was measured over %s", b.Span)
			}
		}
		return b, append(tooLong(v, b.Span), bowed(b)...), nil
	case record.Described:
		if b == (record.Described{}) {
			return b, nil, refuse.Unclearly("nothing-described", "nothing to describe")
		}
	}
	return body, nil, nil
}

// nothingSeen reports an inspection that says nothing but who made it.
func nothingSeen(body record.Body) bool {
	b, ok := body.(record.Inspection)
	return ok && b == record.Inspection{By: b.By}
}

// bowed doubts a bow that is none, and one of more than a twenty-fifth of its span:
// most often centimetres typed for millimetres (common practice).
func bowed(b record.Inspection) []record.Said {
	bow, _ := b.Bow.Micrometers()
	span, _ := b.Span.Micrometers()
	switch {
	case bow > 0 && b.Toward == "flat":
		return []record.Said{record.Say("bowed-and-flat", record.With("bow", b.Bow))}
	case 25*bow > span && bow <= mostBow:
		return []record.Said{record.Say("unlikely-value", record.With("what", record.Code("bow")), record.With("value", b.Bow))}
	}
	return nil
}

// onlyPanels refuses a text that names panels and says nothing of them.
func onlyPanels(v *studio.View, text string) error {
	terms := strings.Fields(text)
	if slices.ContainsFunc(terms, func(t string) bool { return t != "all" && !strings.ContainsAny(t, "0123456789:") }) {
		return nil
	}
	roll, err := v.Book.Roll(context.Background(), terms...) // that of the act may hold its own batches only
	if err != nil {
		return err
	}
	if ns, err := roll.Select(terms, nil); err == nil && len(ns) > 0 {
		return refuse.Unclearly("text-of-panels", "what is to be said of %s?", text)
	}
	return nil
}

// coarsest is the coarsest grit that belongs on cloth (common practice).
const coarsest = 150

// papers are the grits of the scale P (ISO 6344-2 and 6344-3; from memory).
var papers = []int64{12, 16, 20, 24, 30, 36, 40, 50, 60, 80, 100, 120, 150, 180, 220, 240, 280, 320, 360, 400, 500, 600, 800, 1000, 1200, 1500, 2000, 2500, 3000, 5000}

// about warns of panels; of none there is no warning.
func about(code string, ns []record.Number) []record.Said {
	if len(ns) == 0 {
		return nil
	}
	return []record.Said{record.Say(code, record.With("panels", ns))}
}

// carried doubts that faces are bare on which something lies.
func carried(v *studio.View, faces []record.Face) []record.Said {
	return v.Each(func(p *record.Panel) []record.Said {
		coated := slices.DeleteFunc(slices.Clone(faces), func(f record.Face) bool { return len(p.BuildUp(f)) == 0 })
		if len(coated) == 0 {
			return nil
		}
		return []record.Said{record.Say("bare-but-coated", record.With("faces", coated))}
	})
}

func judgeCoat(v *studio.View, c record.Coat) (record.Body, []record.Said, error) {
	if err := coating(v, c); err != nil {
		return c, nil, err
	}
	if len(c.Faces) == 0 {
		return c, nil, refuse.Unclearly("no-faces", "which faces were coated?")
	}
	for _, f := range c.Extra {
		if !slices.Contains(c.Faces, f) {
			return c, nil, refuse.Input("extra", "extra-not-coated", "%s was not coated", f)
		}
	}
	if c.Purpose == "" {
		c.Purpose = v.Shop.PurposeOf(c.Mix)
	}
	return c, slices.Concat(absent("material-not-recorded", len(c.Mix) == 0), openPurpose(v, c)), nil
}

// openPurpose remarks that a coat has no purpose, with those that its materials
// are recorded for.
func openPurpose(v *studio.View, c record.Coat) []record.Said {
	if c.Purpose != "" || len(purposes(v, c)) > 0 {
		return nil
	}
	var serves []record.Purpose
	for _, k := range keysOf(c) {
		m, _ := v.Shop.MaterialNow(k)
		for _, u := range m.Uses {
			if p := record.Purpose(u); slices.Contains(record.Words("Purpose"), string(u)) && !slices.Contains(serves, p) {
				serves = append(serves, p)
			}
		}
	}
	like := string(append(slices.Clone(serves), record.Sealer)[0])
	return []record.Said{record.Say("purpose-not-recorded", record.With("like", like), record.With("serves", serves))}
}

// absent remarks on what a reader would miss.
func absent(code string, is bool) []record.Said {
	if !is {
		return nil
	}
	return []record.Said{record.Say(code)}
}

// gap remarks that a field is left open that a reader would miss.
func gap(field record.Code, is bool) []record.Said {
	if !is {
		return nil
	}
	return []record.Said{record.Say("left-open", record.With("field", field))}
}

// coating refuses a coat of nothing or of what no panel holds, and a room that
// is none.
func coating(v *studio.View, body record.Body) error {
	c, _, _ := record.Entry{Body: body}.Wet()
	for _, w := range []struct {
		field  string
		amount record.Amount
	}{{"amount", c.WetTotal}, {"amount-each", c.WetEach}} {
		if accept.Nothing(w.amount) {
			return refuse.Input(w.field, "coat-of-nothing", "a coat of nothing")
		}
	}
	if !c.WetTotal.IsZero() && !c.WetEach.IsZero() {
		return refuse.Input("amount-each", "amount-twice", "%s for each panel, and %s for all of them", c.WetEach, c.WetTotal)
	}
	wet, ok := c.WetFilm.Micrometers()
	if dry, ok2 := c.DryFilm.Micrometers(); ok && ok2 && dry > wet {
		return slip("dry-film", c.DryFilm.String(), "it was %s wet, and no film grows as it dries", c.WetFilm)
	}
	if err := noSuchCoat(v, body); err != nil {
		return err
	}
	return room(c.Temperature)
}

// room refuses what no workroom has: most often a slip of the unit.
func room(t record.Temperature) error {
	if accept.NoRoom(t) {
		return refuse.Input("temp", "room-temperature", "%s is not the temperature of a room", t)
	}
	return nil
}
