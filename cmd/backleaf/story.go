package main

import (
	"encoding/json"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"backleaf/record"
)

// storyLine says in one line what an event was, for lists and the journal.
func storyLine(w *record.Workshop, e record.Event) string {
	switch b := e.Body.(type) {
	case record.Studio:
		return "the studio: " + b.Maker + ", mark " + b.Mark
	case record.Material:
		return "material " + string(b.Key) + ": " + b.Name
	case record.Lot:
		return "lot " + string(b.Key) + " of " + string(b.Material) + after(", no. ", b.MakerLot)
	case record.Cut:
		return "cut, batch " + string(b.Batch) + ", " + b.Size.String() + after(", ", shelfName(b.Board, b.Lot))
	case record.Coat:
		return strings.TrimSuffix(orElse(string(b.Purpose), "coat")+", "+coatingText(b.Coating, len(e.Panels)), ", ") + " on " + sayFaces(b.Faces) + extraText(b.Extra)
	case record.ClothLaid:
		return "cloth laid" + after(", ", shelfName(b.Cloth, b.ClothLot)) + after(" in ", coatingText(b.Coating, len(e.Panels))) + ", on " + sayFaces(b.Faces) +
			after(", warp ", strings.ReplaceAll(string(b.Run), "-", " ")) + after(", wet through: ", string(b.WetThrough))
	case record.Trimmed:
		return "trimmed" + after(", ", b.Tool) + after(", edges eased: ", string(b.Eased))
	case record.Sanded:
		s := "sanded " + sayFaces(b.Faces)
		if b.Grit > 0 {
			s += " with " + string(b.Scale) + " " + strconv.FormatInt(b.Grit, 10)
		}
		return s + after(", through to fibre: ", string(b.Through))
	case record.PaintLayer:
		s := orElse(string(b.Medium), "medium not recorded") + " paint" + after(", ", b.Technique)
		for _, p := range b.Pigments {
			s += ", " + p.Name + after(" ", bracket(p.Index))
		}
		return s + after("; underdrawing: ", b.Underdrawing)
	case record.Varnish:
		return "varnish" + after(", ", orElse(b.Resin, coatingText(b.Coating, len(e.Panels)))) + after(", removable: ", string(b.Removable)) + after(" with ", b.RemovedWith)
	case record.Braced:
		return "braced" + after(", ", string(b.Bracing)) + after(", ", string(b.Fixing))
	case record.WarmAir:
		return "warm air" + after(" for ", b.For.String())
	case record.Inspection:
		s := "inspected"
		if !b.Bow.IsZero() {
			s += ", bow " + b.Bow.String() + " over " + b.Span.String() + after(", hollow to ", string(b.Toward))
		}
		return s + after(", edges ", string(b.Edges)) + after(", adhesion ", string(b.Adhesion)) + after("; ", b.Remarks)
	case record.Climate:
		return "climate " + strings.TrimSpace(b.Temperature.String()+" "+b.Humidity.String()) + after(", ", b.Place)
	case record.Described:
		return "described" + after(", ", quoted(b.Title)) + dated(", made ", b.Made) + after(", signed ", b.Signed)
	case record.Photograph:
		return fmt.Sprintf("photograph, %s, %d x %d pixels", b.Role, b.Width, b.Height) + after(": ", b.Caption)
	case record.LabelPrinted:
		return "label printed" + after(", ", b.Layout)
	case record.Issued:
		s := "certificate issued"
		if b.Replaces > 0 {
			s += fmt.Sprintf(", replaces E%d", b.Replaces)
		}
		return s
	case record.Revoked:
		return fmt.Sprintf("certificate E%d taken back: %s", b.Certificate, b.Because)
	case record.HandedOver:
		return "handed over: " + string(b.How) + after("; ", b.Note)
	case record.Forgotten:
		return fmt.Sprintf("private part of E%d erased: %s", b.Entry, b.Because)
	case record.Note:
		return "note: " + b.Text
	case record.Condition:
		return "condition, by " + b.By + ": " + b.Text
	case record.Treatment:
		return "treatment, by " + b.By + ": " + b.Text + after("; with ", b.With) + after("; because ", b.Why)
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

func quoted(s string) string {
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
	return ", more on " + sayFaces(fs)
}

// shelfName names a lot where it is known, else the material.
func shelfName(material, lot record.Key) string {
	if lot != "" && lot != record.Unknown {
		return string(lot)
	}
	return string(material)
}

// coatingText says what a coat is made of and how much of it, for so many
// panels together.
func coatingText(c record.Coating, panels int) string {
	s := sayMix(c.Mix)
	add := func(t string) {
		if t != "" {
			s = strings.TrimPrefix(s+", "+t, ", ")
		}
	}
	if !c.Thinned.IsZero() {
		add("thinned " + c.Thinned.String() + after(" with ", c.Thinner))
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
	add(after("wet film ", c.WetFilm.String()))
	add(after("dry film ", c.DryFilm.String()))
	add(c.Tool)
	return s
}

// sayFields prints every recorded field of a body by its JSON name.
func (a *app) sayFields(body record.Body) error {
	t := a.table()
	fieldRows(t, "", reflect.ValueOf(body))
	return t.done()
}

func fieldRows(t *table, prefix string, v reflect.Value) {
	if s, ok := v.Interface().(fmt.Stringer); ok {
		t.pair(strings.TrimSuffix(prefix, "."), s.String())
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			p := prefix
			if name != "" {
				p += name + "."
			}
			fieldRows(t, p, v.Field(i))
		}
	case reflect.Slice:
		for i := range v.Len() {
			if v.Index(i).Kind() == reflect.Struct {
				fieldRows(t, fmt.Sprintf("%s%d.", prefix, i+1), v.Index(i))
			} else {
				t.pair(strings.TrimSuffix(prefix, "."), fmt.Sprint(v.Index(i).Interface()))
			}
		}
	case reflect.Bool:
		if v.Bool() {
			t.pair(strings.TrimSuffix(prefix, "."), "yes")
		}
	default:
		if !v.IsZero() {
			t.pair(strings.TrimSuffix(prefix, "."), fmt.Sprint(v.Interface()))
		}
	}
}

func valueOf(b record.Body) reflect.Value { return reflect.ValueOf(b) }
