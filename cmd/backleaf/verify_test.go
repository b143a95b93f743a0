package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record/bag"
	"backleaf/record/deed"
	"backleaf/record/pdf"
	"backleaf/record/seal"
	"backleaf/record/studio/verify"
	"backleaf/record/toolcheck"
)

// verified runs verify where no book is, and returns its exit code and words.
func verified(t *testing.T, args ...string) (int, string) {
	t.Helper()
	var out bytes.Buffer
	a := &app{in: strings.NewReader(""), out: &out, err: io.Discard, env: func(s string) string {
		if s == "BACKLEAF_BOOK" {
			return filepath.Join(t.TempDir(), "no.sqlite")
		}
		return ""
	}, now: time.Now}
	code := a.run(context.Background(), append([]string{"verify"}, args...))
	return code, out.String()
}

// attached returns the files in a certificate.
func attached(t *testing.T, data []byte) map[string][]byte {
	t.Helper()
	as, err := pdf.Attachments(data)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string][]byte{}
	for _, a := range as.Files {
		out[a.Name] = a.Data
	}
	return out
}

func writeTo(t *testing.T, path string, data []byte) string {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestVerifyCertificate(t *testing.T) {
	dir := demoDir(t)
	pdf, err := os.ReadFile(filepath.Join(dir, "certificate.pdf"))
	if err != nil {
		t.Fatal(err)
	}
	files := attached(t, pdf)

	t.Run("as it is", func(t *testing.T) {
		code, said := verified(t, filepath.Join(dir, "certificate.pdf"))
		if code != exitDone || strings.Contains(said, "does not hold") || strings.Count(said, "\n  holds ") < 5 || !strings.Contains(said, "this is a demonstration") {
			t.Errorf("exit code %d:\n%s", code, said)
		}
	})

	// Whatever byte of the file is changed: either it does not hold, or what
	// was changed is not of the record but of the picture of the page.
	t.Run("one byte", func(t *testing.T) {
		for i := 0; i < len(pdf); i += 1 + len(pdf)/toolcheck.Rounds(120, 40) {
			bad := bytes.Clone(pdf)
			bad[i] ^= 0x10
			es := verify.Read("c.pdf", bad)
			papers, err := (verify.Checker{}).Check(t.Context(), es)
			if err != nil || papers[0].Failed > 0 || !papers[0].Verified {
				continue
			}
			for name, data := range files {
				if !bytes.Equal(*es[0].Files.Named(name), data) {
					t.Errorf("byte %d changed: %s is another one, and all holds", i, name)
				}
			}
		}
	})

	// An attachment exchanged for one with one byte changed is found: qpdf
	// leaves the first one too, so that two programs would read two things.
	t.Run("attachment", func(t *testing.T) {
		toolcheck.Require(t, "qpdf")
		for name, data := range files {
			for _, at := range []int{0, len(data) / 2, len(data) - 2} {
				bad := bytes.Clone(data)
				bad[at] ^= 1
				tmp := t.TempDir()
				out := filepath.Join(tmp, "c.pdf")
				if msg, err := exec.Command("qpdf", filepath.Join(dir, "certificate.pdf"), "--add-attachment", writeTo(t, filepath.Join(tmp, name), bad), "--replace", "--", out).CombinedOutput(); err != nil {
					t.Fatalf("%v: %s", err, msg)
				}
				code, said := verified(t, out)
				if code != exitIntegrity {
					t.Errorf("%s, byte %d: exit code %d\n%s", name, at, code, said)
				}
			}
			tmp := filepath.Join(t.TempDir(), "c.pdf")
			if msg, err := exec.Command("qpdf", filepath.Join(dir, "certificate.pdf"), "--remove-attachment="+name, tmp).CombinedOutput(); err != nil {
				t.Fatalf("%v: %s", err, msg)
			}
			if code, said := verified(t, tmp); code != exitIntegrity {
				t.Errorf("without %s: exit code %d\n%s", name, code, said)
			}
		}
	})

	// The same as a folder and as single files.
	t.Run("folder", func(t *testing.T) {
		tmp := t.TempDir()
		var single []string
		for name, data := range files {
			single = append(single, writeTo(t, filepath.Join(tmp, name), data))
		}
		if code, said := verified(t, tmp); code != exitDone {
			t.Errorf("folder: exit code %d\n%s", code, said)
		}
		if code, said := verified(t, single...); code != exitDone || !strings.Contains(said, "every entry of the record stands") {
			t.Errorf("single files: exit code %d\n%s", code, said)
		}
		if err := os.Remove(filepath.Join(tmp, deed.SignatureName)); err != nil {
			t.Fatal(err)
		}
		if code, said := verified(t, tmp); code != exitIntegrity || !strings.Contains(said, "is missing") {
			t.Errorf("folder without signature: exit code %d\n%s", code, said)
		}
		// A link that leads out of the folder is not followed.
		if err := os.Symlink(writeTo(t, filepath.Join(t.TempDir(), "x"), files[deed.SignatureName]), filepath.Join(tmp, deed.SignatureName)); err == nil {
			if code, said := verified(t, tmp); code == exitDone {
				t.Errorf("a link out of the folder was followed:\n%s", said)
			}
		}
	})

	t.Run("deposit", func(t *testing.T) {
		book, err := os.ReadFile(filepath.Join(dir, "studio.sqlite"))
		if err != nil {
			t.Fatal(err)
		}
		make := func(change string) string {
			to := filepath.Join(t.TempDir(), "deposit")
			b := bag.Bag{Agent: "test", Date: time.Date(2026, 6, 1, 0, 0, 0, 0, time.UTC)}
			for name, data := range files {
				if data = bytes.Clone(data); name == change {
					data[len(data)/2] ^= 1
				}
				b.Payload = append(b.Payload, bag.Bytes("records/MR25-0003-V/"+name, data))
			}
			b.Payload = append(b.Payload, bag.Bytes("certificates/MR25-0003-V.pdf", pdf), bag.Bytes("studio.sqlite", book))
			if err := bag.Write(to, b); err != nil {
				t.Fatal(err)
			}
			return to
		}
		code, said := verified(t, make(""))
		for _, want := range []string{"the deposit is whole: 7 files", "1 record, 1 certificate, 1 book"} {
			if code == exitDone || !strings.Contains(said, want) { // the photographs are not beside the book
				t.Errorf("exit code %d:\n%s", code, said)
			}
		}
		for name := range files {
			if code, said := verified(t, make(name)); code != exitIntegrity || !strings.Contains(said, "data/records/MR25-0003-V/record.json: ") {
				t.Errorf("%s changed, with checksums made anew: exit code %d\n%s", name, code, said)
			}
		}
		bare := func(more ...bag.File) string {
			to := filepath.Join(t.TempDir(), "deposit")
			if err := bag.Write(to, bag.Bag{Agent: "test", Date: time.Date(2026, 6, 1, 0, 0, 0, 0, time.UTC),
				Payload: append(more, bag.Bytes("records/MR25-0003-V/record.json", files[deed.RecordName]))}); err != nil {
				t.Fatal(err)
			}
			return to
		}
		if code, said := verified(t, bare()); code != exitDone || !strings.Contains(said, "who made these records: none is signed") {
			t.Errorf("nothing signed: exit code %d\n%s", code, said)
		}
		var signed []bag.File
		for name, data := range files {
			signed = append(signed, bag.Bytes("signed/MR25-0003-V/"+name, data))
		}
		if code, said := verified(t, bare(signed...)); code != exitIntegrity || !strings.Contains(said, "the record names the studio’s key, but its signature or what belongs to it is missing") {
			t.Errorf("one of two signed: exit code %d\n%s", code, said)
		}
		to := make("")
		writeTo(t, filepath.Join(to, "data", "records", "MR25-0003-V", deed.RecordName), []byte("{}"))
		if _, said := verified(t, to); !strings.Contains(said, "was altered or cut short") {
			t.Errorf("a changed file:\n%s", said)
		}
	})
}

// Whoever holds the key can sign a record that leaves an entry out, with a
// proof that fits: alone it holds, beside the book it does not.
func TestVerifyLeftOut(t *testing.T) {
	dir := demoDir(t)
	pdf, err := os.ReadFile(filepath.Join(dir, "certificate.pdf"))
	if err != nil {
		t.Fatal(err)
	}
	files := attached(t, pdf)
	var rec map[string]any
	if err := json.Unmarshal(files[deed.RecordName], &rec); err != nil {
		t.Fatal(err)
	}
	entries := rec["entries"].([]any)
	out := slices.IndexFunc(entries, func(e any) bool { return e.(map[string]any)["kind"] == "inspection" })
	rec["entries"] = slices.Delete(entries, out, out+1)
	data, err := json.Marshal(rec, json.Deterministic(true))
	if err != nil {
		t.Fatal(err)
	}
	record := jsontext.Value(data)
	if err := record.Canonicalize(); err != nil {
		t.Fatal(err)
	}
	sig, err := seal.DemoKey().SignRecord(record)
	if err != nil {
		t.Fatal(err)
	}
	proof, err := seal.ParseProof(files[deed.ProofName])
	if err != nil {
		t.Fatal(err)
	}
	proof.Entries = slices.Delete(proof.Entries, out, out+1)
	shortened, err := proof.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	for name, data := range map[string][]byte{deed.RecordName: record, deed.SignatureName: sig, deed.ProofName: shortened,
		deed.KeyName: files[deed.KeyName], deed.HeadName: files[deed.HeadName]} {
		writeTo(t, filepath.Join(folder, name), data)
	}
	if code, said := verified(t, folder); code != exitDone {
		t.Errorf("alone: exit code %d\n%s", code, said)
	}
	if code, said := verified(t, folder, "--book", filepath.Join(dir, "studio.sqlite")); code != exitIntegrity || !strings.Contains(said, "(inspection) is not in it") {
		t.Errorf("beside the book: exit code %d\n%s", code, said)
	}

	// Nor does an unsigned one into which an entry was put, in the place of one
	// of other panels.
	if err := json.Unmarshal(files[deed.RecordName], &rec); err != nil {
		t.Fatal(err)
	}
	entries = rec["entries"].([]any)
	seq := func(i int) float64 { return entries[i].(map[string]any)["seq"].(float64) }
	at := len(entries) - 1
	for seq(at-1) == seq(at)-1 {
		at--
	}
	rec["entries"] = slices.Insert(entries, at, any(map[string]any{"kind": "note", "seq": seq(at) - 1, "panels": []any{rec["number"]}, "text": "varnished", "v": 1, "written": "2026-05-02T16:00:00+03:00"}))
	record = must(json.Marshal(rec, json.Deterministic(true)))
	if err := record.Canonicalize(); err != nil {
		t.Fatal(err)
	}
	plain := writeTo(t, filepath.Join(t.TempDir(), deed.RecordName), record)
	if code, said := verified(t, plain, "--book", filepath.Join(dir, "studio.sqlite")); code != exitIntegrity || !strings.Contains(said, "of the record: it is another one in the journal here") {
		t.Errorf("an entry put in: exit code %d\n%s", code, said)
	}
}

// Nothing that a stranger's text says reaches the terminal as more than text.
func TestVerifyHostile(t *testing.T) {
	for _, text := range []string{"\x1b]0;title\x07", "backleaf/\x1b[2J\n1\n", "\u202egnp.exe", strings.Repeat("a", 1<<16), "{\"backleaf\":\"record/1\"\x1b[31m}", "%PDF-\x1b[2J"} {
		code, said := verified(t, writeTo(t, filepath.Join(t.TempDir(), "text"), []byte(text)))
		if code == exitDone || strings.ContainsAny(said, "\x1b\x07\u202e") {
			t.Errorf("%.40q: exit code %d, %q", text, code, said)
		}
	}
}
