package paper_test

import (
	"bytes"
	"crypto/md5"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strings"
	"testing"
	"time"

	"backleaf/record/paper"
	"backleaf/record/toolcheck"
)

// A qpdfFile is a file as qpdf, an independent reader, sees it (its JSON,
// version 2, streams decoded).
type qpdfFile struct {
	objects map[string]any // "obj:1 0 R" or "trailer"
}

func readQpdf(t *testing.T, path string) qpdfFile {
	t.Helper()
	var doc struct {
		Qpdf []json.RawMessage `json:"qpdf"`
	}
	out := toolcheck.Run(t, "qpdf", "--json=2", "--json-stream-data=inline", "--decode-level=generalized", path)
	if err := json.Unmarshal([]byte(out), &doc); err != nil || len(doc.Qpdf) != 2 {
		t.Fatalf("qpdf --json: %v", err)
	}
	f := qpdfFile{map[string]any{}}
	if err := json.Unmarshal(doc.Qpdf[1], &f.objects); err != nil {
		t.Fatal(err)
	}
	return f
}

// get follows keys and references; nil if anything is missing.
func (f qpdfFile) get(o any, keys ...string) any {
	o = f.deref(o)
	for _, k := range keys {
		d, ok := o.(map[string]any)
		if !ok {
			return nil
		}
		o = f.deref(d[k])
	}
	return o
}

var reference = regexp.MustCompile(`^\d+ \d+ R$`)

func (f qpdfFile) deref(o any) any {
	for {
		s, ok := o.(string)
		if !ok || !reference.MatchString(s) {
			break
		}
		o = f.objects["obj:"+s]
	}
	if d, ok := o.(map[string]any); ok {
		if v, ok := d["value"]; ok && len(d) == 1 {
			return f.deref(v)
		}
		if v, ok := d["stream"]; ok && len(d) == 1 {
			return v
		}
	}
	return o
}

