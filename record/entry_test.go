package record_test

import (
	"bytes"
	"encoding/hex"
	"errors"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/form"
)

// The examples are laid out by hand; their canonical bytes decode to the same
// entry and encode to themselves.
func TestRoundTrip(t *testing.T) {
	for i, text := range exampleTexts(t) {
		e, err := accept.Parse(text)
		if err != nil {
			t.Fatalf("%s: %v", text, err)
		}
		b, err := form.Write(e)
		if err != nil {
			t.Fatalf("%s: %v", text, err)
		}
		back, err := form.Read(b)
		if err != nil {
			t.Fatalf("%s: %v", b, err)
		}
		if !reflect.DeepEqual(e, back) {
			t.Errorf("%s came back as %#v", b, back)
		}
		// The examples use only canonical spellings, so nothing but layout differs.
		want := text.Clone()
		if err := want.Canonicalize(); err != nil || string(want) != string(b) {
			t.Errorf("entry %d is written as\n%s\nexpected\n%s (%v)", i+1, b, want, err)
		}
	}
}

// The published cases of cyberphone/json-canonicalization (testdata/, also
// the figures of RFC 8785), as far as whole numbers go: as the change of an
// amendment, whose members may have any name. Members that this form refuses
// (control characters, empty lists) are taken out of the input and output.
func TestCanonicalJSON(t *testing.T) {
	for _, c := range []struct{ name, in, hex string }{
		{"french", `{"peach": "This sorting order", "p\u00e9ch\u00e9": "is wrong according to French",
			"p\u00eache": "but canonicalization MUST", "sin":   "ignore locale"}`,
			"7b227065616368223a225468697320736f7274696e67206f72646572222c2270c3a96368c3a9223a2269732077726f6e67206163636f7264696e6720746f204672656e6368222c2270c3aa636865223a226275742063616e6f6e6963616c697a6174696f6e204d555354222c2273696e223a2269676e6f7265206c6f63616c65227d"},
		{"unicode", `{"Unnormalized Unicode":"A\u030a"}`,
			"7b22556e6e6f726d616c697a656420556e69636f6465223a2241cc8a227d"},
		{"structures, without its empty objects", `{"1": {"f": {"f": "hi","F": 5} ,"\n": 56}, "": "empty", "111": [ {"e": "yes","E": "no" } ]}`,
			hex.EncodeToString([]byte(`{"":"empty","1":{"\n":56,"f":{"F":5,"f":"hi"}},"111":[{"E":"no","e":"yes"}]}`))},
		{"weird, without control characters", `{"\u20ac": "Euro Sign", "\u000a": "Newline", "1": "One", "\ud83d\ude02": "Smiley",
			"\u00f6": "Latin Small Letter O With Diaeresis", "\ufb33": "Hebrew Letter Dalet With Dagesh", "</script>": "Browser Challenge"}`,
			"7b" + "225c6e223a224e65776c696e65222c" + "2231223a224f6e65222c" + "223c2f7363726970743e223a2242726f77736572204368616c6c656e6765222c" +
				"22c3b6223a224c6174696e20536d616c6c204c6574746572204f205769746820446961657265736973222c" + "22e282ac223a224575726f205369676e222c" +
				"22f09f9882223a22536d696c6579222c" + "22efacb3223a22486562726577204c65747465722044616c6574205769746820446167657368227d"},
		{"strings of values, without U+000F", `{"string": "\u20ac$\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [true, false]}`,
			hex.EncodeToString([]byte(`{"literals":[true,false],"string":"€$\nA'B\"\\\\\"/"}`))},
	} {
		b, err := form.Write(record.Entry{Body: record.Amended{Entry: 1, Because: "x", Change: jsontext.Value(c.in)}})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		want, err := hex.DecodeString(c.hex)
		if err != nil {
			t.Fatal(err)
		}
		if got := string(b); got != `{"because":"x","change":`+string(want)+`,"entry":1,"kind":"amended","v":1}` {
			t.Errorf("%s: %s\nexpected %s", c.name, got, want)
		}
	}
}

