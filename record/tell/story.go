package tell

import (
	"reflect"

	"backleaf/record"
)

// Event says in one line what matters most of what happened, for lists and the
// journal.
func (c *Catalogue) Event(e record.Event) string {
	line, _ := c.telling(c.event(e))
	return line
}

// WholeEvent says all that is recorded of what happened: what [Catalogue.Event]
// says, then every other field by its name and who did it. Digests and keys are for programs
// and are left out.
func (c *Catalogue) WholeEvent(e record.Event) string { return c.eventWith(e, true) }

// eventWith says what happened and who did it, between them every other field
// or none.
func (c *Catalogue) eventWith(e record.Event, whole bool) string {
	m, s := c.event(e)
	line, told := c.telling(m, s)
	out := []string{line}
	for _, v := range s.Values[2:] {
		if whole && tells(v) && !told[v.Name] {
			out = append(out, c.Join.Pair.With("name", c.FieldName(e.Body.Kind(), v.Name), "value", c.value(v, "")))
		}
	}
	if by := c.hands(e.Makers); by != "" {
		out = append(out, c.Join.Pair.With("name", c.FieldName("", "makers"), "value", by))
	}
	return c.Clauses(out)
}

// hands names who did it, as the shelf names a lot: by key.
func (c *Catalogue) hands(hs []record.Hand) string {
	var out []string
	for _, h := range hs {
		out = append(out, c.value(record.With("maker", h.Maker), ""))
	}
	return c.List(out)
}

// event is the message of a kind and the values of its fields. A kind without a
// message is told by its name; a kind that only a newer program knows, as such.
func (c *Catalogue) event(e record.Event) (Message, record.Said) {
	k := e.Body.Kind()
	values := append([]record.Value{record.With("panels", len(e.Panels)), record.With("kind", k)}, c.fields(k, "", k.Fields(), reflect.ValueOf(e.Body))...)
	m, ok := c.Events[k]
	if !ok {
		m = "{kind}"
		if _, known := record.Blank(k); !known {
			m = c.Lines.T("newer-kind")
		}
	}
	return m, record.Said{Code: string(k), Values: values}
}

// Whereabouts says where a panel is, as far as recorded.
func Whereabouts(p *record.Panel) record.Said {
	if _, ok := p.Discarded(); ok {
		return record.Say("where-discarded")
	}
	if h, ok := p.Away(); ok {
		return record.Say("where-away", record.With("how", h.Body.How))
	}
	return record.Say("where-here")
}

// LayerLine names a layer and the products it is made of.
func (t *Teller) LayerLine(l record.Layer) string {
	line := t.Layer(l)
	if l.Extra {
		line = t.c.Lines.T("more").With("layer", line)
	}
	var of []record.Part
	switch {
	case l.Cloth != nil && l.Cloth.Cloth != "":
		of = []record.Part{{Parts: 1, Material: l.Cloth.Cloth, Lot: l.Cloth.ClothLot}}
	case l.Cloth == nil && l.Coating != nil:
		of = l.Coating.Mix
	}
	if len(of) == 0 {
		return line
	}
	mix, _ := t.c.fieldOf("coat", "mix", "")
	return t.c.Fill(t.c.Lines.T("products"), Told("layer", line), t.c.fieldValue("coat", "mix", mix, reflect.ValueOf(of)))
}

// Particulars are what a panel is, by name: who made it, of what, how far the
// work has come, what the work is.
func (t *Teller) Particulars() [][2]string {
	d, cut := t.p.Description(), t.p.Cut()
	product := string(cut.Board)
	if m, ok := t.w.Material(cut.Board, cut.BoardAs); ok {
		product = m.Name
	}
	out := [][2]string{
		{t.say("name-made-by"), t.say("made-by", record.With("maker", t.Maker()), record.With("place", t.MakerPlace()))},
		{t.say("name-size"), t.c.Fill("{size}", record.With("size", t.p.Size()))},
		{t.say("name-board"), t.say("board-of", record.With("product", product), record.With("lot", cut.Lot), record.With("grain", cut.Grain))},
		{t.say("name-batch"), string(t.p.Batch)},
		{t.say("name-stage"), t.say("stage-and-where", record.With("stage", t.p.Stage()), Told("where", Say(t.c, Whereabouts(t.p))))},
	}
	if !d.Made.IsZero() {
		out = append(out, [2]string{t.say("name-date-of-work"), t.Day(d.Made)})
	}
	for _, v := range t.c.fields("described", "", record.Kind("described").Fields(), reflect.ValueOf(d)) {
		if len(v.Texts) > 0 && v.Name != "title" && v.Name != "made" {
			out = append(out, [2]string{t.c.FieldName("described", v.Name), t.c.value(v, "")})
		}
	}
	return out
}

func (t *Teller) say(code string, values ...record.Value) string {
	return Say(t.c, record.Say(code, values...))
}
