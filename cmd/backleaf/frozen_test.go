package main

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/binary"
	"encoding/csv"
	"encoding/hex"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/deposit"
	"backleaf/record/form"
	"backleaf/record/pdf"
	"backleaf/record/seal"
	"backleaf/record/sheet"
)

// What version 1 wrote, frozen in testdata/v1: a book with its photograph, a
// deposit of it, and the record folder of one panel. If this file has to be
// changed to make a test pass, old books can no longer be read: that is never
// right. A new version gets a folder of its own.
const (
	frozenEntries = 34
	frozenRoot    = "4968072e218309712b6941fdb44985e8e628a1ab4a47ff90672ac33ba020caa9"
	frozenRecord  = "e366bb1f937db6e8296ee2fa1f979612ba81fad72b91df5b9a4486adfb5053e8" // SHA-256 of record.json
	frozenPanel   = record.Number("DM25-0001-T")
)

var frozenStory = [][]string{
	{"studio", "new", "--maker", "Ilze Paraugs", "--mark", "DM", "--zone", "Europe/Riga", "--place", "Cēsis", "--link", "HTTPS://PARAUGS.EXAMPLE/P/", "--paper", "a4", "--currency", "EUR", "--demonstration"},
	{"studio", "key", "new", "--demonstration"},
	{"material", "starter", "acrylic-sealer", "linen-fine", "acrylic-ground", "birch-ply-3mm", "hydrocarbon-varnish"},
	{"lot", "add", "sealer-1", "acrylic-sealer", "--number", "TW 31", "--quantity", "1 L", "--price", "21.50 EUR"},
	{"lot", "add", "ground-1", "acrylic-ground", "--number", "MW 118", "--quantity", "0.5 L"},
	{"climate", "--temp", "19.5 °C", "--rh", "54%", "--place", "workroom"},
	{"panel", "add", "--count", "3", "--batch", "may", "--size", "8 x 10 x 1/8 in", "--board", "birch-ply-3mm", "--grain", "width"},
	{"coat", "batch:may", "--with", "3 sealer-1 + 1 ground-1", "--as", "sealer", "--on", "all", "--extra", "edges", "--amount", "90 g", "--tool", "foam roller"},
	{"cloth", "batch:may", "--cloth", "linen-fine", "--with", "sealer-1", "--amount", "60 g", "--threads", "along-grain", "--wet-through", "yes", "--edges-pressed", "yes"},
	{"warm", "batch:may", "--for", "5 min"},
	{"trim", "batch:may", "--tool", "fresh blade", "--eased", "yes"},
	{"coat", "batch:may", "--with", "sealer-1", "--on", "back", "--amount", "45 g"},
	{"sand", "batch:may", "--on", "front", "--grit", "P180", "--through", "no"},
	{"coat", "batch:may", "--with", "ground-1", "--as", "ground", "--on", "front,back", "--thinned", "10%", "--amount", "80 g"},
	{"panel", "brace", "2", "--with", "cradle", "--fixing", "sliding"},
	{"panel", "discard", "3", "--because", "cloth lifted"},
	{"amend", "12", "--set", "wet_total=100 g", "--because", "misread the scale"},
	{"withdraw", "14", "--because", "no warm air was used", "--panel", "2"},
	{"paint", "1", "--medium", "oil", "--oil-content", "lean", "--pigment", "titanium white=PW 6", "--underdrawing", "charcoal"},
	{"panel", "describe", "1", "--title", "Ūdens <zems> & \"mierīgs\"", "--made", "2019-21~", "--signed", "lower right", "--subject", "a river"},
	{"panel", "photo", "1", "front.png", "--caption", "daylight"},
	{"varnish", "1", "--with", "hydrocarbon-varnish", "--removable", "yes", "--removed-with", "white spirit", "--gloss", "satin", "--amount-each", "3 g"},
	{"inspect", "1", "--bow", "0.5 mm", "--span", "25 cm", "--hollow-to", "front", "--edges", "sound", "--adhesion", "sound"},
	{"note", "1", "=not a formula, and not <b>bold</b>"},
	{"label", "1", "-o", "labels.pdf"},
	{"certificate", "1", "-o", "first.pdf"},
	{"handover", "1", "--how", "sale", "--to", "A. Buyer", "--price", "900 EUR"},
	{"condition", "1", "one scratch, 12 mm", "--by", "R. Invented"},
	{"treat", "1", "surface cleaned dry", "--by", "R. Invented", "--with", "soft brush"},
	{"certificate", "1", "-o", "second.pdf", "--because", "the panel was treated"},
}

