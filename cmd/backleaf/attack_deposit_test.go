package main

import (
	"bytes"
	"crypto/sha256"
	"crypto/sha512"
	"encoding/hex"
	"hash"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/studio/verify"
)

// relisted makes all lists of a bag anew, as anyone can.
func relisted(t *testing.T, dir string) {
	t.Helper()
	lists := func(prefix string, of func(string) bool) {
		for name, sum := range map[string]func() hash.Hash{"sha256": sha256.New, "sha512": sha512.New} {
			var lines []string
			err := filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
				rel, _ := filepath.Rel(dir, p)
				if rel = filepath.ToSlash(rel); err != nil || d.IsDir() || !of(rel) {
					return err
				}
				data, err := os.ReadFile(p)
				h := sum()
				h.Write(data)
				lines = append(lines, hex.EncodeToString(h.Sum(nil))+"  "+rel+"\n")
				return err
			})
			if err != nil {
				t.Fatal(err)
			}
			slices.Sort(lines)
			writeTo(t, filepath.Join(dir, prefix+name+".txt"), []byte(strings.Join(lines, "")))
		}
	}
	lists("manifest-", func(p string) bool { return strings.HasPrefix(p, "data/") })
	lists("tagmanifest-", func(p string) bool {
		return !strings.HasPrefix(p, "data/") && !strings.HasPrefix(p, "tagmanifest-") && p != verify.DepositSignature
	})
}

// recounted makes the lists anew, and the count of bytes.
func recounted(t *testing.T, dir string) {
	t.Helper()
	info, err := os.ReadFile(filepath.Join(dir, "bag-info.txt"))
	if err != nil {
		t.Fatal(err)
	}
	if i := bytes.Index(info, []byte("Payload-Oxum")); i > 0 {
		n, octets := 0, int64(0)
		eachFile(t, filepath.Join(dir, "data"), func(_ string, data []byte) { n, octets = n+1, octets+int64(len(data)) })
		writeTo(t, filepath.Join(dir, "bag-info.txt"), []byte(string(info[:i])+"Payload-Oxum: "+strconv.FormatInt(octets, 10)+"."+strconv.Itoa(n)+"\n"))
	}
	relisted(t, dir)
}

// resigned signs a deposit with the key of somebody else.
func resigned(t *testing.T, dir string) {
	t.Helper()
	d, err := seal.OpenDeposit(must(os.ReadFile(filepath.Join(dir, verify.DepositSignature))))
	if err != nil {
		t.Fatal(err)
	}
	d.Manifest = seal.DigestOf(must(os.ReadFile(filepath.Join(dir, verify.SignedManifest))))
	writeTo(t, filepath.Join(dir, verify.DepositSignature), must(d.Sign(must(seal.NewKey()))))
}

