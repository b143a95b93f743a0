package deed_test

import (
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"backleaf/record/deed"
	"backleaf/record/seal"
)

var write = flag.Bool("write", false, "write the published example of a record where there is none")

// The published example is a record of version 1 as it was first written. It
// never changes, and whatever comes later must read it.
func TestPublishedRecord(t *testing.T) {
	dir := filepath.Join("..", "..", "schema", "examples", "record-1")
	names := []string{deed.RecordName, deed.SignatureName, deed.KeyName, deed.HeadName, deed.ProofName, deed.StatementName}
	if _, err := os.Stat(dir); os.IsNotExist(err) && *write {
		k := seal.DemoKey()
		f := made(t, newBook(t, k), first, &k).Files()
		if err := os.Mkdir(dir, 0o755); err != nil {
			t.Fatal(err)
		}
		for _, n := range names {
			if err := os.WriteFile(filepath.Join(dir, n), *f.Named(n), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	var f deed.Files
	for _, n := range names {
		data, err := os.ReadFile(filepath.Join(dir, n))
		if err != nil {
			t.Fatal(err)
		}
		*f.Named(n) = data
	}
	r := deed.Verify(f)
	if !r.Holds() || strings.Count(texts(r, deed.Holds), "\n") < 6 {
		t.Errorf("%v", r.Results)
	}
	if err := valid(t, compile(t), f.Record); err != nil {
		t.Error(err)
	}
	if d := r.Record.Panel.Description(); d.Title != "Dune, evening" || len(r.Record.Panel.Corrections) != 3 || len(r.Record.Findings) != 2 {
		t.Errorf("%+v, %v, %v", d, r.Record.Panel.Corrections, r.Record.Findings)
	}
}

// Who holds the key can sign another record, but not prove that a changed, an
// added or another entry stands in the journal under the older head.
func TestResigned(t *testing.T) {
	k := testKey(t, 1)
	b := newBook(t, k)
	d := made(t, b, first, &k)
	for name, change := range map[string][2]string{
		"an entry changed": {`"size":"8 x 10 x 1/8 in"`, `"size":"9 x 10 x 1/8 in"`},
		"another time":     {`"at":"2026-05-02T09:00:00+02:00"`, `"at":"2025-05-02T09:00:00+02:00"`},
		"another head":     {`"size":22}`, `"size":23}`},
	} {
		f := d.Files()
		f.Record = []byte(strings.Replace(string(d.Record), change[0], change[1], 1))
		f.Statement = nil
		var err error
		if f.Signature, err = k.SignRecord(f.Record); err != nil {
			t.Fatal(err)
		}
		r := deed.Verify(f)
		if r.Holds() || !strings.Contains(texts(r, deed.Holds), "the signature over") {
			t.Errorf("%s: %v", name, r.Results)
		}
	}
	// One entry left out, without its proof: the numbers do not fit.
	f := d.Files()
	p, err := seal.ParseProof(f.Proof)
	if err != nil {
		t.Fatal(err)
	}
	p.Entries = slices.Delete(p.Entries, 3, 4)
	if f.Proof, err = p.Bytes(); err != nil {
		t.Fatal(err)
	}
	if deed.Verify(f).Holds() {
		t.Error("a proof without one of the entries holds")
	}
}
