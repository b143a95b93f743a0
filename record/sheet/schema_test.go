package sheet_test

import (
	"bytes"
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"backleaf/record/sheet"
	"backleaf/schema"
)

func published(t *testing.T) *jsonschema.Schema {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(schema.Mapping()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("file:///mapping.schema.json", v); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("file:///mapping.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestSchema: the published schema names the fields and words that are read.
func TestSchema(t *testing.T) {
	var s struct {
		Properties struct {
			Dates struct{ Enum []string }
		}
		Defs struct {
			Field struct {
				OneOf []struct{ Const, Description string }
			}
		} `json:"$defs"`
	}
	if err := json.Unmarshal(schema.Mapping(), &s); err != nil {
		t.Fatal(err)
	}
	var got []sheet.Field
	for _, f := range s.Defs.Field.OneOf {
		got = append(got, sheet.Field{Name: f.Const, Meaning: f.Description})
	}
	if !slices.Equal(got, sheet.Fields) {
		t.Errorf("fields of the schema: %v", got)
	}
	if !slices.Equal(s.Properties.Dates.Enum, sheet.DateForms) {
		t.Errorf("dates of the schema: %v", s.Properties.Dates.Enum)
	}
}

func exampleMapping(t *testing.T) []byte {
	t.Helper()
	data, err := os.ReadFile("../../schema/examples/mapping.json")
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// TestAgreement: schema and reader accept the same mappings. The one thing
// that a schema cannot say is that no field stands twice.
func TestAgreement(t *testing.T) {
	s := published(t)
	base := string(exampleMapping(t))
	for _, x := range []struct{ from, to string }{
		{"", ""}, {`"v": 1`, `"v": 2`}, {`"mapping"`, `"entries"`}, {`"own_reference"`, `"reference"`}, {`"batch"`, `"bundle"`},
		{`"cm"`, `"ft"`}, {`"EUR"`, `"euro"`}, {"DD.MM.YYYY", "D.M.Y"}, {`"shelf"`, `"shelves"`}, {`"3"`, `3`}, {`"usual": "`, `"other": "x", "usual": "`},
		{`"depth_unit": "mm",`, ``}, {`"varnish": {`, `"glaze": {`},
	} {
		text := strings.Replace(base, x.from, x.to, 1)
		v, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
		if err != nil {
			t.Fatalf("%s: %v", x.to, err)
		}
		bySchema := s.Validate(v)
		_, byReader := sheet.ParseMapping([]byte(text))
		if (bySchema == nil) != (byReader == nil) {
			t.Errorf("%s for %s: the schema says %v, the reader %v", x.to, x.from, bySchema, byReader)
		}
		if x.from == "" && bySchema != nil {
			t.Errorf("the example: %v", bySchema)
		}
	}
}

// TestExample: the published example reads as it should.
func TestExample(t *testing.T) {
	data, err := os.ReadFile("../../schema/examples/panels.csv")
	if err != nil {
		t.Fatal(err)
	}
	m, err := sheet.ParseMapping(exampleMapping(t))
	if err != nil {
		t.Fatal(err)
	}
	for from, to := range map[string]string{"ply": "birch-ply", "linen": "linen", "gesso": "white", "clear": "gloss"} {
		m.Shelf[from] = to // on the small shelf of these tests
	}
	m.Words["coats"]["usual"] = "sealer on all; cloth; gesso on front x3"
	s, err := sheet.Read(data, m, options(t))
	if err != nil || len(s.Refused) > 0 || len(s.Rows) != 3 || len(s.Unread) > 0 {
		t.Fatal(err, s)
	}
	want := `{at:unknown,batch:old,board:birch-ply,kind:cut,own_reference:17,size:30 x 40 cm x 3 mm}
{faces:[front,back,edges],kind:coat,mix:[{material:sealer,parts:1}]}
{cloth:linen,faces:[front],kind:cloth}
{faces:[front],kind:coat,mix:[{material:white,parts:1}],purpose:ground}
{faces:[front],kind:coat,mix:[{material:white,parts:1}],purpose:ground}
{faces:[front],kind:coat,mix:[{material:white,parts:1}],purpose:ground}
{kind:paint,medium:oil}
{kind:varnish,mix:[{material:gloss,parts:1}]}
{at:2026-05-02T16:00:00+03:00,kind:described,made:1998~,title:Dune, evening}
{at:1999-05,how:sale,kind:handed-over}`
	if got := told(t, s.Rows[0]); got != want {
		t.Errorf("%s", got)
	}
	if p := s.Rows[0].Private; p != (sheet.Private{To: "M. Ozola", Price: "900 EUR"}) {
		t.Errorf("%+v", p)
	}
	if got := told(t, s.Rows[1]); !strings.Contains(got, "size:30 x 40.5 cm x 3 mm") || strings.Contains(got, "varnish") || strings.Contains(got, "handed-over") {
		t.Errorf("%s", got)
	}
	if got := told(t, s.Rows[2]); !strings.Contains(got, "size:24 x 18 in x 3 mm") || !strings.Contains(got, "board:unknown") || !strings.Contains(got, "resin:unknown") {
		t.Errorf("%s", got)
	}
}
