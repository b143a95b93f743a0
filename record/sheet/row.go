package sheet

import (
	"cmp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"backleaf/record"
	"backleaf/record/accept"
)

// told names, for a field that says more of something, what it speaks of.
var told = map[string]string{
	"coats_date": "coats", "adhesive": "cloth", "threads": "cloth", "cloth_date": "cloth", "paint_date": "paint",
	"removable": "varnish", "gloss": "varnish", "varnish_date": "varnish", "discarded_date": "discarded",
}

// read turns the row into entries in the order of the work.
func (r *rowReader) read() Row {
	r.out = Row{Line: r.line}
	r.cut()
	r.layers()
	r.paint()
	r.varnish()
	r.described()
	r.handover()
	if why := r.get("discarded"); why != "" {
		r.has["discarded"] = true
		r.add(r.date("discarded_date"), record.Discarded{Because: why}, map[string]string{"because": "discarded"})
	}
	for _, f := range Fields {
		if of := told[f.Name]; of != "" && r.cell(f.Name) != "" && r.get(f.Name) != "" && !r.has[of] {
			r.refuse(f.Name, "it says more of a thing (%s) that this row does not have", of)
		}
	}
	return r.out
}

func (r *rowReader) cut() {
	c := record.Cut{Size: r.size(), Grain: record.Grain(r.word("grain", "Grain")), Owner: r.get("own_reference"), Note: r.get("note")}
	if b := r.get("batch"); b != "" {
		c.Batch = record.Key(strings.ToLower(strings.Join(strings.Fields(b), "-")))
	} else {
		c.Batch = record.Key(r.Now.Format("2006-01-02"))
	}
	if b := r.get("board"); b != "" {
		var err error
		if c.Board, c.Lot, err = r.onShelf(b); err != nil {
			r.refuse("board", "%v", err)
		}
	}
	if ref := strings.ToLower(c.Owner); ref != "" {
		if why := r.taken[ref]; why != "" {
			r.refuse("own_reference", "%s", why)
		} else {
			r.taken[ref] = "this reference stands in an earlier row too"
		}
		r.out.Reference = c.Owner
	}
	if len(r.refused) > 0 && c.Size.IsZero() {
		return // what is wrong with the size has been said
	}
	r.add(r.date("cut"), c, map[string]string{"own_reference": "own_reference", "note": "note", "batch": "batch", "size": r.sizeField()})
}

func (r *rowReader) sizeField() string {
	if _, ok := r.column["size"]; ok {
		return "size"
	}
	return "height"
}

// size joins the size from one column or three.
func (r *rowReader) size() record.Size {
	whole, h, w, d := r.get("size"), r.get("height"), r.get("width"), r.get("depth")
	if whole != "" && (r.cell("height") != "" || r.cell("width") != "") {
		r.refuse("size", "the size is given twice, as one and as height and width")
		return record.Size{}
	}
	if strings.EqualFold(whole, record.Unknown) {
		whole = record.Unknown + " x " + record.Unknown
	}
	if whole == "" {
		switch {
		case h == "" && w == "":
			r.refuse(r.sizeField(), "the size is missing; write unknown where nobody knows it")
			return record.Size{}
		case h == "":
			r.refuse("height", "the height is missing")
			return record.Size{}
		case w == "":
			r.refuse("width", "the width is missing")
			return record.Size{}
		}
		h, w = withUnit(h, r.mapping.Unit), withUnit(w, r.mapping.Unit)
		good := true
		for _, side := range []struct{ field, text string }{{"height", h}, {"width", w}} {
			if _, err := record.ParseSize(side.text + " x " + side.text); err != nil {
				r.refuse(side.field, "not a length: expected one like 30 cm, 12 1/2 in or unknown")
				good = false
			}
		}
		if !good {
			return record.Size{}
		}
		whole = h + " x " + w
	}
	whole = withUnit(whole, r.mapping.Unit)
	s, err := record.ParseSize(whole)
	if err == nil && d != "" && (s.Depth.IsZero() || r.cell("depth") != "") {
		if !s.Depth.IsZero() {
			r.refuse("depth", "the thickness is given twice, in the size too")
			return record.Size{}
		}
		unit := r.mapping.DepthUnit
		if unit == "" {
			unit = r.mapping.Unit
		}
		if s, err = record.ParseSize(whole + " x " + withUnit(d, unit)); err != nil {
			r.refuse("depth", "not a length: expected one like 3 mm, 1/8 in or unknown")
			return record.Size{}
		}
	}
	if err != nil {
		r.refuse(r.sizeField(), "%s: expected a size like 30 x 40 cm, 8 x 10 x 1/8 in or unknown", wrongSide(whole, err))
	}
	return s
}

