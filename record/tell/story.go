package tell

import (
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"backleaf/record"
)

// Event says in one line what an event was, for lists and the journal.
func Event(e record.Event) string {
	switch b := e.Body.(type) {
	case record.Studio:
		return "the studio: " + b.Maker + ", mark " + b.Mark
	case record.Material:
		return "material " + string(b.Key) + ": " + b.Name
	case record.Lot:
		return "lot " + string(b.Key) + " of " + string(b.Material) + After(", no. ", b.MakerLot)
	case record.Cut:
		return "cut, batch " + string(b.Batch) + ", " + b.Size.String() + After(", ", ShelfName(b.Board, b.Lot))
	case record.Coat:
		return strings.TrimSuffix(cmp.Or(string(b.Purpose), "coat")+", "+coatingText(b.Coating, len(e.Panels)), ", ") + " on " + FaceList(b.Faces) + extraText(b.Extra)
	case record.ClothLaid:
		return "cloth laid" + After(", ", ShelfName(b.Cloth, b.ClothLot)) + After(" in ", coatingText(b.Coating, len(e.Panels))) + ", on " + FaceList(b.Faces) +
			After(", warp ", strings.ReplaceAll(string(b.Run), "-", " ")) + After(", wet through: ", string(b.WetThrough))
	case record.Trimmed:
		return "trimmed" + After(", ", b.Tool) + After(", edges eased: ", string(b.Eased))
	case record.Sanded:
		s := "sanded " + FaceList(b.Faces)
		if b.Grit > 0 {
			s += " with " + string(b.Scale) + " " + strconv.FormatInt(b.Grit, 10)
		}
		return s + After(", through to fibre: ", string(b.Through))
	case record.PaintLayer:
		s := cmp.Or(string(b.Medium), "medium not recorded") + " paint" + After(", ", b.Technique)
		for _, p := range b.Pigments {
			s += ", " + p.Name + After(" ", bracket(p.Index))
		}
		return s + After("; underdrawing: ", b.Underdrawing)
	case record.Varnish:
		return "varnish" + After(", ", cmp.Or(b.Resin, coatingText(b.Coating, len(e.Panels)))) + After(", removable: ", string(b.Removable)) + After(" with ", b.RemovedWith)
	case record.Braced:
		return "braced" + After(", ", string(b.Bracing)) + After(", ", string(b.Fixing))
	case record.WarmAir:
		return "warm air" + After(" for ", b.For.String())
	case record.Inspection:
		s := "inspected"
		if !b.Bow.IsZero() {
			s += ", bow " + b.Bow.String() + " over " + b.Span.String() + After(", hollow to ", string(b.Toward))
		}
		return s + After(", edges ", string(b.Edges)) + After(", adhesion ", string(b.Adhesion)) + After("; ", b.Remarks)
	case record.Climate:
		return "climate " + strings.TrimSpace(b.Temperature.String()+" "+b.Humidity.String()) + After(", ", b.Place)
	case record.Described:
		return "described" + After(", ", Quoted(b.Title)) + Dated(", made ", b.Made) + After(", signed ", b.Signed)
	case record.Photograph:
		return fmt.Sprintf("photograph, %s, %d x %d pixels", b.Role, b.Width, b.Height) + After(": ", b.Caption)
	case record.LabelPrinted:
		return "label printed" + After(", ", b.Layout)
	case record.Issued:
		s := "certificate issued"
		if b.Replaces > 0 {
			s += fmt.Sprintf(", replaces E%d", b.Replaces)
		}
		return s
	case record.Revoked:
		return fmt.Sprintf("certificate E%d taken back: %s", b.Certificate, b.Because)
	case record.HandedOver:
		return "handed over: " + string(b.How) + After("; ", b.Note)
	case record.Forgotten:
		return fmt.Sprintf("private part of E%d erased: %s", b.Entry, b.Because)
	case record.Note:
		return "note: " + b.Text
	case record.Condition:
		return "condition, by " + b.By + ": " + b.Text
	case record.Treatment:
		return "treatment, by " + b.By + ": " + b.Text + After("; with ", b.With) + After("; because ", b.Why)
	case record.Discarded:
		return "discarded: " + b.Because
	case record.Amended:
		return fmt.Sprintf("amends E%d: %s (%s)", b.Entry, changeText(b.Change), b.Because)
	case record.Withdrawn:
		return fmt.Sprintf("withdraws E%d (%s)", b.Entry, b.Because)
	}
	return string(e.Body.Kind())
}

