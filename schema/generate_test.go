package schema_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"unicode"
	"unicode/utf16"

	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/accept"
)

// node is a schema, its members in the order of reading.
type node struct {
	Schema      string           `json:"$schema,omitempty"`
	Ref         string           `json:"$ref,omitempty"`
	Title       string           `json:"title,omitempty"`
	Description string           `json:"description,omitempty"`
	Type        string           `json:"type,omitempty"`
	Const       any              `json:"const,omitempty"`
	Enum        []string         `json:"enum,omitempty"`
	Pattern     string           `json:"pattern,omitempty"`
	MaxLength   int              `json:"maxLength,omitempty"`
	Minimum     int64            `json:"minimum,omitempty"`
	Maximum     int64            `json:"maximum,omitempty"`
	MinItems    int              `json:"minItems,omitempty"`
	MaxItems    int              `json:"maxItems,omitempty"`
	Unique      bool             `json:"uniqueItems,omitempty"`
	Items       *node            `json:"items,omitempty"`
	Required    []string         `json:"required,omitempty"`
	MinProps    int              `json:"minProperties,omitempty"`
	Properties  members          `json:"properties,omitempty"`
	More        any              `json:"additionalProperties,omitempty"`
	AllOf       []*node          `json:"allOf,omitempty"`
	OneOf       []*node          `json:"oneOf,omitempty"`
	If          *node            `json:"if,omitempty"`
	Then        *node            `json:"then,omitempty"`
	Defs        map[string]*node `json:"$defs,omitempty"`
}

type member struct {
	name string
	node *node
}

type members []member

