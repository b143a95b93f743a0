package tell

import (
	"reflect"
	"slices"
	"strings"
	"unicode"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
)

// A Row is one recorded field: where it stands in the record ("board.species"),
// what it is called, and its value. Nothing is shortened.
type Row struct{ Path, Name, Value string }

// Labelled is where a field stands, and what it is called where that says more:
// "density", "basis (values from)".
func (c *Catalogue) Labelled(r Row) string {
	letters := func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}
	if strings.HasSuffix(strings.Map(letters, r.Path), strings.Map(letters, r.Name)) {
		return r.Path
	}
	return c.Join.Bracket.With("text", r.Path, "aside", r.Name)
}

// Rows are all the recorded fields of a body, in order.
func (c *Catalogue) Rows(b record.Body) []Row {
	return c.rows(b.Kind(), "", b.Kind().Fields(), reflect.ValueOf(b))
}

// Others are the recorded fields of a body apart from those that are told
// elsewhere, for a reader: neither digests and keys nor what is known anyway.
func (c *Catalogue) Others(b record.Body, elsewhere ...string) []Row {
	var out []Row
	k := b.Kind()
	for _, v := range c.fields(k, "", k.Fields(), reflect.ValueOf(b)) {
		if tells(v) && !slices.Contains(elsewhere, v.Name) {
			out = append(out, Row{v.Name, c.FieldName(k, v.Name), c.value(v, "")})
		}
	}
	return out
}

// OtherClauses are [Catalogue.Others] in one line.
func (c *Catalogue) OtherClauses(b record.Body, elsewhere ...string) string {
	var out []string
	for _, r := range c.Others(b, elsewhere...) {
		out = append(out, c.Join.Named.With("name", r.Name, "value", r.Value))
	}
	return c.Clauses(out)
}

// EntryRows are those of an entry: when it happened and was written down, by
// whom it was done, then its body.
func (c *Catalogue) EntryRows(e record.Entry) []Row {
	var out []Row
	for _, at := range []struct {
		name string
		when record.When
	}{{"at", e.At}, {"written", e.Written}} {
		if !at.when.IsZero() {
			out = append(out, Row{at.name, c.FieldName("", at.name), c.one("When", at.when.String(), "exact")})
		}
	}
	if by := c.hands(e.Makers); by != "" {
		out = append(out, Row{"makers", c.FieldName("", "makers"), by})
	}
	if e.Imported.From != "" {
		out = append(out, Row{"imported/from", c.FieldName("", "imported"), e.Imported.From})
	}
	if !e.Imported.At.IsZero() {
		out = append(out, Row{"imported/at", c.FieldName("", "imported"), c.one("When", e.Imported.At.String(), "exact")})
	}
	return append(out, c.Rows(e.Body)...)
}

// Since marks in the fields of an entry what amendments that count made of them.
func (c *Catalogue) Since(k record.Kind, rows []Row, corrected []record.Said) []Row {
	for _, s := range corrected {
		if s.Code == "amended-by" && s.Value("undone").Texts == nil {
			c.since(k, "", jsontext.Value(s.Value("change").Text()), rows, s)
		}
	}
	return rows
}

func (c *Catalogue) since(k record.Kind, under string, patch jsontext.Value, rows []Row, s record.Said) {
	var fields map[string]jsontext.Value
	_ = json.Unmarshal(patch, &fields) // it was read before
	for name, v := range fields {
		path, now := under+name, string(v)
		if v.Kind() == '{' {
			c.since(k, path+".", v, rows, s)
		} else if v.Kind() == 'n' {
			now = ""
		}
		for i, r := range rows {
			if r.Path == path {
				rows[i].Value = Say(c, record.Say("value-since", Told("was", r.Value), Told("now", c.field(k, path, now)), s.Value("panels"), s.Value("by")))
			}
		}
	}
}

func (c *Catalogue) rows(k record.Kind, under string, fields []record.Field, v reflect.Value) []Row {
	var out []Row
	for _, f := range fields {
		_, name, _ := strings.Cut(f.Go, ".")
		x, path := v.FieldByName(name), under+f.Name
		if f.Fields != nil && !f.List {
			out = append(out, c.rows(k, path+".", f.Fields, x)...)
			continue
		}
		value := c.fieldValue(k, path, f, x)
		if len(value.Texts) == 0 {
			continue
		}
		text := value.Text()
		if value.Type != digest {
			text = c.value(value, "exact")
		}
		out = append(out, Row{path, c.FieldName(k, path), text})
	}
	return out
}
