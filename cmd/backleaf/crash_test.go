//go:build unix

package main

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/keys"
	"backleaf/record/toolcheck"
)

// trials is how often something is tried that fails at another place each time:
// as often as BACKLEAF_ROUNDS says, much where all is asked for, else little.
func trials(t *testing.T, little, much int) int {
	if n, err := strconv.Atoi(os.Getenv("BACKLEAF_ROUNDS")); err == nil {
		return n
	}
	if toolcheck.Thorough() {
		return much
	}
	return little
}

// writing are the commands that write, typed in the folder of [writingStudio].
// Of each it is known how many entries it adds to the book, all or none.
var writing = []struct {
	line string
	adds int64
	once bool // what it makes must not be there yet
}{
	{line: "certificate 1 -o new.pdf", adds: 1, once: true},
	{line: "label all -o labels.pdf --because again", adds: 2, once: true},
	{line: "panel photo 2 front.png", adds: 1},
	{line: "key retire --because moved", adds: 2},
	{line: "key passphrase --new-passphrase-file words"},
	{line: "key lost --because stolen", adds: 1, once: true},
	{line: "key new --book fresh.sqlite", once: true},
	{line: "key recovery-sheet sheet.pdf", once: true},
	{line: "deposit bag", once: true},
	{line: "restore backup.sqlite --to again/studio.sqlite --highest none", once: true},
	{line: "backup copy.sqlite", once: true},
	{line: "site pages"},
	{line: "import acts.json", adds: 2},
	{line: "coat all --with acrylic-ground --as ground --on front", adds: 1},
	{line: "handover 1 --how sale --to Zebedee --price 10", adds: 1, once: true},
	{line: "withdraw 8 --because mistaken", adds: 1, once: true},
	{line: "handover 2 --how loan --to Zebedee", adds: 1, once: true},
	{line: "dossier 1 -o told.pdf", once: true},
	{line: "head show"},
	{line: "studio change --place Cesis", adds: 1, once: true},
}

// writingStudio is a folder in which every one of the writing commands has
// something to do.
func writingStudio(t *testing.T) (dir string, entries int64) {
	t.Helper()
	dir = t.TempDir()
	in := func(name string) string { return filepath.Join(dir, name) }
	var picture bytes.Buffer
	if err := png.Encode(&picture, image.NewGray(image.Rect(0, 0, 60, 40))); err != nil {
		t.Fatal(err)
	}
	writeTo(t, in("front.png"), picture.Bytes())
	writeTo(t, in("words"), []byte("a passphrase of words\n"))
	writeTo(t, in("acts.json"), []byte(`{"backleaf":"entries","v":1,"entries":[
		{"v":1,"kind":"note","panels":["KB26-0001-K"],"text":"seen"},{"v":1,"kind":"note","panels":["KB26-0002-V"],"text":"seen too"}]}`))
	if err := os.Mkdir(in("again"), 0o755); err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{
		"fresh.sqlite studio new --maker Vija --mark VV",
		"studio.sqlite studio new --maker Anna --mark KB --zone Europe/Riga --currency EUR --link https://example.org/P/",
		"studio.sqlite studio key new",
		"studio.sqlite material starter acrylic-ground",
		"studio.sqlite panel add --count 2 --size 20x25x0.6cm",
		"studio.sqlite paint 1 --medium oil",
		"studio.sqlite panel describe 1 --title Dune --made 2026",
		"studio.sqlite panel photo 1 " + in("front.png"),
		"studio.sqlite panel publish 1",
		"studio.sqlite backup " + in("backup.sqlite"),
	} {
		args := strings.Fields(line)
		args[0] = in(args[0])
		if said, code := typedAt(time.Date(2026, 5, 2, 12, 0, 0, 0, time.UTC), append([]string{"--book"}, args...)...); code != exitDone {
			t.Fatalf("%s: %s", line, said)
		}
	}
	return dir, holds(t, filepath.Join(dir, "studio.sqlite"))
}

