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
	for _, c := range []struct {
		name   string
		change func(dir string)
		anew   bool // all checksums are made anew
		code   int
		says   string
	}{
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
		{"signed again by a stranger", func(d string) { resigned(t, d) }, false, exitIntegrity, "the whole with another key"},
		{"without journal and book, signed again by a stranger", func(d string) {
			os.Remove(filepath.Join(d, "data/journal.json"))
			os.Remove(filepath.Join(d, "data/book.sqlite"))
			recounted(t, d)
			resigned(t, d)
		}, false, exitIntegrity, "of a journal that is not in it"},
		{"made without the key", func(d string) {
			os.RemoveAll(d)
			typedIn(t, studio, "", "deposit", d, "--unsigned")
		}, false, exitDone, "deposit: the studio has a key, and nothing here is signed with it"},
		{"every signature taken away, checksums made anew", func(d string) {
			for _, n := range []string{verify.DepositSignature, "data/keys/head.txt", one + "record.sig", one + "head.txt", one + "proof.json", one + "studio.pem", two + "record.sig", two + "head.txt", two + "proof.json", two + "studio.pem"} {
				os.Remove(filepath.Join(d, n))
			}
		}, true, exitDone, "deposit: the studio has a key, and nothing here is signed with it"},
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
		t.Run(c.name, func(t *testing.T) {
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
			if c.anew && !strings.Contains(said, "all checksums (sha256 and sha512) hold") {
				t.Errorf("the checksums were not made anew:\n%s", said)
			}
		})
	}
}
