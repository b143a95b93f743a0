package tell_test

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/tell"
)

// examples are entries of every kind with every field, by kind.
func examples(t testing.TB) map[record.Kind][]record.Event {
	t.Helper()
	out := map[record.Kind][]record.Event{}
	for _, text := range exampleTexts(t) {
		e, err := accept.Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		out[e.Kind()] = append(out[e.Kind()], record.Event{Seq: e.Seq, At: e.At, Written: e.Written, Panels: e.Panels, Body: e.Body})
	}
	return out
}

// Every kind of entry has a name and a sentence, every place of the sentence is
// a field of the kind, and every field has a name.
func TestEveryKindAndFieldHasItsWords(t *testing.T) {
	for _, k := range record.Kinds() {
		if tell.English().Words["Kind"][string(k)].Text == "" {
			t.Errorf("the kind %s has no name", k)
		}
		body, _ := record.Blank(k)
		if _, ok := tell.English().Events[k]; !ok {
			t.Errorf("the kind %s has no sentence", k)
		}
		if line := tell.English().Event(record.Event{Body: body}); strings.ContainsAny(line, "{}") {
			t.Errorf("%s: the sentence has places that are no fields: %s", k, line)
		}
		for _, name := range fieldNames(reflect.TypeOf(body)) {
			if tell.English().Words["field"][name].Text == "" && tell.English().Words["field"][string(k)+"."+name].Text == "" {
				t.Errorf("the field %s of %s has no name", name, k)
			}
		}
	}
}

// fieldNames are the names of all fields of a type and of the objects in them.
func fieldNames(t reflect.Type) []string {
	var out []string
	switch {
	case t.Kind() == reflect.Slice:
		return fieldNames(t.Elem())
	case t.Kind() != reflect.Struct:
		return nil
	}
	for i := range t.NumField() {
		name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		if name != "" {
			out = append(out, name)
		}
		out = append(out, fieldNames(t.Field(i).Type)...)
	}
	return out
}

// The whole of an entry leaves a trace of each of its fields: without one of
// them it is told otherwise.
func TestEveryFieldIsTold(t *testing.T) {
	all := examples(t)
	for _, k := range record.Kinds() {
		if len(all[k]) == 0 {
			t.Errorf("no example of the kind %s", k)
		}
		for _, e := range all[k] {
			whole := tell.English().WholeEvent(e)
			if strings.ContainsAny(whole, "{}") {
				t.Errorf("%s: a place is left: %s", k, whole)
			}
			without(t, reflect.ValueOf(e.Body), func(field string, body reflect.Value) {
				e.Body = body.Interface().(record.Body)
				if tell.English().WholeEvent(e) == whole && !forPrograms[field] {
					t.Errorf("%s: nothing is told of %s: %s", k, field, whole)
				}
			})
		}
	}
}

// forPrograms are digests and keys, which say nothing to a reader, and which
// entry describes a material, of which a reader learns where it is not certain.
var forPrograms = map[string]bool{"SHA256": true, "Record": true, "PDF": true, "Fingerprint": true, "PublicKey": true, "Successor": true, "Private": true,
	"Year":    true, // stands in the number
	"Journal": true, "As": true, "BoardAs": true, "ClothAs": true,
	// words of a closed list follow the text beside them
	"ToolIs": true, "ThinnerIs": true, "RemoverIs": true, "ResinIs": true, "BasisIs": true, "Wood": true}

// wordBeside is the word of a closed list beside a text.
var wordBeside = map[string]string{"Tool": "ToolIs", "Thinner": "ThinnerIs", "RemovedWith": "RemoverIs", "Resin": "ResinIs", "Basis": "BasisIs"}

// without calls do with copies of a body that each lack one field.
func without(t testing.TB, body reflect.Value, do func(field string, body reflect.Value)) {
	t.Helper()
	for _, f := range reflect.VisibleFields(body.Type()) {
		if f.Anonymous || body.FieldByIndex(f.Index).IsZero() {
			continue
		}
		less := reflect.New(body.Type()).Elem()
		less.Set(body)
		less.FieldByIndex(f.Index).SetZero()
		if word := less.FieldByName(wordBeside[f.Name]); word.IsValid() {
			word.SetZero()
		}
		do(f.Name, less)
	}
}

// A kind that only a newer program knows is told as such.
func TestNewerKind(t *testing.T) {
	if got := tell.English().Event(record.Event{Body: newer{}}); got != "newer: moon-phase" {
		t.Errorf("got %q", got)
	}
}

type newer struct{}

func (newer) Kind() record.Kind { return "moon-phase" }