// argsOf splits a line; what belongs to the studio's key is a command of studio.
func argsOf(line string) []string {
	args := strings.Fields(line)
	if args[0] == "key" {
		args = append([]string{"studio"}, args...)
	}
	return args
}

// everyFileWhole demands that no file of a folder, but for what is marked as
// unfinished, is a part of one.
func everyFileWhole(t *testing.T, dir string) {
	t.Helper()
	err := filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && strings.HasPrefix(d.Name(), safefile.Prefix):
			return fs.SkipDir
		case d.IsDir() && d.Name() == "bag":
			wholeBag(t, p)
			return fs.SkipDir
		case d.IsDir(), strings.HasSuffix(d.Name(), "-shm"), strings.HasSuffix(d.Name(), "-wal"):
			return nil
		}
		data, err := os.ReadFile(p)
		if err != nil {
			return err
		}
		name, good := d.Name(), true
		switch folder := filepath.Base(filepath.Dir(p)); {
		case folder == kept.Papers || folder == kept.Photographs:
			sum, _, _ := strings.Cut(name, ".")
			good = seal.DigestOf(data).String() == sum
		case strings.HasSuffix(name, ".pdf"):
			good = bytes.HasSuffix(bytes.TrimSpace(data), []byte("%%EOF"))
		case strings.HasSuffix(name, ".html"):
			good = bytes.HasSuffix(data, []byte(" -->\n")) || bytes.HasSuffix(data, []byte(" -->"))
		case strings.HasSuffix(name, ".key"):
			good = bytes.HasSuffix(data, []byte(" PRIVATE KEY-----\n"))
		case strings.HasSuffix(name, ".sqlite"):
			holds(t, p)
		}
		if !good {
			t.Errorf("%s is a part of a file: %d bytes", p, len(data))
		}
		return nil
	})
	if err != nil {
		t.Error(err)
	}
}

// soundAfter demands of a folder in which a command was cut off that the book
// has all of its entries or none, all if they were acknowledged, that the key
// is there or its loss on record, and that the next start is a clean one.
func soundAfter(t *testing.T, dir, line string, before, adds int64, once, acknowledged bool) (done bool) {
	t.Helper()
	everyFileWhole(t, dir)
	got := holds(t, filepath.Join(dir, "studio.sqlite"))
	switch {
	case got != before && got != before+adds:
		t.Errorf("%d entries, where %d were and %d are added", got, before, adds)
	case acknowledged && got != before+adds:
		t.Errorf("acknowledged and lost: %d entries", got)
	}
	done = adds > 0 && got == before+adds
	book := "studio.sqlite"
	if strings.Contains(line, "fresh.sqlite") {
		book = "fresh.sqlite"
	}
	// A key on record can be found and opened; the next start puts it in its place.
	if said := runs(t, dir, "studio", "key", "show", "--book", book); strings.Contains(said, "current") {
		if !keys.There(filepath.Join(dir, book)) {
			t.Errorf("the key is not in its place after the next start:\n%s", said)
		}
	}
	again := program(dir, argsOf(line)...)
	again.Env = append(again.Env, "BACKLEAF_PASSPHRASE=a passphrase of words")
	if out, err := again.CombinedOutput(); err != nil && !once {
		t.Errorf("the same once more: %v\n%s", err, out)
	}
	everyFileWhole(t, dir)
	verify := program(dir, "verify")
	if out, err := verify.CombinedOutput(); err != nil {
		t.Errorf("verify: %v\n%s", err, out)
	}
	// Writes into the same folders clear away what was left.
	runs(t, dir, "backup", "last.sqlite")
	if left, _ := filepath.Glob(filepath.Join(dir, safefile.Prefix+"*")); left != nil {
		t.Errorf("left behind: %v", left)
	}
	return done
}