// Every file of a signed deposit, and every pair of files that belong together,
// is held against something else.
func TestDepositsThatLie(t *testing.T) {
	studio, _ := issued(t)
	honest := filepath.Join(t.TempDir(), "deposit")
	typedIn(t, studio, "", "deposit", honest)
	thief, _ := issued(t)
	forged := filepath.Join(t.TempDir(), "deposit")
	typedIn(t, thief, "", "deposit", forged)

	read := func(dir, p string) []byte {
		data, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(p)))
		if err != nil {
			t.Fatal(err)
		}
		return data
	}
	const one, two = "data/panels/KB26-0001-K/", "data/panels/KB26-0002-V/"
	for _, c := range []lieInDeposit{
		{"as it was made", func(string) {}, false, exitDone, "deposit: signed and unaltered; the key is"},
		{"a page altered", func(d string) { writeTo(t, filepath.Join(d, one+"page.html"), []byte("A Great Master")) }, false, exitIntegrity, one + "page.html was altered"},
		{"two pages swapped", func(d string) {
			a, b := read(d, one+"page.html"), read(d, two+"page.html")
			writeTo(t, filepath.Join(d, one+"page.html"), b)
			writeTo(t, filepath.Join(d, two+"page.html"), a)
		}, false, exitIntegrity, one + "page.html was swapped: it holds what " + two + "page.html should"},
		{"a file added", func(d string) { writeTo(t, filepath.Join(d, "data/panels/new.txt"), []byte("x")) }, false, exitIntegrity, "data/panels/new.txt was added"},
		{"a file beside data added", func(d string) { writeTo(t, filepath.Join(d, "READ-THIS-FIRST.txt"), []byte("x")) }, false, exitIntegrity, "READ-THIS-FIRST.txt was added"},
		{"a file missing", func(d string) { os.Remove(filepath.Join(d, one+"dossier.txt")) }, false, exitIntegrity, one + "dossier.txt is missing"},
		{"a page altered, checksums made anew", func(d string) { writeTo(t, filepath.Join(d, one+"page.html"), []byte("A Great Master")) }, true, exitIntegrity, "that the deposit is as it was signed: tagmanifest-sha512.txt is another one"},
		{"the words to the reader altered, checksums made anew", func(d string) { writeTo(t, filepath.Join(d, "README.txt"), []byte("all is well")) }, true, exitIntegrity, "is another one"},
		{"the signature taken away", func(d string) { os.Remove(filepath.Join(d, verify.DepositSignature)) }, false, exitIntegrity, "that signature (signature.txt) was taken away"},
		{"a page altered, the signature taken away, checksums made anew", func(d string) {
			writeTo(t, filepath.Join(d, one+"page.html"), []byte("A Great Master"))
			os.Remove(filepath.Join(d, verify.DepositSignature))
		}, true, exitIntegrity, "that signature (signature.txt) was taken away"},
		{"a list of lists added", func(d string) { writeTo(t, filepath.Join(d, "tagmanifest-md5.txt"), nil) }, false, exitIntegrity, "tagmanifest-md5.txt was added"},
		{"a list of lists missing", func(d string) { os.Remove(filepath.Join(d, "tagmanifest-sha256.txt")) }, false, exitIntegrity, "tagmanifest-sha256.txt is missing"},
		{"an empty folder", func(d string) { os.Mkdir(filepath.Join(d, "CERTIFIED"), 0o755) }, false, exitIntegrity, "CERTIFIED was added"},
		{"signed again by a stranger", func(d string) { resigned(t, d) }, false, exitIntegrity, "the whole with another key"},
		{"signed again by a stranger, of no entries", func(d string) {
			os.Remove(filepath.Join(d, "data/journal.json"))
			os.Remove(filepath.Join(d, "data/book.sqlite"))
			recounted(t, d)
			word := must(seal.OpenDeposit(must(os.ReadFile(filepath.Join(d, verify.DepositSignature)))))
			word.Entries, word.Root = 0, seal.LeafHash(nil)
			writeTo(t, filepath.Join(d, verify.DepositSignature), must(word.Sign(must(seal.NewKey()))))
			resigned(t, d)
		}, false, exitIntegrity, "of a journal that is not in it"},
		{"without journal and book, signed again by a stranger", func(d string) {
			os.Remove(filepath.Join(d, "data/journal.json"))
			os.Remove(filepath.Join(d, "data/book.sqlite"))
			recounted(t, d)
			resigned(t, d)
		}, false, exitIntegrity, "of a journal that is not in it"},
		{"every signature taken away, checksums made anew", func(d string) {
			for _, n := range []string{verify.DepositSignature, "data/keys/head.txt", one + "record.sig", one + "head.txt", one + "proof.json", one + "studio.pem", two + "record.sig", two + "head.txt", two + "proof.json", two + "studio.pem"} {
				os.Remove(filepath.Join(d, n))
			}
		}, true, exitIntegrity, "that README.txt says what the journal says"},
		{"the signature of another deposit", func(d string) {
			writeTo(t, filepath.Join(d, verify.DepositSignature), read(forged, verify.DepositSignature))
		}, false, exitIntegrity, "is another one"},
		{"a record of another panel, checksums made anew", func(d string) {
			writeTo(t, filepath.Join(d, one+"record.json"), read(d, two+"record.json"))
			os.Remove(filepath.Join(d, verify.DepositSignature))
		}, true, exitIntegrity, one + "record.json: the signature over record.json"},
		{"the records of another journal, checksums made anew", func(d string) {
			for _, n := range verify.Names {
				writeTo(t, filepath.Join(d, one+n), read(forged, one+n))
			}
			os.Remove(filepath.Join(d, verify.DepositSignature))
		}, true, exitIntegrity, one + "record.json: that the studio’s book issued it: it is of another journal"},
		{"a record taken away, checksums made anew", func(d string) {
			for _, n := range verify.Names {
				os.Remove(filepath.Join(d, two+n))
			}
			os.Remove(filepath.Join(d, verify.DepositSignature))
		}, true, exitIntegrity, "that every panel has its record: KB26-0002-V have none"},
		{"the journal of another book, checksums made anew", func(d string) {
			writeTo(t, filepath.Join(d, "data/journal.json"), read(forged, "data/journal.json"))
			os.Remove(filepath.Join(d, verify.DepositSignature))
		}, true, exitIntegrity, "the journal: journal.json and book.sqlite in the deposit are not the same journal"},
		{"another key beside, checksums made anew", func(d string) {
			names, _ := filepath.Glob(filepath.Join(forged, "data/keys/*.pem"))
			data, _ := os.ReadFile(names[0])
			writeTo(t, filepath.Join(d, "data/keys/99-new.pem"), data)
			os.Remove(filepath.Join(d, verify.DepositSignature))
		}, true, exitIntegrity, "data/keys/99-new.pem: the journal does not know it"},
		{"a kept head of another journal, checksums made anew", func(d string) {
			writeTo(t, filepath.Join(d, "data/keys/heads/00000001.txt"), read(forged, "data/keys/head.txt"))
			os.Remove(filepath.Join(d, verify.DepositSignature))
		}, true, exitIntegrity, "data/keys/heads/00000001.txt: no key of the studio signed it"},
	} {
		t.Run(c.name, func(t *testing.T) { c.check(t, honest) })
	}
}