func TestDecodeRefuses(t *testing.T) {
	for _, c := range []struct{ in, field, why, at string }{
		// What a canonicaliser must reject (same source, and RFC 7493).
		{`{"kind":"note","kind":"note","text":"x"}`, "kind", "duplicate", ``},
		{`{"kind":"note","text":"\ud800"}`, "text", "invalid", ``},
		{`{"kind":"note","text":"x"} x`, "", "invalid", ``},
		{`[1,]`, "", "object", ``},
		{`{"\u006bind":"note","kind":"note"}`, "kind", "duplicate", ``},
		{"{\"kind\":\"note\",\"text\":\"\xff\"}", "text", "UTF-8", ``},
		{``, "", "object", ``},
		{`null`, "", "object", ``},
		{`{"kind":"note","text":"x"}{"kind":"note","text":"x"}`, "", "", ``},
		// The envelope.
		{`{"text":"x"}`, "kind", "missing", ``},
		{`{"kind":"gilded","text":"x"}`, "kind", "not a kind", `"gilded"`},
		{`{"kind":5}`, "kind", "expected a text", `5`},
		{`{"kind":"note","v":2,"text":"x"}`, "v", "newer", `2`},
		{`{"kind":"note","v":"1","text":"x"}`, "v", "expected a whole number", `"1"`},
		{`{"kind":"note","seq":-4,"text":"x"}`, "seq", "from 1", `-4`},
		{`{"kind":"note","written":"2026-05","text":"x"}`, "written", "exact time", `"2026-05"`},
		{`{"kind":"note","at":"yesterday","text":"x"}`, "at", "EDTF", `"yesterday"`},
		{`{"kind":"note","at":"2026-05-02 14:05","text":"x"}`, "at", "EDTF", `"2026-05-02 14:05"`},
		{`{"kind":"note","panels":["kb26-0142-1"],"text":"x"}`, "panels/0", "not a panel number", `"kb26-0142-1"`},
		{`{"kind":"note","panels":["KB26-0142-1","KB26-0142-1"],"text":"x"}`, "panels/1", "twice", ``},
		{`{"kind":"note","panels":[],"text":"x"}`, "panels", "empty list", `[]`},
		{`{"kind":"lot","panels":["KB26-0142-1"],"key":"a","material":"b"}`, "panels", "names no panels", ``},
		{`{"kind":"coat","faces":["front"]}`, "panels", "missing", ``},
		{`{"kind":"photograph","panels":["KB26-0142-1","KB26-0143-2"],"role":"front"}`, "panels", "exactly one", ``},
		// One spelling: what was not recorded is left out.
		{`{"kind":"note","text":"x","at":null}`, "at", "no null", `null`},
		{`{"kind":"note","text":""}`, "text", "empty text", `""`},
		{`{"kind":"material","key":"a","name":"a","uses":["board"],"board":{}}`, "board", "empty object", `{}`},
		{`{"kind":"material","key":"a","name":"a","uses":["board"],"board":{"plies":0}}`, "board/plies", "from 1", `0`},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":[]}`, "faces", "empty list", `[]`},
		// Fields.
		{`{"kind":"note"}`, "text", "missing", `{`},
		{`{"kind":"note","text":"x","txt":"y"}`, "txt", "no such field", ``},
		{`{"kind":"note","Text":"x"}`, "Text", "no such field", ``},
		{`{"kind":"note","text":["x"]}`, "text", "expected a text", `["x"]`},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":"front"}`, "faces", "expected a list", `"front"`},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":["top"]}`, "faces/0", "front, back, edges", `"top"`},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":["front","front"]}`, "faces", "twice", ``},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":["front"],"extra":["edges"]}`, "extra/0", "not among", `"edges"`},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":["front"],"mix":["a"]}`, "mix/0", "expected an object", `"a"`},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":["front"],"mix":[{"parts":1.5,"material":"a"}]}`, "mix/0/parts", "whole number", `1.5`},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":["front"],"mix":[{"material":"a"}]}`, "mix/0/parts", "missing", `{"mat`},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":["front"],"mix":[{"parts":20000,"material":"a"}]}`, "mix/0/parts", "at most", `20000`},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":["front"],"wet_each":"1 g","wet_total":"9 g"}`, "wet_each", "not both", `"1 g"`},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":["front"],"wet_each":"1 m"}`, "wet_each", "a mass or a volume", ``},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":["front"],"thinned":"10 pints"}`, "thinned", "the unit must be %", ``},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":["front"],"humidity":"120 %"}`, "humidity", "more than 100", ``},
		{`{"kind":"coat","panels":["KB26-0142-1"],"faces":["front"],"dry_film":5}`, "dry_film", "expected a text", `5`},
		{`{"kind":"cut","panels":["KB26-0142-1"],"batch":"May","size":"30 x 40 cm"}`, "batch", "lower-case", `"May"`},
		{`{"kind":"cut","panels":["KB26-0142-1"],"batch":"may"}`, "size", "missing", ``},
		{`{"kind":"cut","panels":["KB26-0142-1"],"batch":"may","size":"1 x 40 mm"}`, "size", "5 mm", ``},
		{`{"kind":"sanded","panels":["KB26-0142-1"],"faces":["front"],"grit":180}`, "scale", "belong together", `{`},
		{`{"kind":"climate","place":"here"}`, "temperature", "missing", ``},
		{`{"kind":"lot","key":"unknown","material":"a"}`, "key", "cannot be", ``},
		{`{"kind":"material","key":"a","name":"a","uses":["sealer"],"cure_from":"36 h","cure_to":"1 d"}`, "cure_to", "ends before", ``},
		{`{"kind":"material","key":"a","name":"a","uses":["sealer"],"solids_by_mass":"101 %"}`, "solids_by_mass", "more than 100", ``},
		{`{"kind":"studio","maker":"a","mark":"Kb"}`, "mark", "capital consonants", ``},
		{`{"kind":"studio","maker":"a","mark":"KB","link_base":"https://example.org/p"}`, "link_base", "ends in / or =", ``},
		{`{"kind":"studio","maker":"a","mark":"KB","demonstration":"yes"}`, "demonstration", "true or false", ``},
		{`{"kind":"studio","maker":"a","mark":"KB","time_zone":"../../etc/passwd"}`, "time_zone", "Europe/Riga", ``},
		{`{"kind":"certificate-issued","panels":["KB26-0142-1"],"record_sha256":"AB"}`, "record_sha256", "64", ``},
		{`{"kind":"amended","entry":1,"because":"x","change":{}}`, "change", "empty object", ``},
		{`{"kind":"amended","entry":1,"because":"x","change":"no"}`, "change", "fields to change", ``},
		{`{"kind":"amended","entry":1,"because":"x","change":{"grit":1.5}}`, "change/grit", "whole number", `1.5`},
		{`{"kind":"withdrawn","entry":1}`, "because", "missing", ``},
		{`{"kind":"note","text":"x","a":{"a":{"a":{"a":{"a":{"a":{"a":{"a":{"a":1}}}}}}}}}`, "a/a/a/a/a/a/a/a", "nested", ``},
	} {
		_, err := accept.Parse([]byte(c.in))
		var fe *record.FieldError
		if !errors.As(err, &fe) {
			t.Errorf("%s: %v is no field error", c.in, err)
			continue
		}
		if fe.Field != c.field || !strings.Contains(fe.Why, c.why) {
			t.Errorf("%s: %v, expected %s: %s", c.in, fe, c.field, c.why)
		}
		if c.at != "" && !strings.HasPrefix(c.in[fe.Offset:], c.at) {
			t.Errorf("%s: placed at %q, expected %q", c.in, c.in[fe.Offset:], c.at)
		}
		if r := []rune(fe.Why); len(r) == 0 || 'A' <= r[0] && r[0] <= 'Z' && !strings.HasPrefix(fe.Why, "KB26") {
			t.Errorf("%s: %q begins with a capital", c.in, fe.Why)
		}
	}
}

