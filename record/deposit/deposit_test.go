package deposit_test

import (
	"bytes"
	"encoding/csv"
	"encoding/xml"
	"io"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/deposit"
	"backleaf/record/form"
	"backleaf/record/invented"
	"backleaf/record/sheet"
	"backleaf/record/tell"
	"backleaf/schema"
)

// story is the published example: an entry of every kind.
func story(t *testing.T) (*record.Workshop, []record.Entry) {
	t.Helper()
	var file struct {
		Entries []jsontext.Value `json:"entries"`
	}
	if err := json.Unmarshal(schema.Example(), &file); err != nil {
		t.Fatal(err)
	}
	var es []record.Entry
	for i, v := range file.Entries {
		e, err := accept.Parse(v)
		if err != nil {
			t.Fatal(err)
		}
		if e.Seq == 0 {
			e.Seq = int64(i + 1)
		}
		if e.Written.IsZero() {
			e.Written = record.Moment(time.Date(2026, 5, 2, 14, 0, 0, 0, time.UTC))
		}
		es = append(es, e)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	return w, es
}

func tables(t *testing.T) map[string][][]string {
	t.Helper()
	w, es := story(t)
	var stored []form.Stored
	for _, e := range es {
		b, err := form.Write(e)
		if err != nil {
			t.Fatal(err)
		}
		stored = append(stored, form.Stored{Seq: e.Seq, Bytes: b, Entry: e})
	}
	all := deposit.Tables(w, stored)
	out := map[string][][]string{}
	for _, x := range all {
		b, err := x.CSV()
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(bytes.NewReader(b)).ReadAll()
		if err != nil {
			t.Fatalf("%s: %v", x.Name, err)
		}
		for _, r := range rows {
			for i := range r {
				if c := r[i]; c != "" && strings.ContainsRune("=+-@\t\r\n", rune(c[0])) {
					t.Errorf("%s: the cell %q could pass for a formula", x.Name, c)
				}
				r[i] = sheet.Unguard(r[i])
			}
		}
		if !reflect.DeepEqual(rows, x.Rows) {
			t.Errorf("%s does not read back", x.Name)
		}
		out[x.Name] = rows
	}
	return out
}

// Every value of every material, lot and layer of the example, which fills
// every field of every kind, stands in its table.
func TestEveryField(t *testing.T) {
	ts := tables(t)
	w, es := story(t)
	for name, kinds := range map[string][]record.Kind{"materials": {"material"}, "lots": {"lot"}, "layers": {"coat", "cloth-laid", "paint", "varnish"}} {
		head := ts[name][0]
		for _, e := range es {
			if !slices.Contains(kinds, e.Kind()) {
				continue
			}
			b, err := form.Write(e)
			if err != nil {
				t.Fatal(err)
			}
			var fields map[string]any
			if err := json.Unmarshal(b, &fields); err != nil {
				t.Fatal(err)
			}
			for f, v := range fields {
				if slices.Contains([]string{"v", "seq", "kind", "at", "written", "panels", "faces", "extra"}, f) {
					continue
				}
				parts, ok := v.(map[string]any)
				if !ok {
					parts = map[string]any{"": v}
				}
				for part := range parts {
					if column := strings.TrimSuffix(f+"."+part, "."); !slices.Contains(head, column) {
						t.Errorf("table %s has no column %s", name, column)
					}
				}
			}
		}
	}
	if len(ts["materials"]) != 1+len(w.Materials) || len(ts["lots"]) != 1+len(w.Lots) || len(ts["panels"]) != 1+len(w.Panels) || len(ts["journal"]) != 1+len(es) {
		t.Error("a table has too many rows, or too few")
	}
	for i, m := range w.Materials {
		row := ts["materials"][1+i]
		if row[0] != string(m.Body.Key) || row[1] != m.Body.Name || row[slices.Index(ts["materials"][0], "density")] != m.Body.Density.String() {
			t.Errorf("material %s is %q", m.Body.Key, row)
		}
	}
	n := 0
	for _, p := range w.Panels {
		for _, f := range record.Faces {
			n += len(p.BuildUp(f))
		}
	}
	if len(ts["layers"]) != 1+n || n < 5 {
		t.Errorf("%d rows for %d layers", len(ts["layers"])-1, n)
	}
}

// No table has a column for what is private, nor a private digest's plain text.
func TestTablesAreOfTheJournal(t *testing.T) {
	for name, rows := range tables(t) {
		for _, c := range rows[0] {
			if strings.Contains(c, "price") || strings.Contains(c, "buyer") {
				t.Errorf("table %s has a column %s", name, c)
			}
		}
	}
}

const dc, terms = "http://purl.org/dc/elements/1.1/", "http://purl.org/dc/terms/"

// elements reads Dublin Core back as XML with name spaces.
func elements(t *testing.T, b []byte) map[xml.Name][]string {
	t.Helper()
	out := map[xml.Name][]string{}
	d := xml.NewDecoder(bytes.NewReader(b))
	var in xml.Name
	depth := 0
	for {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("%v\n%s", err, b)
		}
		switch x := tok.(type) {
		case xml.StartElement:
			in = x.Name
			depth++
			if depth > 2 {
				t.Fatalf("an element inside an element: %v", in)
			}
		case xml.EndElement:
			depth--
		case xml.CharData:
			if depth == 2 {
				out[in] = append(out[in], string(x))
			}
		}
	}
	return out
}

