package main

import (
	"bytes"
	"fmt"
	"html"
	"maps"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/go-json-experiment/json"

	"backleaf/certificate/dossier"
	"backleaf/cmd/internal/benchpage"
	"backleaf/cmd/internal/terminal"
	"backleaf/label"
	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/ask"
	"backleaf/record/book"
	"backleaf/record/deposit"
	"backleaf/record/form"
	"backleaf/record/linkedart"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

// object is an entry as JSON, to be changed freely.
type object = map[string]any

// A told is one field of one entry of the published examples.
type told struct {
	kind  record.Kind
	path  string // "board.species", "mix.lot"
	index int    // of the entry
	field record.Field
}

func (f told) String() string { return string(f.kind) + " " + f.path }

// exampleObjects are the published examples, every free text replaced by a
// word that stands nowhere else.
func exampleObjects(t *testing.T) []object {
	data, err := os.ReadFile("../../schema/examples/entries.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Entries []object `json:"entries"`
	}
	if err := json.Unmarshal(data, &file); err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, e := range file.Entries {
		each(e, "", record.Kind(e["kind"].(string)).Fields(), func(_ string, f record.Field, in object) {
			if s, ok := in[f.Name].(string); ok && f.Free() && s != record.Unknown {
				n++
				in[f.Name] = fmt.Sprintf("mark%cxq%c", 'a'+n/20, 'a'+n%20)
			}
		})
	}
	return file.Entries
}

// each calls visit for every field that is set in an object, with its path and
// what holds it.
func each(in object, under string, fields []record.Field, visit func(string, record.Field, object)) {
	for _, f := range fields {
		v, ok := in[f.Name]
		switch {
		case !ok:
		case f.Fields == nil:
			visit(under+f.Name, f, in)
		case f.List:
			for _, x := range v.([]any) {
				each(x.(object), under+f.Name+".", f.Fields, visit)
			}
		default:
			each(v.(object), under+f.Name+".", f.Fields, visit)
		}
	}
}

// fold folds objects as they would be written today.
func fold(t *testing.T, objects []object) ([]record.Entry, *record.Workshop, error) {
	var es []record.Entry
	for _, o := range objects {
		b, err := json.Marshal(o)
		if err != nil {
			t.Fatal(err)
		}
		e, err := accept.Parse(b)
		if err != nil {
			return nil, nil, err
		}
		es = append(es, e)
	}
	w, err := record.Fold(es)
	return es, w, err
}

// A reading is one way in which a reader meets the record.
type reading struct {
	name string
	read func(*testing.T, []record.Entry, *record.Workshop, *record.Panel) string
}

func ofPanel(read func(*testing.T, *record.Workshop, *record.Panel) string) func(*testing.T, []record.Entry, *record.Workshop, *record.Panel) string {
	return func(t *testing.T, _ []record.Entry, w *record.Workshop, p *record.Panel) string { return read(t, w, p) }
}

// panelOf is a panel that an entry is about; the first for one that is about
// none.
func panelOf(w *record.Workshop, e object) *record.Panel {
	if ns, ok := e["panels"].([]any); ok {
		return w.Panel(record.Number(ns[0].(string)))
	}
	return w.Panels[0]
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

var readings = []reading{
	{"show", ofPanel(func(t *testing.T, w *record.Workshop, p *record.Panel) string {
		var out bytes.Buffer
		a := &app{out: &out, err: &out, env: func(string) string { return "" }, now: func() time.Time { return time.Date(2040, 1, 1, 0, 0, 0, 0, time.UTC) }}
		if err := a.story(w, p); err != nil {
			t.Fatal(err)
		}
		return out.String()
	})},
	{"dossier", ofPanel(func(t *testing.T, w *record.Workshop, p *record.Panel) string {
		return must(dossier.New(tell.English(), w, p, dossier.Book{}).Text())
	})},
	{"ask", ofPanel(func(t *testing.T, w *record.Workshop, p *record.Panel) string {
		var b strings.Builder
		for _, topic := range ask.Topics() {
			for _, a := range must(ask.Ask(tell.English(), w, p, time.Date(2040, 1, 1, 0, 0, 0, 0, time.UTC), tell.English().Question(topic))).Answers {
				fmt.Fprintln(&b, a.Topic, strings.Join(a.Lines, "\n"))
			}
		}
		return b.String()
	})},
	{"show --json", ofPanel(func(t *testing.T, w *record.Workshop, p *record.Panel) string {
		return string(must(json.Marshal(questions.StoryOf(w, p))))
	})},
	{"journal ENTRY", func(t *testing.T, es []record.Entry, w *record.Workshop, _ *record.Panel) string {
		var b strings.Builder
		for _, e := range es {
			for _, r := range tell.English().EntryRows(e) {
				fmt.Fprintln(&b, r.Path, r.Name, r.Value)
			}
		}
		return b.String()
	}},
	{"tables", func(t *testing.T, es []record.Entry, w *record.Workshop, _ *record.Panel) string {
		var stored []form.Stored
		for _, e := range es {
			stored = append(stored, form.Stored{Seq: e.Seq, Entry: e, Bytes: must(e.Text())})
		}
		var b strings.Builder
		for _, table := range deposit.Tables(w, stored) {
			b.Write(must(table.CSV()))
		}
		return b.String()
	}},
	{"linked art", ofPanel(func(t *testing.T, w *record.Workshop, p *record.Panel) string {
		var b strings.Builder
		for _, d := range must(linkedart.Documents(w, p)) {
			b.Write(d.JSON)
		}
		return b.String()
	})},
	{"label", ofPanel(func(t *testing.T, w *record.Workshop, p *record.Panel) string {
		in := must(label.Say(tell.English(), w, p, label.StageAuto, ""))
		return fmt.Sprintf("%+v", in)
	})},
	{"bench page", func(t *testing.T, es []record.Entry, _ *record.Workshop, p *record.Panel) string {
		page := &benchpage.Server{Studio: &studio.Session{Book: bookOf(t, es), Clock: time.Now}, ReadOnly: true, Hosts: []string{"bench"}}
		answer := httptest.NewRecorder()
		must(page.Handler()).ServeHTTP(answer, httptest.NewRequest("GET", "http://bench/panel/"+string(p.Number), nil))
		if answer.Code != http.StatusOK {
			t.Fatal(answer.Body)
		}
		return html.UnescapeString(answer.Body.String())
	}},
	{"list --json", func(t *testing.T, es []record.Entry, _ *record.Workshop, p *record.Panel) string {
		var rows []questions.Row
		err := questions.List(t.Context(), bookOf(t, es), questions.Listing{Terms: []string{string(p.Number)}}, func(r questions.Row) error { rows = append(rows, r); return nil })
		return string(must(json.Marshal(must(rows, err))))
	}},
	{"dublin core", ofPanel(func(t *testing.T, w *record.Workshop, p *record.Panel) string {
		return string(must(deposit.DublinCore(tell.English(), w, p)))
	})},
}

// bookOf is a book of entries, one for each list of them.
var bookOf = func() func(*testing.T, []record.Entry) *book.Book {
	books := map[*record.Entry]*book.Book{}
	return func(t *testing.T, es []record.Entry) *book.Book {
		if b := books[&es[0]]; b != nil {
			return b
		}
		b := must(book.Create(t.Context(), filepath.Join(t.TempDir(), "book.sqlite")))
		t.Cleanup(func() { b.Close() })
		must(b.Append(t.Context(), time.Date(2033, 1, 1, 0, 0, 0, 0, time.UTC), es...))
		books[&es[0]] = b
		return b
	}
}()

// inFull are the readings that leave nothing out that a reader may ask for.
var inFull = []string{"show", "show --json", "dossier", "ask", "tables", "bench page"}

// notTold says why fields leave no trace in a reading that is whole; they are
// named by kind, by field, or by both.
var notTold = []struct{ where, fields, why string }{
	{"show, show --json, dossier, ask, bench page", "studio key-made key-retired key-lost recipe private-erased", "about no panel; journal ENTRY tells them"},
	{"show, show --json, dossier, ask, bench page", "sha256 media_type record_sha256 pdf_sha256 private_sha256", "for programs; the files are named by them"},
	{"show, show --json, dossier, ask, bench page", "material_as board_as cloth_as", "tells which description is meant, and that is what is told"},
	{"show, show --json, dossier, ask, bench page", "key maker.voice maker.note lot.material", "names and remarks of the shelf"},
	{"show, show --json, bench page", "material lot", "told by material show, lot trace and journal ENTRY"},
	{"show, show --json, ask, bench page", "climate", "of the room; the dossier has the readings between the first step and the last"},
	{"show, show --json, dossier, ask, bench page", "lot.offcut_of", "of a lot from which no panel was made"},
	{"dossier, ask", "paint.faces varnish.faces", "front, as where none is recorded"},
	{"dossier, ask", "mix.material", "told by the name of what is meant"},
	{"dossier", "cut.board cut.board_lot cloth.cloth mix.lot", "told by the name and the number on the tin"},
	{"dossier", "material.uses", "of the shelf; each layer says what it served as"},
	{"tables", "amended.change", "as JSON"},
	{"dossier, show --json", "published", "of the page, not of the panel"},
	{"show, ask, dossier", "cut.year", "stands in the number"}, {"dossier", "photograph.width_px photograph.height_px", "of the file, which is named by its digest"},
	{"show, dossier, ask, bench page", "mix.parts", "of one thing there are no parts"},
	{"show, ask, dossier, show --json, bench page", "amended withdrawn", "told as what they changed"},
	{"show --json", "studio", "of the studio"},
}

// brief are the readings with little room, and what each must tell; the record
// that it names has the rest.
var brief = map[string]string{
	"label": "maker.name resized.size coat.purpose coat.faces material.binder material.board.species material.cloth.fibre paint.medium varnish.resin described.title described.made " +
		"treatment.text studio.contact studio.link_base",
	"linked art":  "resized.size coat.faces material.name described.title described.made described.medium_line described.signed described.inscription described.subject condition.text condition.by treatment.text treatment.with treatment.by paint.technique",
	"list --json": "cut.batch cut.board_lot resized.size described.title described.made described.own_reference handed-over.how",
	"dublin core": "described.title described.made described.subject described.medium_line described.distinguishing_features described.own_reference described.type_of_object",
}

// plainly puts what is printed and what is recorded into one spelling.
func plainly(s string) string { return strings.ToLower(terminal.Wrap(s, 0)) }

// inALine is plainly so, wherever lines break.
func inALine(s string) string { return strings.Join(strings.Fields(plainly(s)), " ") }

// names reports that a list of kinds, fields and both names a field.
func names(list string, f told) bool {
	last := f.path[strings.LastIndex(f.path, ".")+1:]
	for _, n := range strings.Fields(list) {
		if n == string(f.kind) || n == f.path || n == last || n == string(f.kind)+"."+f.path {
			return true
		}
	}
	return false
}

// Every field of every kind leaves a trace wherever a reader meets the record:
// its value stands there oftener with the field than without, or what is read
// is another. What leaves none is in the list above, with the reason.
func TestTraces(t *testing.T) {
	toolcheck.Long(t) // each field is left out once
	objects := exampleObjects(t)
	es, w, err := fold(t, objects)
	if err != nil {
		t.Fatal(err)
	}
	read := map[string]string{} // by reading and panel
	reading := func(r reading, p *record.Panel) string {
		at := r.name + string(p.Number)
		if _, done := read[at]; !done {
			read[at] = inALine(r.read(t, es, w, p))
		}
		return read[at]
	}
	idle := map[string]bool{}
	for _, n := range notTold {
		idle[n.where+": "+n.fields] = true
	}
	for _, f := range fieldsOf(objects) {
		marks := marksOf(objects[f.index], f)
		changed, differs := otherwise(t, objects, f)
		es2, w2, err := fold(t, changed)
		if err != nil || f.field.Free() {
			differs = false // it belongs to another field; or its words stand nowhere else
		}
		for _, r := range readings {
			if !slices.Contains(inFull, r.name) && !names(brief[r.name], f) {
				continue
			}
			excused := ""
			for _, n := range notTold {
				if slices.Contains(strings.Split(n.where, ", "), r.name) && names(n.fields, f) {
					excused = n.where + ": " + n.fields
				}
			}
			if excused != "" {
				delete(idle, excused)
				continue
			}
			full, without := reading(r, panelOf(w, objects[f.index])), ""
			if differs {
				without = inALine(r.read(t, es2, w2, panelOf(w2, objects[f.index])))
			}
			if !slices.ContainsFunc(marks, func(m string) bool {
				m = inALine(m)
				n := strings.Count(full, m)
				// A word may stand there for another field too: then it is the
				// reading that changes.
				return n > strings.Count(without, m) || n > 0 && differs && !f.field.Free() && full != without
			}) {
				t.Errorf("%s: no trace of %s (%q)", r.name, f, marks)
			}
		}
	}
	for _, n := range slices.Sorted(maps.Keys(idle)) {
		t.Errorf("nothing is excused by %q", n)
	}
}

func fieldsOf(objects []object) []told {
	var out []told
	for i, o := range objects {
		k := record.Kind(o["kind"].(string))
		each(o, "", k.Fields(), func(path string, f record.Field, _ object) {
			if !slices.ContainsFunc(out, func(x told) bool { return x.kind == k && x.path == path }) {
				out = append(out, told{k, path, i, f})
			}
		})
	}
	return out
}

// marksOf are the ways in which the value of a field may be told.
func marksOf(o object, f told) []string {
	e := must(accept.Parse(must(json.Marshal(o))))
	var marks []string
	for _, r := range tell.English().Rows(e.Body) {
		if r.Path == f.path {
			marks = append(marks, r.Value)
		}
	}
	each(o, "", f.kind.Fields(), func(path string, _ record.Field, in object) {
		if path != f.path {
			return
		}
		list, ok := in[f.field.Name].([]any)
		if !ok {
			list = []any{in[f.field.Name]}
		}
		for _, x := range list {
			text := fmt.Sprint(x)
			marks = append(marks, text, strings.ReplaceAll(text, "-", " "), strings.TrimSuffix(text, " %"), strings.ReplaceAll(text, " x ", " × "))
		}
	})
	return marks
}

// otherwise are the same entries without a field, or with another value where
// the field must be there; differs is false if there is no other value.
func otherwise(t *testing.T, objects []object, f told) (out []object, differs bool) {
	if err := json.Unmarshal(must(json.Marshal(objects)), &out); err != nil {
		t.Fatal(err)
	}
	each(out[f.index], "", f.kind.Fields(), func(path string, field record.Field, in object) {
		if path != f.path {
			return
		}
		was := in[field.Name]
		if !field.Required {
			delete(in, field.Name)
		} else {
			in[field.Name] = another(field, was)
		}
		differs = differs || fmt.Sprint(was) != fmt.Sprint(in[field.Name])
	})
	return out, differs
}

// another is another value of a field.
func another(f record.Field, than any) any {
	switch x := than.(type) {
	case []any:
		return []any{another(f, x[0])}
	case string:
		for _, w := range f.Words() {
			if w != x {
				return w
			}
		}
		if f.Free() {
			return "another text"
		}
	}
	return than
}