func (ms members) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range ms {
		if i > 0 {
			b.WriteByte(',')
		}
		v, err := plain(m.node)
		if err != nil {
			return nil, err
		}
		fmt.Fprintf(&b, "%q:%s", m.name, v)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

func plain(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return bytes.TrimSpace(b.Bytes()), err
}

// visible escapes what could not be seen in the published file.
func visible(b []byte) []byte {
	var out bytes.Buffer
	for _, r := range string(b) {
		switch {
		case r < 0x7F || accept.CheckLine(string(r)) == nil && !unicode.IsSpace(r):
			out.WriteRune(r)
		case r > 0xFFFF:
			hi, lo := utf16.EncodeRune(r)
			fmt.Fprintf(&out, `\u%04x\u%04x`, hi, lo)
		default:
			fmt.Fprintf(&out, `\u%04x`, r)
		}
	}
	return out.Bytes()
}

type generator struct {
	defs map[string]*node
	docs map[string]string // of types ("Coat") and fields ("Coat.Faces")
}

const (
	figures = `((0|[1-9][0-9]{0,14})(\.[0-9]{1,15})?|([1-9][0-9]{0,14} )?[1-9][0-9]{0,14}/[1-9][0-9]{0,3})`
)

var more = false // no members but those named

// entrySchema makes the schema of an entry from the types of package record.
func entrySchema(t *testing.T) []byte {
	g := &generator{map[string]*node{}, docs(t)}
	root := &node{
		Schema: "https://json-schema.org/draft/2020-12/schema",
		Title:  "backleaf entry",
		Description: "One thing that happened in a studio, version 1. In the journal v, seq and written are always there. What was not recorded is left out; " +
			"the text \"unknown\" says that somebody looked and could not learn it. Amounts and sizes keep the digits and the unit in which they were measured; " +
			"the reader also takes other spellings of them (3,2mm for 3.2 mm) and writes them as described here.",
		Type: "object", Required: []string{"kind"}, Defs: g.defs,
	}
	var kinds []string
	for _, k := range record.Kinds() {
		kinds = append(kinds, string(k))
		root.AllOf = append(root.AllOf, &node{
			If:   &node{Properties: members{{"kind", &node{Const: string(k)}}}},
			Then: &node{Ref: "#/$defs/" + string(k)},
		})
		g.defs[string(k)] = g.kind(k)
	}
	root.Properties = members{{"kind", &node{Enum: kinds}}}
	g.texts()
	b, err := plain(root)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := json.Indent(&out, visible(b), "", "  "); err != nil {
		t.Fatal(err)
	}
	out.WriteByte('\n')
	return out.Bytes()
}

func (g *generator) kind(k record.Kind) *node {
	body, _ := record.Blank(k)
	n := &node{Description: g.docs[reflect.TypeOf(body).Name()], Type: "object", Required: []string{"kind"}, More: &more}
	n.Properties = members{
		{"v", &node{Const: 1}}, {"seq", &node{Ref: "#/$defs/Count"}}, {"kind", &node{Const: string(k)}},
		{"at", &node{Ref: "#/$defs/When"}}, {"written", &node{Ref: "#/$defs/Moment"}},
	}
	n.Properties = append(n.Properties,
		member{"makers", &node{Description: "Who did it; absent: the maker whom the studio's entry names.", Type: "array", MinItems: 1, MaxItems: 200, Items: g.value(reflect.TypeFor[record.Hand](), "")}},
		member{"studio_as", &node{Description: "Entries that describe the studio as it was then; several: one of them, and nobody knows which.", Type: "array", MinItems: 1, Unique: true, Items: &node{Ref: "#/$defs/Count"}}},
		member{"imported", g.value(reflect.TypeFor[record.Imported](), "")})
	if t := k.Traits(); t.Most > 0 {
		n.Properties = append(n.Properties, member{"panels", &node{Type: "array", MinItems: 1, MaxItems: t.Most, Unique: true, Items: &node{Ref: "#/$defs/Number"}}})
		if t.Least > 0 {
			n.Required = append(n.Required, "panels")
		}
	}
	g.fields(n, reflect.TypeOf(body))
	return n
}

func (g *generator) fields(n *node, t reflect.Type) {
	for i := range t.NumField() {
		f := t.Field(i)
		name, opts, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "" {
			g.fields(n, f.Type)
			continue
		}
		if !strings.Contains(opts, "omitzero") {
			n.Required = append(n.Required, name)
		}
		v := g.value(f.Type, f.Tag.Get("is"))
		v.Description = g.docs[t.Name()+"."+f.Name]
		n.Properties = append(n.Properties, member{name, v})
	}
}

func (g *generator) value(t reflect.Type, is string) *node {
	_, text := t.MethodByName("MarshalText")
	switch {
	case t == reflect.TypeFor[jsontext.Value]():
		return &node{Ref: "#/$defs/Change"}
	case text:
		if u, ok := reflect.Zero(t).Interface().(interface{ Units() []string }); ok {
			g.amount(t.Name(), u.Units())
		}
		return &node{Ref: "#/$defs/" + t.Name()}
	case t.Kind() == reflect.Slice:
		return &node{Type: "array", MinItems: 1, MaxItems: 200, Unique: t.Elem().Kind() == reflect.String || t.Elem().Kind() == reflect.Int64, Items: g.value(t.Elem(), is)}
	case t.Kind() == reflect.Struct:
		if g.defs[t.Name()] == nil {
			n := &node{Description: g.docs[t.Name()], Type: "object", MinProps: 1, More: &more}
			g.defs[t.Name()] = n
			g.fields(n, t)
		}
		return &node{Ref: "#/$defs/" + t.Name()}
	case t.Kind() == reflect.Int64:
		return &node{Ref: "#/$defs/Count"}
	case t.Kind() == reflect.Bool:
		return &node{Type: "boolean"}
	case record.Words(t.Name()) != nil:
		words := record.Words(t.Name())
		if record.TakesUnknown(t.Name()) {
			words = append(append([]string(nil), words...), record.Unknown)
		}
		g.defs[t.Name()] = &node{Description: g.docs[t.Name()], Enum: words}
		return &node{Ref: "#/$defs/" + t.Name()}
	}
	if t.Name() == "Key" {
		is = "key"
	}
	if s, ok := accept.Shapes(is); ok {
		g.defs[is] = &node{Description: "Expected: " + s.Meaning + ".", Type: "string", Pattern: s.Pattern}
		return &node{Ref: "#/$defs/" + is}
	}
	if is == "text" {
		return &node{Ref: "#/$defs/Text"}
	}
	return &node{Ref: "#/$defs/Line"}
}

func (g *generator) amount(name string, units []string) {
	for i, u := range units {
		units[i] = regexp.QuoteMeta(u)
	}
	sign := ""
	if name == "Temperature" {
		sign = "-?"
	}
	g.defs[name] = &node{Description: g.docs[name], Type: "string", Pattern: "^(unknown|" + sign + figures + " (" + strings.Join(units, "|") + "))$", MaxLength: 40}
}

// texts adds what is described by hand.
func (g *generator) texts() {
	class := func(bad func(rune) bool) string {
		var s strings.Builder
		from := rune(-1)
		for r := rune(0); r <= unicode.MaxRune+1; r++ {
			if r == 0xD800 {
				r = 0xE000 // surrogates are no characters
			}
			switch in := r <= unicode.MaxRune && bad(r); {
			case in && from < 0:
				from = r
			case !in && from >= 0:
				s.WriteRune(from)
				if last := r - 1; last > from {
					s.WriteRune('-')
					s.WriteRune(last)
				}
				from = -1
			}
		}
		return s.String()
	}
	never := class(func(r rune) bool { return accept.CheckLine(string(r)) != nil })
	space := class(func(r rune) bool { return unicode.IsSpace(r) && accept.CheckLine(string(r)) == nil })
	lines := class(func(r rune) bool { return r != '\n' && accept.CheckLine(string(r)) != nil })
	edge := "[^" + never + space + "]"
	length := regexp.MustCompile(` \((.*)\)\)\$$`).FindStringSubmatch(g.defs["Length"].Pattern)[1]
	add := func(name, description, pattern string, most int) {
		g.defs[name] = &node{Description: description, Type: "string", Pattern: pattern, MaxLength: most}
	}
	add("Line", "One line of text without control or invisible characters and without spaces around it.", "^"+edge+"([^"+never+"]*"+edge+")?$", accept.MaxLine)
	add("Text", "Text of one or more lines, as Line otherwise.", "^"+edge+"([^"+lines+"]*"+edge+")?$", accept.MaxText)
	add("Size", g.docs["Size"], "^((unknown|"+figures+"( ("+length+"))?) x ){1,2}(unknown|"+figures+" ("+length+"))$", 100)
	add("When", g.docs["When"], "^(unknown|[0-9TXYZ:.?~%/+-]+)$", 0)
	add("Moment", "An exact time with its offset.", "^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}(Z|[+-][0-9]{2}:[0-9]{2})$", 0)
	add("Number", g.docs["Number"], "^[BCDFGHJKMNPQRSTVWXZ]{1,4}[0-9]{2}-(000[1-9]|00[1-9][0-9]|0[1-9][0-9]{2}|[1-9][0-9]{3,6})-[0-9BCDFGHJKMNPQRSTVWXZ]$", 0)
	g.defs["Count"] = &node{Description: "A whole number from 1.", Type: "integer", Minimum: 1, Maximum: 1<<53 - 1}
	g.defs["Change"] = &node{Description: "A merge patch (RFC 7396) over the body of the entry; null takes a field away.", Type: "object", MinProps: 1, More: &node{Ref: "#/$defs/ChangeValue"}}
	g.defs["ChangeValue"] = &node{OneOf: []*node{
		{Type: "null"}, {Type: "boolean"}, {Ref: "#/$defs/Count"}, {Type: "string", Pattern: "^[^" + lines + "]+$"},
		{Type: "array", MinItems: 1, Items: &node{Ref: "#/$defs/ChangeValue"}}, {Ref: "#/$defs/Change"},
	}}
}

// docs reads what the types of package record say about themselves.
func docs(t *testing.T) map[string]string {
	out := map[string]string{}
	files, err := filepath.Glob("../record/*.go")
	if err != nil || len(files) == 0 {
		t.Fatal("no source files of package record: ", err)
	}
	for _, name := range files {
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range f.Decls {
			gen, ok := d.(*ast.GenDecl)
			if !ok || gen.Tok != token.TYPE {
				continue
			}
			for _, s := range gen.Specs {
				spec := s.(*ast.TypeSpec)
				doc := spec.Doc
				if doc == nil {
					doc = gen.Doc
				}
				out[spec.Name.Name] = sentence(doc)
				if st, ok := spec.Type.(*ast.StructType); ok {
					for _, fd := range st.Fields.List {
						for _, n := range fd.Names {
							out[spec.Name.Name+"."+n.Name] = sentence(fd.Comment)
						}
					}
				}
			}
		}
	}
	return out
}

func sentence(c *ast.CommentGroup) string {
	s := strings.Join(strings.Fields(c.Text()), " ")
	return strings.NewReplacer("[", "", "]", "").Replace(s)
}