func TestDublinCore(t *testing.T) {
	w, _ := story(t)
	for _, p := range w.Panels {
		b, err := deposit.DublinCore(tell.English(), w, p)
		if err != nil {
			t.Fatal(err)
		}
		got := elements(t, b)
		if ids := got[xml.Name{Space: dc, Local: "identifier"}]; len(ids) == 0 || ids[0] != string(p.Number) {
			t.Errorf("identifiers %q", ids)
		}
		if made := p.Description().Made; made.Known() && !slices.Contains(got[xml.Name{Space: terms, Local: "created"}], made.String()) {
			t.Errorf("created %q", got)
		}
		if !slices.Contains(got[xml.Name{Space: dc, Local: "creator"}], w.Studio.Maker) {
			t.Errorf("creator %q", got)
		}
	}
}

// A title that looks like markup is text.
func TestHostileTitle(t *testing.T) {
	hostile := `</dc:title><dc:creator>Someone Else</dc:creator> <!-- ]]> & "=1+1"`
	w, es := story(t)
	n := w.Panels[0].Number
	es = append(es, record.Entry{Seq: w.Last + 1, Written: w.Written, Panels: []record.Number{n}, Body: record.Described{Title: hostile}})
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	b, err := deposit.DublinCore(tell.English(), w, w.Panel(n))
	if err != nil {
		t.Fatal(err)
	}
	got := elements(t, b)
	if !slices.Equal(got[xml.Name{Space: dc, Local: "title"}], []string{hostile}) || len(got[xml.Name{Space: dc, Local: "creator"}]) != 1 {
		t.Errorf("read back as %q", got)
	}
}

func TestReadme(t *testing.T) {
	a := deposit.About{Maker: "Ada Example", Date: time.Date(2026, 5, 2, 0, 0, 0, 0, time.UTC), Panels: 1, Example: "KB26-0001-K", Entries: 7, Root: "abcd"}
	for _, x := range []struct {
		change      func(*deposit.About)
		says, never string
	}{
		{func(a *deposit.About) {}, "The studio had no key", "pkeyutl"},
		{func(a *deposit.About) { a.KeyOnRecord = true }, "it was not at hand", "pkeyutl"},
		{func(a *deposit.About) { a.Key = "1234 5678" }, "1234 5678", "NOTHING HERE IS SIGNED"},
		{func(a *deposit.About) { a.Demo = true }, "THIS IS A DEMONSTRATION", "<no value>"},
		{func(a *deposit.About) { a.Missing = []string{"0a0b.png"} }, "0a0b.png", "<no value>"},
		{func(a *deposit.About) { a.Maker = "<b>{{.Root}}" }, "RECORD OF <b>{{.Root}}\n", "<no value>"},
	} {
		b := a
		x.change(&b)
		text, err := deposit.Readme(b)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(text), x.says) || strings.Contains(string(text), x.never) {
			t.Errorf("%q or %q:\n%s", x.says, x.never, text)
		}
		for line := range strings.Lines(string(text)) {
			if len(line) > 101 {
				t.Errorf("a line of %d characters: %s", len(line), line)
			}
		}
	}
}

// The list of a deposit says in words where each panel is.
func TestIndexSaysWhere(t *testing.T) {
	where := []struct {
		body record.Body
		want string
	}{
		{nil, "in the studio"},
		{record.HandedOver{How: "sale"}, "sold"},
		{record.HandedOver{How: "gift"}, "given away"},
		{record.HandedOver{How: "loan"}, "lent"},
		{record.HandedOver{How: "theft"}, "reported stolen"},
		{record.HandedOver{How: "loss"}, "reported lost"},
		{record.HandedOver{How: "unknown"}, "no longer here"},
		{record.Discarded{Because: "split"}, "discarded"},
	}
	at := record.Moment(time.Date(2026, 5, 2, 14, 0, 0, 0, time.UTC))
	es := []record.Entry{{Seq: 1, At: at, Written: at, Body: record.Studio{Maker: "Anna", Mark: "KB"}}}
	add := func(n record.Number, b record.Body) {
		es = append(es, record.Entry{Seq: int64(len(es) + 1), At: at, Written: at, Panels: []record.Number{n}, Body: b})
	}
	for i, x := range where {
		n := invented.Number(i)
		if add(n, record.Cut{}); x.body != nil {
			add(n, x.body)
		}
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	page, err := deposit.Index(tell.English(), w)
	if err != nil {
		t.Fatal(err)
	}
	rows := strings.Split(string(page), "<tr><td>")[1:]
	if len(rows) != len(where) {
		t.Fatalf("%d rows", len(rows))
	}
	for i, x := range where {
		if !strings.Contains(rows[i], "<td>"+x.want+"</td></tr>") {
			t.Errorf("%T %v: %s", x.body, x.body, rows[i])
		}
	}
}