// changeText says in words what an amendment sets: "wet total: 240 g".
func changeText(change []byte) string {
	var fields map[string]json.RawMessage
	if json.Unmarshal(change, &fields) != nil {
		return string(change)
	}
	var out []string
	for _, f := range slices.Sorted(maps.Keys(fields)) {
		now := plainJSON(string(fields[f]))
		if now == "null" {
			now = "taken away"
		}
		out = append(out, strings.ReplaceAll(f, "_", " ")+": "+now)
	}
	return strings.Join(out, "; ")
}

// Quoted puts a title in quotation marks; nothing stays nothing.
func Quoted(s string) string {
	if s == "" {
		return ""
	}
	return "“" + s + "”"
}

func bracket(s string) string {
	if s == "" {
		return ""
	}
	return "(" + s + ")"
}

func extraText(fs []record.Face) string {
	if len(fs) == 0 {
		return ""
	}
	return ", more on " + FaceList(fs)
}

// ShelfName names a lot where it is known, else the material.
func ShelfName(material, lot record.Key) string {
	if lot != "" && lot != record.Unknown {
		return string(lot)
	}
	return string(material)
}

// coatingText says what a coat is made of and how much of it, for so many
// panels together.
func coatingText(c record.Coating, panels int) string {
	s := Mix(c.Mix)
	add := func(t string) {
		if t != "" {
			s = strings.TrimPrefix(s+", "+t, ", ")
		}
	}
	if !c.Thinned.IsZero() {
		add("thinned " + c.Thinned.String() + After(" with ", c.Thinner))
	}
	if !c.WetTotal.IsZero() {
		if panels > 1 {
			add(fmt.Sprintf("%s for %d panels", c.WetTotal, panels))
		} else {
			add(c.WetTotal.String())
		}
	}
	if !c.WetEach.IsZero() {
		add(c.WetEach.String() + " each")
	}
	add(After("wet film ", c.WetFilm.String()))
	add(After("dry film ", c.DryFilm.String()))
	add(c.Tool)
	return s
}

// LayerLine says one layer in words, without its date.
func LayerLine(p *record.Panel, l record.Layer) string {
	panels := 1
	for _, e := range p.Events {
		if e.Seq == l.Seq {
			panels = len(e.Panels)
		}
	}
	switch {
	case l.Cloth != nil:
		return "cloth" + After(", ", ShelfName(l.Cloth.Cloth, l.Cloth.ClothLot)) + After(", warp ", strings.ReplaceAll(string(l.Cloth.Run), "-", " "))
	case l.Paint != nil:
		return cmp.Or(string(l.Paint.Medium), "medium not recorded") + " paint" + After(", ", l.Paint.Technique)
	case l.Varnish != nil:
		return "varnish" + After(", ", cmp.Or(l.Varnish.Resin, coatingText(*l.Coating, panels)))
	}
	s := l.Name() + After(", ", coatingText(*l.Coating, panels))
	if l.Extra {
		s += ", more here"
	}
	return s
}

// CorrectionLine says what a correction changed.
func CorrectionLine(c record.Correction) string {
	if c.Withdrawal() {
		return fmt.Sprintf("E%d withdrawn", c.Of)
	}
	var s []string
	for _, ch := range c.Changes {
		s = append(s, fmt.Sprintf("%s: %s → %s", strings.ReplaceAll(ch.Field, "_", " "), plainJSON(ch.Was), plainJSON(ch.Now)))
	}
	return fmt.Sprintf("E%d, %s", c.Of, strings.Join(s, "; "))
}

// plainJSON takes the marks off a simple JSON text for reading.
func plainJSON(s string) string {
	if s == "" {
		return "not recorded"
	}
	if !strings.ContainsAny(s, "{}") {
		s = strings.NewReplacer(`"`, "", "[", "", "]", "", ",", ", ").Replace(s)
	}
	return s
}

// BoardLine names the board of a panel with its lot and grain.
func BoardLine(w *record.Workshop, p *record.Panel) string {
	c := p.Cut()
	if c.Board == "" {
		return "not recorded"
	}
	s := string(c.Board)
	if m, ok := w.Material(c.Board, c.BoardAs); ok {
		s = m.Name
	}
	return s + After(", lot ", string(c.Lot)) + After(", grain along the ", string(c.Grain))
}