// wrongSide is the side of a size that is no length, or what else is wrong with it.
func wrongSide(whole string, err error) string {
	for _, side := range strings.FieldsFunc(whole, func(c rune) bool { return strings.ContainsRune("xX×*", c) }) {
		if _, err := record.ParseSize(withUnit(side, "cm") + " x 1 cm"); err != nil {
			return strconv.Quote(clip(strings.TrimSpace(side))) + " is not a length"
		}
	}
	_, why, _ := strings.Cut(err.Error(), ": ")
	why, _, _ = strings.Cut(why, "; expected")
	return why
}

// withUnit gives a figure without a unit the usual one.
func withUnit(s string, unit record.LengthUnit) string {
	s = strings.TrimSpace(s)
	last, _ := utf8.DecodeLastRuneInString(s)
	if unit == "" || !strings.ContainsRune("0123456789.,½¼¾⅛⅜⅝⅞", last) {
		return s
	}
	return s + " " + string(unit)
}

func (r *rowReader) paint() {
	p := record.PaintLayer{Medium: record.PaintMedium(r.word("paint", "PaintMedium")), Technique: r.get("technique")}
	if p.Medium != "" || p.Technique != "" {
		r.has["paint"] = true
		r.add(r.date("paint_date"), p, map[string]string{"technique": "technique"})
	}
}

func (r *rowReader) varnish() {
	what, resin := r.get("varnish"), r.get("resin")
	if what == "" && resin == "" {
		return
	}
	r.has["varnish"] = true
	v := record.Varnish{Resin: resin, Removable: record.Answer(r.word("removable", "Answer")), Gloss: record.Gloss(r.word("gloss", "Gloss"))}
	switch {
	case strings.EqualFold(what, record.Unknown):
		if resin == "" {
			v.Resin = record.Unknown
		}
	case what != "":
		var err error
		if v.Mix, err = r.mix(what); err != nil {
			r.refuse("varnish", "%v", err)
		}
	}
	r.add(r.date("varnish_date"), v, map[string]string{"resin": "resin"})
}

func (r *rowReader) described() {
	d := record.Described{Title: r.get("title"), Made: r.date("made"), Subject: r.get("subject"), Inscription: r.get("inscription"),
		Signed: r.get("signed"), Features: r.get("features"), Type: r.get("type"), Medium: r.get("medium_line")}
	if d != (record.Described{}) {
		r.add(record.Moment(r.Now), d, map[string]string{"title": "title", "subject": "subject", "inscription": "inscription", "signed": "signed",
			"distinguishing_features": "features", "type_of_object": "type", "medium_line": "medium_line"})
	}
	if text := r.get("remarks"); text != "" {
		r.add(record.When{}, record.Note{Text: text}, map[string]string{"text": "remarks"})
	}
}

// handover reads how the panel left. The private part goes its own way.
func (r *rowReader) handover() {
	p := Private{To: r.get("handover_to"), Price: r.get("handover_price"), Note: r.get("handover_private_note")}
	note, cells := r.get("handover_note"), ""
	for _, f := range []string{"handover", "handover_date", "handover_to", "handover_price", "handover_private_note", "handover_note"} {
		cells += r.cell(f)
	}
	if cells == "" {
		return // a constant alone hands nothing over
	}
	how := r.word("handover", "Parting")
	if how == "" {
		for _, f := range []string{"handover_date", "handover_to", "handover_price", "handover_private_note", "handover_note"} {
			if r.cell(f) != "" && r.get(f) != "" {
				r.refuse(f, "how it left is missing; give it a column, or a constant for \"handover\"")
				break
			}
		}
		return
	}
	if p.Price != "" {
		if r.mapping.Currency != "" && !strings.ContainsFunc(p.Price, func(c rune) bool { return unicode.IsLetter(c) || unicode.Is(unicode.Sc, c) }) {
			p.Price += " " + r.mapping.Currency
		}
		if err := r.Price(p.Price); err != nil {
			_, why, _ := strings.Cut(err.Error(), `": `)
			r.refuse("handover_price", "%s", cmp.Or(why, err.Error()))
		}
	}
	for f, text := range map[string]string{"handover_to": p.To, "handover_private_note": p.Note} {
		if err := accept.CheckLine(strings.ReplaceAll(text, "\n", "")); err != nil {
			r.refuse(f, "%v", err)
		}
	}
	r.out.Handover, r.out.Private = len(r.out.Entries), p
	r.add(r.date("handover_date"), record.HandedOver{How: record.Parting(how), Note: note}, map[string]string{"note": "handover_note"})
}
