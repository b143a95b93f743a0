package main

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
	"testing"
	"time"

	"backleaf/certificate"
	"backleaf/certificate/dossier"
	panelpage "backleaf/certificate/page"
	"backleaf/label"
	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/deposit"
	"backleaf/record/linkedart"
	"backleaf/record/seal"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

// TestProcesses makes every paper from one record in many processes, each with
// hash seeds of its own: all of them have one digest.
func TestProcesses(t *testing.T) {
	if toolcheck.InChild(t, func(to string) {
		debug.SetGCPercent(-1) // a process of a moment
		make := digests
		if strings.HasSuffix(to, "deposit") {
			make = deposited
		}
		if err := os.WriteFile(to, make(t), 0o600); err != nil {
			t.Fatal(err)
		}
	}) {
		return
	}
	runs := 2
	if toolcheck.Thorough() {
		runs = 100
	}
	var first [2][]byte
	t.Run("runs", func(t *testing.T) {
		for half := range first {
			t.Run(fmt.Sprint(half), func(t *testing.T) {
				t.Parallel()
				to := filepath.Join(t.TempDir(), "digests")
				for i := range runs {
					toolcheck.Cost(t, to)
					got := must(os.ReadFile(to))
					if i == 0 {
						first[half] = got
					}
					if !bytes.Equal(got, first[half]) {
						t.Fatalf("run %d:\n%s\nthe first:\n%s", i+1, got, first[half])
					}
				}
			})
		}
	})
	// A deposit takes as long as all the others together, so of it there are fewer.
	var deposits [2][]byte
	for i := range toolcheck.Rounds(8, 2) {
		to := filepath.Join(t.TempDir(), "deposit")
		toolcheck.Cost(t, to)
		deposits[min(i, 1)] = must(os.ReadFile(to))
		if i > 0 && !bytes.Equal(deposits[0], deposits[1]) {
			t.Errorf("deposit %d:\n%s\nthe first:\n%s", i+1, deposits[1], deposits[0])
		}
	}
	if bytes.Count(deposits[0], []byte(" data/")) < 80 {
		t.Errorf("%s", deposits[0])
	}
	if !bytes.Equal(first[0], first[1]) || bytes.Count(first[0], []byte("\n")) < 30 {
		t.Errorf("%s\n%s", first[0], first[1])
	}
}

// digests are those of all papers of the record that version 1 wrote.
func digests(t *testing.T) []byte {
	v1 := filepath.Join(sourceDir, "testdata", "v1")
	file := func(name string) []byte { return must(os.ReadFile(filepath.Join(v1, name))) }
	r := must(deed.Read(file("record/" + deed.RecordName)))
	w, p := r.Workshop, r.Panel
	key := seal.DemoKey()
	d := deed.Deed{Record: file("record/record.json"), Signature: file("record/record.sig"), Key: key.Public(), Head: file("record/head.txt"), Proof: file("record/proof.json"), Demo: true}
	d.Statement = must(seal.Statement{Origin: must(seal.Origin(w.Studio.Mark, w.Studio.Journal)), Number: string(p.Number), Maker: w.Studio.Maker, Issued: "2031-06-02", Record: seal.DigestOf(d.Record)}.Sign(key))
	at := time.Date(2031, 6, 2, 10, 0, 0, 0, time.UTC)
	photograph := func(ph record.Photograph) ([]byte, error) { return file("photographs/" + ph.SHA256 + ".png"), nil }
	var out bytes.Buffer
	say := func(name string, data []byte) { fmt.Fprintf(&out, "%x %s\n", sha256.Sum256(data), name) }

	in := must(label.Say(tell.English(), w, p, label.StageAuto, ""))
	var back bytes.Buffer
	must(label.Draw(&back, []label.Input{in}, label.Options{Catalogue: tell.English(), Created: at, Size: label.Large}))
	say("label", back.Bytes())
	say("certificate", must(certificate.Draw(certificate.Input{Workshop: w, Panel: p, Deed: d, Issued: at, Photograph: photograph, Paper: "a4"})).PDF)
	all := dossier.New(tell.English(), w, p, dossier.Book{})
	say("dossier PDF", must(all.PDF()))
	say("dossier HTML", must(all.HTML()))
	say("dossier text", []byte(must(all.Text())))
	ph, _ := panelpage.Front(p)
	shown := must(panelpage.Draw(panelpage.Input{Workshop: w, Panel: p, Deed: d, Photograph: must(photograph(ph)), Key: &key}))
	say("page", shown.HTML)
	for _, a := range shown.Assets {
		say(a.Name, a.Data)
	}
	for _, doc := range must(linkedart.Documents(w, p)) {
		say(doc.Name, doc.JSON)
	}
	say("Dublin Core", must(deposit.DublinCore(tell.English(), w, p)))
	for _, table := range deposit.Tables(w, nil) {
		say(table.Name, must(table.CSV()))
	}
	say("index", must(deposit.Index(tell.English(), w)))
	return out.Bytes()
}

// deposited are the digests of all files of a deposit of the book of version 1,
// signed.
func deposited(t *testing.T) []byte {
	_, path := frozen(t)
	t.Chdir(filepath.Dir(path))
	if err := seal.DemoKey().Create("studio.key", nil); err != nil {
		t.Fatal(err)
	}
	says(t, exitDone, "", "deposit", "deposit")
	var out bytes.Buffer
	err := filepath.WalkDir("deposit", func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			fmt.Fprintf(&out, "%x %s\n", sha256.Sum256(must(os.ReadFile(name))), strings.TrimPrefix(name, "deposit/"))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}