// A lie in a deposit, and what is said of it.
type lieInDeposit struct {
	name   string
	change func(dir string)
	anew   bool // all checksums are made anew
	code   int
	says   string
}

func (c lieInDeposit) check(t *testing.T, honest string) {
	dir := filepath.Join(t.TempDir(), "deposit")
	if err := os.CopyFS(dir, os.DirFS(honest)); err != nil {
		t.Fatal(err)
	}
	c.change(dir)
	if c.anew {
		recounted(t, dir)
	}
	code, said := verified(t, dir)
	if code != c.code || !strings.Contains(said, c.says) {
		t.Errorf("exit code %d, %q is not said in:\n%s", code, c.says, said)
	}
	if c.anew && !strings.Contains(said, "each as it is listed (by sha256 and sha512)") {
		t.Errorf("the checksums were not made anew:\n%s", said)
	}
}

// Nothing is signed in a deposit that was made without the key, or whose
// signatures were taken away. The first line says so, and pages, tables and
// papers are made again from the journal where the words are this program's.
func TestUnsignedDepositsThatLie(t *testing.T) {
	studio, _ := issued(t)
	honest := filepath.Join(t.TempDir(), "deposit")
	typedIn(t, studio, "", "deposit", honest, "--unsigned")
	const one = "data/panels/KB26-0001-K/"
	altered := func(file, old, new string) func(string) {
		return func(dir string) {
			path := filepath.Join(dir, filepath.FromSlash(file))
			data := must(os.ReadFile(path))
			if !bytes.Contains(data, []byte(old)) {
				t.Fatalf("%s does not hold %q", file, old)
			}
			writeTo(t, path, bytes.ReplaceAll(data, []byte(old), []byte(new)))
		}
	}
	otherwise := func(file string) string {
		return "that " + file + " says what the journal says: this program makes it otherwise"
	}
	const pdf = "data/papers/dossiers/KB26-0001-K.pdf"
	lies := map[string]func(string){ // told by the file
		otherwise(one + "page.html"):              altered(one+"page.html", "Dune, evening", "A Great Master"),
		otherwise(one + "dossier.txt"):            altered(one+"dossier.txt", "Dune, evening", "A Great Master"),
		otherwise(one + "record.json"):            altered(one+"record.json", `"outcome":"holds"`, `"outcome":"unknown"`),
		otherwise(one + "dublin-core.xml"):        func(d string) { os.Remove(filepath.Join(d, filepath.FromSlash(one+"dublin-core.xml"))) },
		otherwise(pdf):                            altered(pdf, "%PDF-", "%PDF-1.7\n%"),
		otherwise("data/tables/panels.csv"):       altered("data/tables/panels.csv", "Dune, evening", "A Great Master"),
		otherwise("data/index.html"):              altered("data/index.html", "Dune, evening", "A Great Master"),
		otherwise("README.txt"):                   altered("README.txt", "NOTHING HERE IS SIGNED", "ALL IS SIGNED"),
		otherwise("bag-info.txt"):                 altered("bag-info.txt", "Number-of-Panels: 2", "Number-of-Panels: 3"),
		"data/READ-THIS.html is nothing that the": func(d string) { writeTo(t, filepath.Join(d, "data/READ-THIS.html"), []byte("x")) },
	}
	t.Run("lies", func(t *testing.T) {
		dir := filepath.Join(t.TempDir(), "deposit")
		if err := os.CopyFS(dir, os.DirFS(honest)); err != nil {
			t.Fatal(err)
		}
		for _, lie := range lies {
			lie(dir)
		}
		recounted(t, dir)
		code, said := verified(t, dir)
		for says := range lies {
			if code != exitIntegrity || !strings.Contains(said, says) {
				t.Errorf("exit code %d, %q is not said in:\n%s", code, says, said)
			}
		}
		if n := strings.Count(said, "makes it otherwise") + strings.Count(said, "is nothing that the"); n != len(lies) {
			t.Errorf("%d files are named, not %d:\n%s", n, len(lies), said)
		}
	})
	for _, c := range []lieInDeposit{
		{"as it was made", func(string) {}, true, exitUnverified, "deposit: the signature to be expected is missing: the studio has a key, and nothing here is signed with it"},
		{"as it was made: derived", func(string) {}, true, exitUnverified, "holds            pages and tables, labels and dossiers too, say what the journal says: "},
		{"other words, as of another program", func(d string) {
			altered("bag-info.txt", "Words-Version: ", "Words-Version: 0")(d)
			altered(one+"page.html", "Dune, evening", "A Great Master")(d)
		}, true, exitUnverified, "unchanged since the deposit, if the above holds; not made again from the journal, for this program’s words are of version"},
		{"no words named", altered("bag-info.txt", "Words-Version: ", "Other-Version: "), true, exitUnverified, "and the deposit names none"},
	} {
		t.Run(c.name, func(t *testing.T) { c.check(t, honest) })
	}
}

