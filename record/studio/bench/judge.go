package bench

import (
	"slices"

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
	case record.Coat:
		return judgeCoat(v, b)
	case record.ClothLaid:
		return b, nil, coating(b.Coating)
	case record.PaintLayer:
		return b, nil, coating(b.Coating)
	case record.Varnish:
		return b, nil, coating(b.Coating)
	case record.Climate:
		return b, nil, room(b.Temperature)
	case record.Trimmed:
		bare := v.Which(func(p *record.Panel) bool { return len(record.Each[record.ClothLaid](p)) == 0 })
		return b, about("no-cloth-to-trim", bare), nil
	case record.Sanded:
		if b.Grit > 0 && b.Grit < coarsest {
			return b, []record.Said{record.Say("coarse-grit", record.With("scale", b.Scale), record.With("grit", b.Grit))}, nil
		}
	case record.Inspection:
		if !b.Bow.IsZero() && b.Span.IsZero() {
			return b, nil, refuse.Unclearly("bow-without-span", "a bow means nothing without its span")
		}
	case record.Described:
		if b == (record.Described{}) {
			return b, nil, refuse.Unclearly("nothing-described", "nothing to describe")
		}
	}
	return body, nil, nil
}

// coarsest is the coarsest grit that belongs on cloth (common practice).
const coarsest = 150

// about warns of panels; of none there is no warning.
func about(code string, ns []record.Number) []record.Said {
	if len(ns) == 0 {
		return nil
	}
	return []record.Said{record.Say(code, record.With("panels", ns))}
}

func judgeCoat(v *studio.View, c record.Coat) (record.Body, []record.Said, error) {
	if err := coating(c.Coating); err != nil {
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
	if c.Purpose != "" {
		return c, nil, nil
	}
	if c.Purpose = v.Shop.PurposeOf(c.Mix); c.Purpose == "" {
		return c, []record.Said{record.Say("purpose-not-recorded")}, nil
	}
	return c, nil, nil
}

// coating refuses a coat of nothing, and a room that is none.
func coating(c record.Coating) error {
	for _, w := range []struct {
		field  string
		amount record.Amount
	}{{"amount", c.WetTotal}, {"amount-each", c.WetEach}} {
		if accept.Nothing(w.amount) {
			return refuse.Input(w.field, "coat-of-nothing", "a coat of nothing")
		}
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