// Text that could pass for something else in print is refused in every place
// a text can stand; scripts that need joiners are not.
func TestTextFromOutside(t *testing.T) {
	bad := []rune{0x00, 0x07, 0x09, 0x0D, 0x1B, 0x7F, 0x85, 0x9B, 0xAD, 0x061C, 0x200B, 0x200E, 0x202E, 0x2028, 0x2029, 0x2060, 0x2066, 0x2069, 0xFEFF, 0xFFF9, 0xFFFD, 0xE0041}
	for _, r := range bad {
		if err := accept.CheckLine("a" + string(r) + "b"); err == nil {
			t.Errorf("U+%04X passes", r)
		}
		in := `{"kind":"note","text":` + strconv.QuoteToASCII("a")[:2] + string(r) + `b"}`
		if r < 0x20 {
			in = `{"kind":"note","text":"a\u00` + hex.EncodeToString([]byte{byte(r)}) + `b"}`
		}
		if _, err := accept.Parse([]byte(in)); err == nil {
			t.Errorf("U+%04X passes in an entry", r)
		}
		if err := accept.Check(record.Entry{Body: record.Note{Text: "a" + string(r) + "b"}}); err == nil {
			t.Errorf("U+%04X can be written", r)
		}
	}
	for _, s := range []string{"Βασίλειος", "Дмитрий", `a "quoted" <name> & 'more'`, "می\u200cخواهم", "క్\u200dష", "❤\ufe0f", "=1+2", "../x", "\\(", "é"} {
		if err := accept.CheckLine(s); err != nil {
			t.Errorf("%q: %v", s, err)
		}
	}
	for _, c := range []struct {
		e  record.Body
		ok bool
	}{
		{record.Note{Text: "two\nlines"}, true},
		{record.Note{Text: strings.Repeat("ā", accept.MaxText)}, true},
		{record.Note{Text: strings.Repeat("a", accept.MaxText+1)}, false},
		{record.Note{Text: " a"}, false},
		{record.Note{Text: "a\n"}, false},
		{record.Condition{By: strings.Repeat("ā", accept.MaxLine), Text: "x"}, true},
		{record.Condition{By: strings.Repeat("a", accept.MaxLine+1), Text: "x"}, false},
		{record.Condition{By: "two\nlines", Text: "x"}, false},
		{&record.Note{Text: "x"}, false}, // a pointer is no body
		{nil, false},
	} {
		e := record.Entry{Body: c.e}
		if _, cond := c.e.(record.Condition); cond {
			e.Panels = []record.Number{"KB26-0142-1"}
		}
		if err := accept.Check(e); (err == nil) != c.ok {
			t.Errorf("%.60v: %v", c.e, err)
		}
	}
}