// A deposit is held against the book here and the status that is given, and
// what does not hold of it is not read back.
func TestDepositBesideWitnesses(t *testing.T) {
	studio, _ := issued(t)
	k, _, err := seal.LoadKey(filepath.Join(studio, "studio.key"), nil)
	if err != nil {
		t.Fatal(err)
	}
	thief, _ := issued(t)
	dir := filepath.Join(t.TempDir(), "deposit")
	typedIn(t, studio, "", "deposit", dir)
	word := must(seal.OpenDeposit(must(os.ReadFile(filepath.Join(dir, verify.DepositSignature)))))
	own := must(os.ReadFile(filepath.Join(studio, "c.pdf")))
	status := func(k seal.Key) string {
		s := seal.Status{Origin: word.Origin, Date: "2026-06-01", Size: word.Entries, Root: word.Root, Papers: map[seal.Standing][]seal.Digest{
			seal.Withdrawn: {seal.DigestOf(attached(t, own)[deed.RecordName])}}}
		return writeTo(t, filepath.Join(t.TempDir(), "status"), must(s.Sign(k)))
	}
	for _, c := range []struct {
		beside string
		args   []string
		code   int
		says   string
	}{
		{studio, nil, exitDone, "holds            a key of the studio signed it, and the journal in the book here begins with the "},
		{thief, nil, exitIntegrity, "it is of another journal"},
		{"", []string{"--status", status(k)}, exitDone, "deposit: papers in it were withdrawn or replaced, or their panels stolen, lost or discarded, since; signed"},
		{"", []string{"--status", status(must(seal.NewKey()))}, exitDone, "deposit: the status beside it is not of this key"},
	} {
		if code, said := verifiedWith(t, c.beside, append([]string{dir}, c.args...)...); code != c.code || !strings.Contains(said, c.says) {
			t.Errorf("%v: exit code %d, not %d; %q in\n%s", c.args, code, c.code, c.says, said)
		}
	}
	typedIn(t, studio, "", "certificate", "withdraw", "0001", "--because", "sold twice")
	if code, said := verifiedWith(t, studio, dir); code != exitDone || !strings.Contains(said, "deposit: papers in it were withdrawn") {
		t.Errorf("exit code %d\n%s", code, said)
	}
	resigned(t, dir)
	heir := filepath.Join(t.TempDir(), "studio.sqlite")
	typedAt(time.Now(), "--book", heir, "studio", "new", "--empty")
	if said, code := typedAt(time.Now(), "--book", heir, "import", dir, "--highest", "none"); code != exitIntegrity || !strings.Contains(said, "does not hold: ") {
		t.Errorf("exit code %d\n%s", code, said)
	}
}
