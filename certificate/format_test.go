package certificate_test

import (
	"encoding/base64"
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"backleaf/certificate"
	"backleaf/record/toolcheck"
)

// The page content is PDF/A-1b by Apache PDFBox Preflight: with a photograph,
// without, and with a second page.
func TestPreflight(t *testing.T) {
	pictured := finished(t)
	pictured.photo(jpegFile(t, shore(400, 300)))
	for name, k := range map[string]*bench{"pictured": pictured, "sixty-layers": stress()["sixty-layers"](t), "hostile": stress()["hostile"](t)} {
		pdf, err := certificate.DrawA1b(k.input(k.key()))
		if err != nil {
			t.Fatal(err)
		}
		if out, err := toolcheck.Preflight(t, save(t, name+".pdf", pdf)); err != nil {
			t.Errorf("%s: %v\n%s", name, err, out)
		}
	}
}

// The rules of ISO 19005-3 for level B that concern a certificate, read by an
// independent program. No validator for PDF/A-3 is at hand, so no more is
// claimed than that the file is built to them.
func TestA3bRules(t *testing.T) {
	pdf, _ := signed(t, "a4")
	path := save(t, "c.pdf", pdf)
	if out := toolcheck.Run(t, "qpdf", "--check", path); !strings.Contains(out, "No syntax or stream encoding errors found") {
		t.Error(out)
	}
	var doc struct {
		Qpdf []map[string]json.RawMessage `json:"qpdf"`
	}
	if err := json.Unmarshal([]byte(toolcheck.Run(t, "qpdf", "--json=2", "--json-stream-data=inline", "--decode-level=generalized", path)), &doc); err != nil || len(doc.Qpdf) != 2 {
		t.Fatalf("qpdf --json: %v", err)
	}
	objects := map[string]any{}
	for name, raw := range doc.Qpdf[1] {
		var o struct {
			Value  any `json:"value"`
			Stream any `json:"stream"`
		}
		if err := json.Unmarshal(raw, &o); err != nil {
			t.Fatal(err)
		}
		if objects[name] = o.Value; o.Stream != nil {
			objects[name] = o.Stream
		}
	}
	reference := regexp.MustCompile(`^\d+ \d+ R$`)
	var get func(o any, keys ...string) any
	get = func(o any, keys ...string) any {
		if s, ok := o.(string); ok && reference.MatchString(s) {
			o = objects["obj:"+s]
		}
		if len(keys) == 0 {
			return o
		}
		d, _ := o.(map[string]any)
		return get(d[keys[0]], keys[1:]...)
	}
	list := func(o any) []any { l, _ := o.([]any); return l }
	rule := func(clause string, ok bool) {
		t.Helper()
		if !ok {
			t.Errorf("ISO 19005-3, %s: not kept", clause)
		}
	}
	trailer := objects["trailer"]
	catalog := get(trailer, "/Root")
	rule("6.1.2 version", strings.HasPrefix(string(pdf), "%PDF-1.7\n"))
	rule("6.1.3 ID", len(list(get(trailer, "/ID"))) == 2 && get(trailer, "/Encrypt") == nil)
	intents := list(get(catalog, "/OutputIntents"))
	rule("6.2.3 output intent", len(intents) == 1 && get(intents[0], "/S") == "/GTS_PDFA1" && get(intents[0], "/DestOutputProfile", "dict", "/N") == 3.0)
	data, _ := get(catalog, "/Metadata", "data").(string)
	xmp, err := base64.StdEncoding.DecodeString(data)
	rule("6.6.4 part and level", err == nil && strings.Contains(string(xmp), "<pdfaid:part>3</pdfaid:part>") && strings.Contains(string(xmp), "<pdfaid:conformance>B</pdfaid:conformance>"))
	names := map[string]string{} // file name to relation
	for _, f := range list(get(catalog, "/AF")) {
		name, _ := get(f, "/UF").(string)
		relation, _ := get(f, "/AFRelationship").(string)
		kind, _ := get(f, "/EF", "/F", "dict", "/Subtype").(string)
		names[strings.TrimPrefix(name, "u:")] = relation
		rule("6.8 media type of "+name, strings.Contains(kind, "/") && len(kind) > 3)
		rule("6.8 date of "+name, get(f, "/EF", "/F", "dict", "/Params", "/ModDate") != nil)
	}
	for _, name := range files {
		want := "/Supplement"
		if name == "record.json" {
			want = "/Source"
		}
		rule("6.8 relation of "+name, names[name] == want)
	}
	rule("6.8 name tree", len(names) == len(files) && len(list(get(catalog, "/Names", "/EmbeddedFiles", "/Names"))) == 2*len(files))
	pages, images, links := 0, 0, 0
	for _, o := range objects {
		switch dict := get(o, "dict"); {
		case get(o, "/Type") == "/Page":
			pages++
			rule("6.2.10 page group", get(o, "/Group") == nil)
			for _, a := range list(get(o, "/Annots")) {
				links++
				rule("6.3.2 print flag", get(a, "/F") == 4.0)
			}
		case get(dict, "/Subtype") == "/Image":
			images++
			rule("6.2.4.3 colour space", get(dict, "/ColorSpace") == "/DeviceRGB" && get(dict, "/SMask") == nil)
		case get(o, "/Type") == "/FontDescriptor":
			rule("6.2.11.4 embedded", get(o, "/FontFile2") != nil)
		}
	}
	rule("there are pages with picture and link to look at", pages == 2 && images == 1 && links == 1)
}