// TestKilledCommands kills every writing command at some moment.
func TestKilledCommands(t *testing.T) {
	from, before := writingStudio(t)
	took := map[string]time.Duration{}
	counts := map[bool]int{}
	skip := rand.IntN(len(writing)) // a short run has others each time
	for i := range trials(t, 3, 30) {
		x := writing[(i+skip)%len(writing)]
		dir := copyOf(t, from)
		if took[x.line] == 0 {
			start := time.Now()
			if out, err := program(copyOf(t, from), argsOf(x.line)...).CombinedOutput(); err != nil {
				t.Fatalf("%s: %v\n%s", x.line, err, out)
			}
			took[x.line] = time.Since(start)
		}
		var said bytes.Buffer
		c := program(dir, argsOf(x.line)...)
		c.Stdout = &said
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		wait := time.Duration(rand.Int64N(int64(took[x.line])*11/10 + 1))
		time.Sleep(wait)
		c.Process.Kill()
		c.Wait()
		acknowledged := said.Len() > 0 || c.ProcessState.Success()
		counts[soundAfter(t, dir, x.line, before, x.adds, x.once, acknowledged)]++
		if t.Failed() {
			t.Fatalf("%s, killed after %v, in %s", x.line, wait, dir)
		}
		os.RemoveAll(dir)
	}
	t.Logf("%d had written their entries, %d had not, or write none", counts[true], counts[false])
}

// TestNoRoomForCommands lets every file of every writing command end at some
// size, as on a full disk.
func TestNoRoomForCommands(t *testing.T) {
	from, before := writingStudio(t)
	failed := 0
	skip := rand.IntN(len(writing))
	for i := range trials(t, 3, 20) {
		x := writing[(i+skip)%len(writing)]
		dir := copyOf(t, from)
		limit := rand.Int64N(1 << (10 + rand.IntN(12))) // as often below 4 kB as above 1 MB
		var said, told bytes.Buffer
		c := program(dir, argsOf(x.line)...)
		c.Env = append(c.Env, fmt.Sprintf("TEST_FILE_LIMIT=%d", limit))
		c.Stdout, c.Stderr = &said, &told
		err := c.Run()
		if err != nil {
			failed++
			if s := told.String(); !strings.Contains(s, "backleaf: ") || strings.Contains(s, "goroutine") {
				t.Errorf("it said %q", s)
			}
		}
		soundAfter(t, dir, x.line, before, x.adds, x.once, err == nil)
		if t.Failed() {
			t.Fatalf("%s, no file larger than %d bytes, in %s: %v\n%s", x.line, limit, dir, err, told.String())
		}
		os.RemoveAll(dir)
	}
	t.Logf("%d failed for want of room", failed)
}

// TestManyWriters lets twenty processes write into one book at once: none
// fails, and each entry that was acknowledged is there.
func TestManyWriters(t *testing.T) {
	dir := t.TempDir()
	runs(t, dir, "studio", "new", "--maker", "Anna", "--mark", "KB")
	runs(t, dir, "panel", "add", "--size", "20 x 20 cm x 6 mm")
	before, each := holds(t, filepath.Join(dir, "studio.sqlite")), trials(t, 1, 5)
	var all sync.WaitGroup
	for w := range 20 {
		all.Go(func() {
			for i := range each {
				if out, err := program(dir, "note", "1", fmt.Sprintf("writer %d, note %d", w, i)).CombinedOutput(); err != nil {
					t.Errorf("writer %d: %v\n%s", w, err, out)
				}
			}
		})
	}
	all.Wait()
	if got := holds(t, filepath.Join(dir, "studio.sqlite")); got != before+int64(20*each) {
		t.Errorf("%d entries after %d and 20 × %d", got, before, each)
	}
	onlyThese(t, dir, "studio.sqlite", "studio.sqlite-wal", "studio.sqlite-shm")
}

// copyOf copies a folder, with its rights, into a new one.
func copyOf(t *testing.T, from string) string {
	t.Helper()
	to := filepath.Join(t.TempDir(), "studio")
	if err := os.CopyFS(to, os.DirFS(from)); err != nil {
		t.Fatal(err)
	}
	keyFiles, _ := filepath.Glob(filepath.Join(to, "*.key"))
	for _, k := range keyFiles {
		os.Chmod(k, 0o600)
	}
	return to
}