func TestDecodeStored(t *testing.T) {
	good := `{"kind":"note","seq":1,"text":"x","v":1,"written":"2026-05-02T14:05:00Z"}`
	if _, err := form.Read([]byte(good)); err != nil {
		t.Fatal(err)
	}
	for _, bad := range []string{
		`{"kind":"note","seq":1,"text":"x","v":1}`,
		`{"kind":"note","text":"x","v":1,"written":"2026-05-02T14:05:00Z"}`,
		`{"kind":"note","seq":1,"text":"x","written":"2026-05-02T14:05:00Z"}`,
		strings.Replace(good, `:`, `: `, 1), good + "\n",
		strings.Replace(good, `x`, `\u0078`, 1),
		strings.Replace(good, `"kind":"note","seq":1`, `"seq":1,"kind":"note"`, 1),
		strings.Replace(good, `"v":1`, `"v":1.0`, 1),
	} {
		if _, err := form.Read([]byte(bad)); err == nil {
			t.Errorf("accepted %s", bad)
		}
	}
}

// What was decoded does not share memory with the text it was read from.
func TestDecodeCopies(t *testing.T) {
	b := []byte(`{"kind":"amended","entry":1,"because":"x","change":{"text":"abc"}}`)
	e, err := accept.Parse(b)
	if err != nil {
		t.Fatal(err)
	}
	before, _ := form.Write(e)
	for i := range b {
		b[i] = '!'
	}
	if after, err := form.Write(e); err != nil || !bytes.Equal(before, after) {
		t.Errorf("%s became %s", before, after)
	}
}

// Whatever decodes encodes, and encodes to the same bytes ever after.
func FuzzDecode(f *testing.F) {
	for _, text := range exampleTexts(f) {
		f.Add([]byte(text))
	}
	f.Add([]byte(`{"kind":"coat","panels":["KB26-0142-1"],"faces":["front"],"thinned":"½ %"}`))
	f.Fuzz(func(t *testing.T, b []byte) {
		e, err := accept.Parse(b)
		if err != nil {
			var fe *record.FieldError
			if !errors.As(err, &fe) || fe.Offset < 0 || fe.Offset > int64(len(b)) {
				t.Fatalf("%q: %#v", b, err)
			}
			return
		}
		one, err := form.Write(e)
		if err != nil {
			t.Fatalf("%q: decoded, but %v", b, err)
		}
		back, err := accept.Parse(one)
		if err != nil {
			t.Fatalf("%q became %q: %v", b, one, err)
		}
		if !reflect.DeepEqual(e, back) {
			t.Fatalf("%q became %q", b, one)
		}
		two, err := form.Write(back)
		if err != nil || !bytes.Equal(one, two) {
			t.Fatalf("%q, then %q: %v", one, two, err)
		}
	})
}

func BenchmarkDecode(b *testing.B) {
	bench(b, func(e record.Entry, t []byte) error { _, err := accept.Parse(t); return err })
}
func BenchmarkEncode(b *testing.B) {
	bench(b, func(e record.Entry, t []byte) error { _, err := form.Write(e); return err })
}

// bench runs over the cloth entry, one of the fullest, with 14 panels.
func bench(b *testing.B, do func(record.Entry, []byte) error) {
	e := examples(b)[11]
	e.Panels = nil
	for i := range 14 {
		n, err := record.NewNumber("KB", 26, 100+i, "")
		if err != nil {
			b.Fatal(err)
		}
		e.Panels = append(e.Panels, n)
	}
	text, err := form.Write(e)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if err := do(e, text); err != nil {
			b.Fatal(err)
		}
	}
}
