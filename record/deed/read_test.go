package deed_test

import (
	"bytes"
	"errors"
	"os"
	"strings"
	"testing"

	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record/deed"
)

// A record whose parts do not follow from its entries is refused even if it
// is signed: here each change leaves canonical JSON.
func TestReadRefuses(t *testing.T) {
	k := testKey(t, 1)
	good := string(made(t, newBook(t, k), first, &k).Record)
	for name, tt := range map[string]struct{ old, new, why string }{
		"another panel":                    {`"number":"KB26-0001-K"`, `"number":"KB26-0004-8"`, "do not speak of"},
		"another maker":                    {`"maker":"Ilze Kraukle","mark":"KB","place"`, `"maker":"Ilze Kraukla","mark":"KB","place"`, "does not follow"},
		"somebody else made it":            {`"made_by":["Ilze Kraukle"]`, `"made_by":["Ilze Kraukla"]`, "does not follow"},
		"a photograph that is no entry":    {`"role":"front","sha256":"0a`, `"role":"front","sha256":"0b`, "does not follow"},
		"a correction told otherwise":      {`{"because":"misread","changes"`, `{"because":"Misread","changes"`, "does not follow"},
		"a correction left out of what is": {`"producer_lot":"L 71","seq"`, `"producer_lot":"L 77","seq"`, "does not follow"},
		"an entry beyond the head":         {`"size":22}`, `"size":21}`, "beyond the head"},
		"another spelling":                 {`"studio":{`, ` "studio":{`, "canonical"},
		"a member twice":                   {`"number":"KB26-0001-K",`, `"number":"KB26-0001-K","number":"KB26-0001-K",`, "duplicate"},
		"no exact time of issue":           {`"issued":"2026-06-01T14:05:00+02:00"`, `"issued":"2026-06-01"`, "not exact"},
		"another first member":             {`{"backleaf":"record/1"`, `{"backleaf":"label/1"`, "begin with"},
		"a wrong check character":          {`KB26-0001-K`, `KB26-0001-D`, "last character"},
		"entries out of order":             {`"seq":3,`, `"seq":4,`, "stands after"},
	} {
		changed := strings.Replace(good, tt.old, tt.new, 1)
		if name == "a wrong check character" {
			changed = strings.ReplaceAll(good, tt.old, tt.new)
		}
		if changed == good {
			t.Errorf("%s: nothing to change", name)
		}
		if _, err := deed.Read([]byte(changed)); err == nil || !strings.Contains(err.Error(), tt.why) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, change := range map[string][2]string{
		"an unknown member":           {`"studio":{`, `"seal":"","studio":{`},
		"an entry of an unknown kind": {`"kind":"cloth"`, `"kind":"clout"`},
	} {
		if r, err := deed.Read([]byte(strings.Replace(good, change[0], change[1], 1))); err != nil || !r.Newer {
			t.Errorf("%s: %v, %v", name, r.Newer, err)
		}
	}
	newer := strings.Replace(good, "record/1", "record/2", 1)
	if _, err := deed.Read([]byte(newer)); !errors.Is(err, deed.ErrNewer) {
		t.Errorf("a newer record: %v", err)
	}
}

// A newer record can still be checked for its signature.
func TestNewer(t *testing.T) {
	k := testKey(t, 1)
	d := made(t, newBook(t, k), first, &k)
	newer := bytes.Replace(d.Record, []byte("record/1"), []byte("record/2"), 1)
	sig, err := k.SignRecord(newer)
	if err != nil {
		t.Fatal(err)
	}
	r := deed.Verify(deed.Files{Record: newer, Signature: sig, Key: k.Public().PEM()})
	if !r.Holds() || !strings.Contains(texts(r, deed.Unknown), "newer") || !strings.Contains(texts(r, deed.Holds), "the signature over") {
		t.Error(r.Results)
	}
}

func FuzzRead(f *testing.F) {
	example, err := os.ReadFile("../../schema/examples/record-1/record.json")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(example)
	f.Add([]byte(`{"backleaf":"record/1"}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := deed.Read(data)
		if err != nil {
			return
		}
		v := jsontext.Value(bytes.Clone(data))
		if err := v.Canonicalize(); err != nil || !bytes.Equal(v, data) {
			t.Errorf("accepted what is not canonical: %s", data)
		}
		if r.Panel == nil || r.Panel.Number != r.Number {
			t.Errorf("accepted a record without its panel: %s", data)
		}
	})
}