func (f qpdfFile) data(t *testing.T, stream any) []byte {
	t.Helper()
	s, _ := f.get(stream, "data").(string)
	b, err := base64.StdEncoding.DecodeString(s)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func list(o any) []any { a, _ := o.([]any); return a }

// text undoes qpdf's marks for strings: u: for text, b: for bytes.
func text(o any) string {
	s, _ := o.(string)
	if rest, ok := strings.CutPrefix(s, "u:"); ok {
		return rest
	}
	if rest, ok := strings.CutPrefix(s, "b:"); ok {
		b, _ := hex.DecodeString(rest)
		return string(b)
	}
	return s
}

// The rules of ISO 19005-3 for level B, by clause, as far as they concern what
// these files hold. No validator for PDF/A-3 is at hand, so no more is claimed
// than that the file is built to them.
func TestA3bRules(t *testing.T) {
	pdf := finish(t, sampleDocument(t), paper.A3b, sampleAttachments()...)
	f := readQpdf(t, save(t, "a3b.pdf", pdf))
	rule := func(clause string, ok bool) {
		t.Helper()
		if !ok {
			t.Errorf("ISO 19005-3, %s: not kept", clause)
		}
	}
	trailer := f.objects["trailer"]
	catalog := f.get(trailer, "/Root")
	if catalog == nil {
		t.Fatal("no catalog")
	}

	// 6.1.2: header and the comment of four bytes above 127 behind it; 6.1.3:
	// identifier, no encryption, nothing behind the end of file.
	lines := bytes.SplitN(pdf, []byte("\n"), 3)
	rule("6.1.2 header", regexp.MustCompile(`^%PDF-1\.[0-7]$`).Match(lines[0]))
	binary := len(lines[1]) >= 5 && lines[1][0] == '%'
	for _, c := range lines[1][1:5] {
		binary = binary && c > 127
	}
	rule("6.1.2 binary comment", binary)
	id := list(f.get(trailer, "/ID"))
	rule("6.1.3 ID", len(id) == 2 && text(id[0]) != "")
	rule("6.1.3 Encrypt", f.get(trailer, "/Encrypt") == nil)
	rule("6.1.3 end of file", bytes.HasSuffix(pdf, []byte("%%EOF\n")))

	// 6.2.3: output intent with an RGB profile; 6.2.4.3: device colours then are grey or RGB.
	intents := list(f.get(catalog, "/OutputIntents"))
	rule("6.2.3 output intent", len(intents) == 1 && f.get(intents[0], "/S") == "/GTS_PDFA1")
	profile := f.get(intents[0], "/DestOutputProfile")
	rule("6.2.3 profile", f.get(profile, "dict", "/N") == 3.0 && string(f.data(t, profile)[16:20]) == "RGB ")

	var attached, fonts, annots int
	for _, o := range f.objects {
		o = f.deref(o)
		if o == nil {
			continue
		}
		dict := o
		if d := f.get(o, "dict"); d != nil {
			dict = d
			for _, key := range []string{"/F", "/FFilter", "/FDecodeParms"} {
				rule("6.1.7 external stream data", f.get(dict, key) == nil)
			}
			switch filter := f.get(dict, "/Filter"); filter {
			case nil, "/FlateDecode", "/DCTDecode":
			default:
				t.Errorf("6.1.7 filter %v", filter)
			}
		}
		d, ok := dict.(map[string]any)
		if !ok {
			continue
		}
		for k := range d {
			rule("6.1.13 names of at most 127 bytes", len(k) <= 128)
		}
		switch f.get(dict, "/Type") {
		case "/Page":
			rule("6.2.10 page group", f.get(dict, "/Group") == nil)
			rule("6.6 page actions", f.get(dict, "/AA") == nil)
			for _, a := range list(f.get(dict, "/Annots")) {
				annots++
				rule("6.3.1 annotation type", f.get(a, "/Subtype") == "/Link")
				rule("6.3.2 print flag", f.get(a, "/F") == 4.0)
				rule("6.5.1 action", f.get(a, "/A", "/S") == "/URI")
			}
		case "/XObject":
			rule("6.2.8 images", f.get(dict, "/Alternates") == nil && f.get(dict, "/OPI") == nil && f.get(dict, "/Interpolate") != true)
			rule("6.2.10 soft masks are not needed", f.get(dict, "/SMask") == nil)
			space := f.get(dict, "/ColorSpace")
			rule("6.2.4.3 colour space", space == "/DeviceRGB" || space == "/DeviceGray")
		case "/Font":
			if f.get(dict, "/Subtype") != "/Type0" {
				continue
			}
			fonts++
			cid := list(f.get(dict, "/DescendantFonts"))[0]
			rule("6.2.11.2 tag of the subset", regexp.MustCompile(`^/[A-Z]{6}\+.`).MatchString(f.get(dict, "/BaseFont").(string)))
			rule("6.2.11.2 equal names", f.get(dict, "/BaseFont") == f.get(cid, "/BaseFont") && f.get(cid, "/BaseFont") == f.get(cid, "/FontDescriptor", "/FontName"))
			rule("6.2.11.3.1 encoding", f.get(dict, "/Encoding") == "/Identity-H")
			rule("6.2.11.3.2 CIDToGIDMap", len(f.data(t, f.get(cid, "/CIDToGIDMap"))) == 1<<17)
			rule("6.2.11.4 embedded", len(f.data(t, f.get(cid, "/FontDescriptor", "/FontFile2"))) > 0)
			rule("6.2.11.4.2 CIDSet, complete or absent", f.get(cid, "/FontDescriptor", "/CIDSet") == nil)
			rule("ToUnicode", bytes.Contains(f.data(t, f.get(dict, "/ToUnicode")), []byte("beginbfchar")))
		case "/Filespec":
			attached++
			rule("6.8 F and UF", text(f.get(dict, "/F")) != "" && text(f.get(dict, "/F")) == text(f.get(dict, "/UF")))
			relation, _ := f.get(dict, "/AFRelationship").(string)
			rule("6.8 AFRelationship", regexp.MustCompile(`^/(Source|Data|Alternative|Supplement|Unspecified)$`).MatchString(relation))
			file := f.get(dict, "/EF", "/F")
			rule("6.8 MIME type", strings.Contains(f.get(file, "dict", "/Subtype").(string), "/"))
			rule("6.8 date", strings.HasPrefix(text(f.get(file, "dict", "/Params", "/ModDate")), "D:"))
			sum := md5.Sum(f.data(t, file))
			rule("ISO 32000-1, 7.11.4 check sum", hexOf(f.get(file, "dict", "/Params", "/CheckSum")) == hex.EncodeToString(sum[:]))
		}
	}
	rule("there are fonts, links and files to look at", fonts >= 7 && annots == 2 && attached == len(sampleAttachments()))
	rule("6.8 AF", len(list(f.get(catalog, "/AF"))) == attached)
	rule("6.8 name tree", len(list(f.get(catalog, "/Names", "/EmbeddedFiles", "/Names"))) == 2*attached)
	for _, key := range []string{"/AA", "/OpenAction", "/AcroForm", "/Requirements", "/OCProperties"} {
		rule("catalog without "+key, f.get(catalog, key) == nil)
	}
	rule("6.10 names", f.get(catalog, "/Names", "/JavaScript") == nil && f.get(catalog, "/Names", "/AlternatePresentations") == nil)

	// 6.6.2: metadata, unfiltered, equal to the information dictionary.
	metadata := f.get(catalog, "/Metadata")
	rule("6.6.2.1 no filter", f.get(metadata, "dict", "/Filter") == nil)
	xmp := readXMP(t, f.data(t, metadata))
	info := f.get(trailer, "/Info")
	rule("6.6.4 part and level", xmp["part"] == "3" && xmp["conformance"] == "B")
	for key, property := range map[string]string{"/Title": "title", "/Author": "creator", "/Subject": "description", "/Keywords": "Keywords", "/Creator": "CreatorTool", "/Producer": "Producer"} {
		rule("6.6.3 "+key, xmp[property] != "" && text(f.get(info, key)) == xmp[property])
	}
	for key, property := range map[string]string{"/CreationDate": "CreateDate", "/ModDate": "ModifyDate"} {
		a, err1 := time.Parse("D:20060102150405-07'00'", text(f.get(info, key)))
		b, err2 := time.Parse(time.RFC3339, xmp[property])
		rule("6.6.3 "+key, err1 == nil && err2 == nil && a.Equal(b) && a.Equal(day))
	}
}

// hexOf returns a byte string of qpdf as hexadecimals.
func hexOf(o any) string {
	s, _ := o.(string)
	if rest, ok := strings.CutPrefix(s, "b:"); ok {
		return rest
	}
	return hex.EncodeToString([]byte(text(o)))
}

// readXMP returns the text of each property by its local name.
func readXMP(t *testing.T, packet []byte) map[string]string {
	t.Helper()
	out := map[string]string{}
	d := xml.NewDecoder(bytes.NewReader(packet))
	var path []string
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatalf("XMP is not well-formed: %v", err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			path = append(path, e.Name.Local)
		case xml.EndElement:
			path = path[:len(path)-1]
		case xml.CharData:
			for i := len(path) - 1; i >= 0; i-- {
				if n := path[i]; n != "li" && n != "Alt" && n != "Seq" {
					if s := strings.TrimSpace(string(e)); s != "" {
						out[n] += s
					}
					break
				}
			}
		}
	}
}