// freeze makes the files of version 1, once: what is there is never written
// over.
func freeze(t *testing.T, to string) {
	t.Helper()
	if _, err := os.Lstat(to); err == nil {
		return
	}
	dir := t.TempDir()
	t.Chdir(dir)
	img := image.NewGray(image.Rect(0, 0, 60, 48))
	for i := range img.Pix {
		img.SetGray(i%60, i/60, color.Gray{uint8(4 * (i % 60))})
	}
	var picture bytes.Buffer
	if err := png.Encode(&picture, img); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("front.png", picture.Bytes(), 0o666); err != nil {
		t.Fatal(err)
	}
	now := time.Date(2025, 5, 2, 9, 0, 0, 0, time.FixedZone("", 3*3600))
	run := func(args ...string) {
		now = now.Add(6 * time.Hour)
		said, code := typedAt(now, args...)
		if code != exitDone {
			t.Fatalf("backleaf %s: exit code %d\n%s", strings.Join(args, " "), code, said)
		}
	}
	for _, args := range frozenStory {
		run(args...)
	}
	if err := os.MkdirAll(filepath.Join(to, "record"), 0o777); err != nil {
		t.Fatal(err)
	}
	run("backup", filepath.Join(to, "book.sqlite"))
	run("deposit", filepath.Join(to, "deposit"))
	data, err := os.ReadFile("second.pdf")
	if err != nil {
		t.Fatal(err)
	}
	files, err := pdf.Attachments(data)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files.Files {
		if err := os.WriteFile(filepath.Join(to, "record", f.Name), f.Data, 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

// typedAt runs one command line and returns what it said.
func typedAt(now time.Time, args ...string) (string, int) {
	var said bytes.Buffer
	a := &app{in: strings.NewReader(""), out: &said, err: &said, env: func(string) string { return "" }, now: func() time.Time { return now },
		random: fixedSalt{}}
	code := a.run(context.Background(), args)
	return said.String(), code
}

// frozen returns the folder of version 1 and a copy of its book to work on.
func frozen(t *testing.T) (dir, bookPath string) {
	t.Helper()
	dir, err := filepath.Abs(filepath.Join("..", "..", "testdata", "v1"))
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		freeze(t, dir)
	}
	work := t.TempDir()
	bookPath = filepath.Join(work, "studio.sqlite")
	data, err := os.ReadFile(filepath.Join(dir, "book.sqlite"))
	if err == nil {
		err = os.WriteFile(bookPath, data, 0o600)
	}
	if err == nil {
		err = os.CopyFS(filepath.Join(work, "photographs"), os.DirFS(filepath.Join(dir, "photographs")))
	}
	if err == nil {
		err = os.CopyFS(filepath.Join(work, "papers"), os.DirFS(filepath.Join(dir, "papers")))
	}
	if err != nil {
		t.Fatal(err)
	}
	return dir, bookPath
}

// says demands the exit code and some words of a command.
func says(t *testing.T, code int, words string, args ...string) {
	t.Helper()
	said, got := typedAt(time.Date(2027, 1, 1, 12, 0, 0, 0, time.UTC), args...)
	if got != code || !strings.Contains(said, words) || code == exitDone && strings.Contains(said, "does not hold") {
		t.Errorf("backleaf %s: exit code %d, want %d and %q:\n%s", strings.Join(args, " "), got, code, words, said)
	}
}

// Today's program reads, folds and verifies the book of version 1 to the same
// hashes, and can go on writing in it.
func TestFrozenBook(t *testing.T) {
	dir, path := frozen(t)
	ctx := context.Background()
	b, err := book.OpenReadOnly(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	r, err := b.Verify(ctx, nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := hex.EncodeToString(r.Root[:]); r.Entries != frozenEntries || got != frozenRoot || len(r.Missing) != 0 || r.Private != 2 {
		t.Errorf("%d entries, root %q, %d private parts, missing %v", r.Entries, got, r.Private, r.Missing)
	}
	stored, err := b.Entries(ctx, book.Filter{})
	if err != nil {
		t.Fatal(err)
	}
	var es []record.Entry
	for _, s := range stored {
		again, err := form.Write(s.Entry)
		if err != nil || !bytes.Equal(again, s.Bytes) {
			t.Errorf("entry %d is written as %s today, %v", s.Seq, again, err)
		}
		es = append(es, s.Entry)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	sameTables(t, w, es, filepath.Join(dir, "deposit", "data", "tables"))
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	says(t, exitDone, "photographs: 1 kept, 1 in order", "--book", path, "verify")
	says(t, exitDone, "A. Buyer", "--book", path, "handover", "show", "1")
	says(t, exitDone, "E", "--book", path, "note", "1", "written by a later program")
	says(t, exitDone, "the book holds", "--book", path, "verify")
	says(t, exitDone, "holds: the", "--book", path, "head", "compare", filepath.Join(dir, "record"))
}

// sameTables holds what today's fold gives against frozen tables: columns may
// have been added since, but what a column says of a panel has not changed.
func sameTables(t *testing.T, w *record.Workshop, es []record.Entry, dir string) {
	t.Helper()
	var stored []form.Stored
	for _, e := range es {
		b, err := form.Write(e)
		if err != nil {
			t.Fatal(err)
		}
		stored = append(stored, form.Stored{Seq: e.Seq, Bytes: b, Entry: e})
	}
	for _, now := range deposit.Tables(w, stored) {
		f, err := os.Open(filepath.Join(dir, now.Name+".csv"))
		if err != nil {
			t.Fatal(err)
		}
		was, err := csv.NewReader(f).ReadAll()
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		if len(was) < 2 || len(now.Rows) != len(was) {
			t.Errorf("table %s has %d rows, and had %d", now.Name, len(now.Rows), len(was))
			continue
		}
		for i, column := range was[0] {
			today := slices.Index(now.Rows[0], column)
			if today < 0 {
				t.Errorf("table %s has no column %s any more", now.Name, column)
				continue
			}
			for r := 1; r < len(was); r++ {
				if got, want := now.Rows[r][today], sheet.Unguard(was[r][i]); got != want {
					t.Errorf("table %s, row %d, %s is %q, and was %q", now.Name, r, column, got, want)
				}
			}
		}
	}
}

// The deposit of version 1 is whole, and reads back to the same journal.
func TestFrozenDeposit(t *testing.T) {
	dir, _ := frozen(t)
	bag := filepath.Join(dir, "deposit")
	says(t, exitDone, "the deposit is whole", "verify", bag)
	says(t, exitDone, "3 records, 2 certificates, 1 book", "verify", bag)
	path := filepath.Join(t.TempDir(), "studio.sqlite")
	says(t, exitDone, path, "--book", path, "studio", "new", "--empty")
	says(t, exitDone, "(root) is "+frozenRoot+"; 4 kept files in order", "--book", path, "import", bag, "--highest", "none")
	says(t, exitDone, "(root) is "+frozenRoot, "--book", path, "verify")
}

// The record of version 1 reads, folds and verifies.
func TestFrozenRecord(t *testing.T) {
	dir, _ := frozen(t)
	folder := filepath.Join(dir, "record")
	says(t, exitDone, "holds", "verify", folder)
	read := func(name string) []byte {
		data, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		return data
	}
	data := read(deed.RecordName)
	if sum := sha256.Sum256(data); hex.EncodeToString(sum[:]) != frozenRecord {
		t.Errorf("record.json has the digest %x", sum)
	}
	r, err := deed.Read(data)
	if err != nil {
		t.Fatal(err)
	}
	if r.Number != frozenPanel || r.Panel.Stage() != record.StageVarnished || len(r.Panel.Layers()) < 8 {
		t.Errorf("%s, %s, %d layers", r.Number, r.Panel.Stage(), len(r.Panel.Layers()))
	}
	key, err := seal.ParsePublicPEM(read(deed.KeyName))
	if err != nil {
		t.Fatal(err)
	}
	if err := key.VerifyRecord(data, read(deed.SignatureName)); err != nil {
		t.Error(err)
	}
}

// A book of a later version is read and verified, and says that it is newer; it
// is not written to, and nothing is judged, issued or printed from it.
func TestNewerBook(t *testing.T) {
	_, path := frozen(t)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	// user_version stands at offset 60 (SQLite file format, section 1.3).
	if v := binary.BigEndian.Uint32(data[60:]); v != 1 {
		t.Fatalf("user_version is %d", v)
	}
	binary.BigEndian.PutUint32(data[60:], 2)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	out := filepath.Join(t.TempDir(), "out")
	for _, args := range [][]string{{"verify"}, {"list"}, {"show", "1"}, {"export"}, {"find", "river"}} {
		says(t, exitDone, "newer: may be out of date", append([]string{"--book", path}, args...)...)
	}
	for _, args := range [][]string{{"note", "1", "x"}, {"deposit", out, "--unsigned"}, {"check"}, {"due"}, {"dossier", "1"}, {"ask", "1", "size"}, {"label", "1", "-o", out}} {
		says(t, exitNewer, "newer", append([]string{"--book", path}, args...)...)
	}
	if now, err := os.ReadFile(path); err != nil || !bytes.Equal(now, data) {
		t.Errorf("the book was touched, %v", err)
	}
	if _, err := os.Lstat(out); err == nil {
		t.Error("something was written")
	}
}

// fixedSalt is always the same.
type fixedSalt struct{}

func (fixedSalt) Read(p []byte) (int, error) { return copy(p, "a fixed salt, 16"), nil }