func TestEvents(t *testing.T) {
	const cut = `"kind":"cut","panels":["NUMBER"],"batch":"b","size":"30 x 40 cm x 3 mm","board":"ply","grain":"width"`
	mix := `"mix":[{"parts":3,"material":"sealer","lot":"sealer-3"},{"parts":1,"material":"unknown"}]`
	for line, want := range map[string]string{
		cut: "cut, batch b, 30 × 40 cm × 3 mm, ply; grain: along the width",
		`"kind":"coat","panels":["NUMBER"],"purpose":"sealer","faces":["front","back","edges"],"extra":["edges"],` + mix + `,"wet_total":"310 g","tool":"roller","thinned":"10 %","thinned_with":"water"`: "sealer, 3 parts of sealer-3 and 1 part of a material not known, thinned 10 %, with water, 310 g, roller on front, back and edges, more on edges",
		`"kind":"coat","panels":["NUMBER"],"purpose":"unknown","faces":["back"],"wet_each":"unknown"`:                                                                                                     "coat for a purpose not known, amount not known on back",
		`"kind":"paint","panels":["NUMBER"],"medium":"oil","pigments":[{"name":"titanium white","colour_index":"PW 6"},{"name":"green earth"}],"gloss":"satin"`:                                           "oil paint, titanium white (PW 6) and green earth; sheen: satin",
		`"kind":"sanded","panels":["NUMBER"],"faces":["front"],"scale":"P","grit":180,"sanded_through":"unknown"`:                                                                                         "sanded front with P 180, through to fibre: unknown",
		`"kind":"inspection","panels":["NUMBER"],"bow":"0.5 mm","span":"25 cm","hollow_to":"front","edges":"sound"`:                                                                                       "inspected, bow 0.5 mm over 25 cm, hollow at the front, edges sound",
		`"kind":"described","panels":["NUMBER"],"made":"2019-21~","own_reference":"2019-21"`:                                                                                                              "described, made about spring 2019; own reference: 2019-21",
		`"kind":"handed-over","panels":["NUMBER"],"how":"sale"`:                                                                                                                                           "sold",
	} {
		lines := []string{ply, cut, line}
		if line == cut {
			lines = lines[:2]
		}
		k := panelOf(t, lines...)
		got := ordinary.Replace(tell.English().WholeEvent(k.Events[len(k.Events)-1]))
		if got != want {
			t.Errorf("\n got %s\nwant %s", got, want)
		}
	}
}

// Whatever was done, who did it is said back, shown and told among the fields.
func TestWhoDidItIsTold(t *testing.T) {
	for k, es := range examples(t) {
		ev := es[0]
		ev.Makers = []record.Hand{{Maker: "ilze"}, {Maker: "anna"}}
		e := record.Entry{Seq: ev.Seq, At: ev.At, Panels: ev.Panels, Makers: ev.Makers, Body: ev.Body}
		rows := ""
		for _, r := range tell.English().EntryRows(e) {
			rows += tell.English().Labelled(r) + " " + r.Value + "\n"
		}
		if !strings.Contains(rows, "makers (done by) ilze and anna\n") {
			t.Errorf("%s: among the fields nothing of who did it:\n%s", k, rows)
		}
		for _, said := range []string{tell.English().WholeEvent(ev), strings.Join(tell.English().Written([]record.Entry{e}), "\n")} {
			if !strings.Contains(said, "done by: ilze and anna") {
				t.Errorf("%s: nothing of who did it: %s", k, said)
			}
		}
	}
}

// A field is named once where its name says what its place says.
func TestNamedOnce(t *testing.T) {
	for _, c := range [][3]string{{"name", "name", "name"}, {"as_of", "as of", "as_of"}, {"record_sha256", "record, SHA-256", "record_sha256"},
		{"board.thickness", "thickness", "board.thickness"}, {"basis", "values from", "basis (values from)"}} {
		if got := tell.English().Labelled(tell.Row{Path: c[0], Name: c[1]}); got != c[2] {
			t.Errorf("%s, called %q: %q, want %q", c[0], c[1], got, c[2])
		}
	}
}

// At one terminal a moment is told in one zone, in a list and in full, whatever
// zone it was written in.
func TestOneZone(t *testing.T) {
	zone, err := time.LoadLocation("America/New_York")
	if err != nil {
		t.Fatal(err)
	}
	c := tell.English().At(time.Date(2026, 12, 1, 0, 0, 0, 0, time.UTC), zone)
	for _, written := range []string{"2026-11-26T15:57:46Z", "2026-11-26T16:57:46+01:00", "2026-11-26T10:57:46-05:00"} {
		at, err := record.ParseWhen(written)
		if err != nil {
			t.Fatal(err)
		}
		rows := c.EntryRows(record.Entry{At: at, Body: record.Note{Text: "x"}})
		if got := rows[0].Value; got != "26 November 2026, 10:57:46" {
			t.Errorf("%s: %s", written, got)
		}
		if got := c.Fill("{at:near}", record.With("at", at)); got != "26 November 2026, 10:57" {
			t.Errorf("%s: in a list %s", written, got)
		}
	}
}
