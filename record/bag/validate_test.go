package bag_test

import (
	"crypto/sha256"
	"crypto/sha512"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"backleaf/record/bag"
)

const declaration = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"

// Digests published in the v1.0 folder of the BagIt conformance suite (Library
// of Congress, commit 9ab4870) for its basic bag: hello.txt holds "hello\n".
const (
	helloSum    = "e7c22b994c59d9cf2b48e549b1e24666636045930d3da7c1acb299d1c3b7f931f94aae41edda2c2b207a36e10f8bcb8d45223e54878f5b316e7ce3b6bc019629"
	bagitSum    = "1d73ae108d4109b61f56698a5e19ee1f8947bdf8940bbce6adbe5e0940c2363caace6a547b4f1b3ec6a4fd2b7fa845e9cb9d28823bc72c59971718bb26f2fbd8"
	manifestSum = "00c69a00e6af794264d4503c2bd71d31b7bc5c4aa341a11e5ee87a2440f30079db9e5ac26103dd7e0b000eec446980bee85cfe37f64c4fdd736e468aa2040244"
)

func basic() map[string]string {
	return map[string]string{
		"bagit.txt":              declaration,
		"data/hello.txt":         "hello\n",
		"manifest-sha512.txt":    helloSum + "  data/hello.txt\n",
		"tagmanifest-sha512.txt": bagitSum + "  bagit.txt\n" + manifestSum + "  manifest-sha512.txt\n",
	}
}

func lay(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for p, text := range files {
		name := filepath.Join(dir, filepath.FromSlash(p))
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func sum256(text string) string { return fmt.Sprintf("%x", sha256.Sum256([]byte(text))) }
func sum512(text string) string { return fmt.Sprintf("%x", sha512.Sum512([]byte(text))) }

// retag makes the tag manifest fit, so that only the wanted fault is left.
func retag(files map[string]string) map[string]string {
	m := ""
	for p, text := range files {
		if !strings.HasPrefix(p, "data/") && !strings.HasPrefix(p, "tagmanifest") {
			m += sum512(text) + " " + p + "\n"
		}
	}
	files["tagmanifest-sha512.txt"] = m
	return files
}

// The five bags of the suite's v1.0 folder: the basic bag with its published
// digests, the others rebuilt with the fault each is made for.
func TestSuite(t *testing.T) {
	with := func(changes map[string]string, fix bool) map[string]string {
		files := basic()
		for p, text := range changes {
			files[p] = text
		}
		if fix {
			retag(files)
		}
		return files
	}
	hello := sum256("hello\n") + "  data/hello.txt\n"
	for _, c := range []struct {
		name            string
		files           map[string]string
		complete, valid bool
		problem         string
	}{
		{"basicBag", basic(), true, true, ""},
		{"bagit-with-invalid-whitespace", with(map[string]string{"bagit.txt": "BagIt-Version : 1.0\nTag-File-Character-Encoding : UTF-8\n"}, true),
			true, false, "bagit.txt: does not begin with BagIt-Version"},
		{"notAllManifestsListAllFiles", with(map[string]string{"data/missingFromManifest.txt": "x"}, false),
			false, false, "data/missingFromManifest.txt: is not listed in manifest-sha512.txt"},
		{"same-filename-listed-twice-with-different-hashes", with(map[string]string{"manifest-sha256.txt": hello + "deadbeef" + hello[8:]}, true),
			true, false, `manifest-sha256.txt: line 2: "data/hello.txt" is listed twice`},
		{"same-filename-listed-twice-with-the-same-hash", with(map[string]string{"manifest-sha256.txt": hello + hello, "debug": "x"}, true),
			true, false, `manifest-sha256.txt: line 2: "data/hello.txt" is listed twice`},
	} {
		checkBag(t, c.name, lay(t, c.files), c.complete, c.valid, c.problem)
	}
}

func checkBag(t *testing.T, name, dir string, complete, valid bool, problem string) {
	t.Helper()
	r := validate(t, dir)
	if r.Complete != complete || r.Valid != valid {
		t.Errorf("%s: complete %v, valid %v: %v", name, r.Complete, r.Valid, r.Problems)
	}
	found := problem == "" && len(r.Problems) == 0
	for _, p := range r.Problems {
		found = found || problem != "" && strings.Contains(p.String(), problem)
	}
	if !found {
		t.Errorf("%s: problems %v, want %q", name, r.Problems, problem)
	}
}

// One fault each, as RFC 8493 sections 2 and 3 describe them.
func TestFaults(t *testing.T) {
	type files = map[string]string
	set := func(p, text string) func(files) { return func(f files) { f[p] = text } }
	for _, c := range []struct {
		name            string
		change          func(files)
		complete, valid bool
		problem         string
	}{
		{"nothing", func(files) {}, true, true, ""},
		{"changed", set("data/hello.txt", "Hello\n"), true, false, "data/hello.txt: sha512 checksum differs"},
		{"gone", func(f files) { delete(f, "data/hello.txt"); f["data/other"] = "" }, false, false, "data/hello.txt: is missing (listed in manifest-sha512.txt)"},
		{"added", set("data/more", "x"), false, false, "data/more: is not listed"},
		{"no payload folder", func(f files) { delete(f, "data/hello.txt") }, false, false, "data: the payload folder is missing"},
		{"no declaration", func(f files) { delete(f, "bagit.txt") }, false, false, "bagit.txt: is missing"},
		{"no manifest", func(f files) { delete(f, "manifest-sha512.txt") }, false, false, "there is no payload manifest"},
		{"tag file gone", set("tagmanifest-sha512.txt", bagitSum+"  bagit.txt\n"+bagitSum+"  about.txt\n"), false, false, "about.txt: is missing (listed in tagmanifest"},
		{"tag file changed", set("bagit.txt", strings.ReplaceAll(declaration, "\n", "\r\n")), true, false, "bagit.txt: sha512 checksum differs"},
		{"second manifest lists less", set("manifest-sha256.txt", ""), false, false, "is not listed in manifest-sha256.txt"},
		{"second manifest differs", set("manifest-sha256.txt", sum256("x")+" data/hello.txt"), true, false, "sha256 checksum differs"},
		{"old checksum holds", set("manifest-md5.txt", "b1946ac92492d2347c6235b4d2611184  data/hello.txt\n"), true, true, ""},
		{"upper case, binary mark, CR", set("manifest-sha256.txt", strings.ToUpper(sum256("hello\n"))+" *data/hello.txt\r"), true, true, ""},
		{"unknown checksum", set("manifest-crc32.txt", "x"), true, false, "manifest-crc32.txt: uses a checksum that is not known here"},
		{"short checksum", set("manifest-sha256.txt", "abcd data/hello.txt"), false, false, "line 1: checksum is not 64 hexadecimal digits"},
		{"climbing path", set("manifest-sha256.txt", sum256("")+" data/../../etc/passwd"), false, false, "path has empty, . or .. parts"},
		{"absolute path", set("manifest-sha256.txt", sum256("")+" /etc/passwd"), false, false, "path is not relative"},
		{"home path", set("manifest-sha256.txt", sum256("")+" ~/x"), false, false, "path is not relative"},
		{"tag in payload manifest", set("manifest-sha256.txt", sum256("hello\n")+" data/hello.txt\n"+sum256(declaration)+" bagit.txt"), true, false, "does not belong there"},
		{"stray percent", set("manifest-sha256.txt", sum256("hello\n")+" data/hello.txt\n"+sum256("")+" data/100%"), true, false, "percent sign is not written %25"},
		{"version", set("bagit.txt", strings.Replace(declaration, "1.0", "2.0", 1)), true, false, "only 1.0 is known here"},
		{"encoding", set("bagit.txt", strings.Replace(declaration, "UTF-8", "UTF-16", 1)), true, false, "only UTF-8 is known here"},
		{"byte order mark", set("bagit.txt", "\ufeff"+declaration), true, false, "does not begin with BagIt-Version"},
		{"third line", set("bagit.txt", declaration+"\n"), true, false, "exactly two lines"},
		{"oxum", set("bag-info.txt", "Payload-Oxum: 6.1\n"), true, true, ""},
		{"wrong oxum", set("bag-info.txt", "payload-oxum: 7.1\n"), true, false, `Payload-Oxum is "7.1", but the payload is 6.1`},
		{"second oxum", set("bag-info.txt", "Payload-Oxum: 6.1\nPayload-Oxum: 6.1\n"), true, false, "twice"},
		{"info without colon", set("bag-info.txt", "nonsense\n"), true, false, "bag-info.txt: line 1"},
		{"twice, spelled otherwise", set("manifest-sha256.txt", sum256("hello\n")+" data/hello.txt\n"+sum256("hello\n")+" ./data/hello.txt\n"), true, false, `line 2: "data/hello.txt" is listed twice`},
		{"percent that hides a way out", set("manifest-sha256.txt", sum256("")+" data/%2e%2e/%2e%2e/x"), false, false, "percent sign is not written %25"},
		{"backslashes", set("manifest-sha256.txt", sum256("")+` data\..\..\x`), false, false, "path is not relative with forward slashes"},
		{"zero byte", set("manifest-sha256.txt", sum256("")+" data/hello.txt\x00"), false, false, "path holds a zero byte"},
		{"line end in a path", set("manifest-sha256.txt", sum256("hello\n")+" data/hello.txt\n"+sum256("")+" data/a%0Db"), false, false, `"data/a\rb": is missing`},
		{"overlong line", set("manifest-sha256.txt", sum256("hello\n")+" data/hello.txt\n"+sum256("")+" data/"+strings.Repeat("x", 20000)), true, false, "line 2: is longer than 16 KB"},
		{"overlong path", set("manifest-sha256.txt", sum256("hello\n")+" data/hello.txt\n"+sum256("")+" data/"+strings.Repeat("x", 5000)), true, false, "line 2: path is longer than 4096 bytes"},
		{"fetch without manifest", set("fetch.txt", "https://example.org/x - data/x\n"), true, false, `lists "data/x", which manifest-sha512.txt does not`},
		{"fetch climbing", set("fetch.txt", "https://example.org/x 5 ../x\n"), true, false, "fetch.txt: line 1: path has"},
	} {
		f := basic()
		c.change(f)
		checkBag(t, c.name, lay(t, f), c.complete, c.valid, c.problem)
	}
}

// Two names that a system without regard to case, or to how accents are spelled, takes
// for one: kept here, and said.
func TestAlike(t *testing.T) {
	f := basic()
	for _, p := range []string{"data/A", "data/a", "data/\u00e9", "data/e\u0301"} {
		f[p] = ""
		f["manifest-sha512.txt"] += sum512("") + "  " + p + "\n"
	}
	r := validate(t, lay(t, retag(f)))
	if !r.Valid || len(r.Notes) != 2 || r.Notes[0].Path != "data/a" || r.Notes[1].Path != "data/\u00e9" {
		t.Errorf("%+v", r)
	}
}

func TestFetchIsOnlyReported(t *testing.T) {
	f := basic()
	f["fetch.txt"] = "http://127.0.0.1:9/never - data/far.txt\n"
	f["manifest-sha512.txt"] += sum512("far") + "  data/far.txt\n"
	dir := lay(t, retag(f))
	checkBag(t, "fetch", dir, false, false, "data/far.txt: is missing")
	if r := validate(t, dir); len(r.Notes) != 1 || !strings.Contains(r.Notes[0].String(), "nothing was fetched") {
		t.Errorf("notes %v", r.Notes)
	}
}

// Links, pipes and links to folders: reported, never followed, never opened.
func TestHostile(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("needs symbolic links and pipes")
	}
	secret := filepath.Join(t.TempDir(), "secret")
	if err := os.WriteFile(secret, []byte("hello\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	link := func(target, p string) func(string) error {
		return func(dir string) error {
			os.Remove(filepath.Join(dir, p))
			return os.Symlink(target, filepath.Join(dir, p))
		}
	}
	for _, c := range []struct {
		name    string
		change  func(dir string) error
		problem string
	}{
		{"link out", link(secret, "data/hello.txt"), "data/hello.txt: is no file of its own (a symbolic link)"},
		{"link within", link("../bagit.txt", "data/x"), "data/x: is no file of its own (a symbolic link)"},
		{"link to a folder", link("/", "data/root"), "data/root: is no file of its own (a symbolic link)"},
		{"tag link", link(secret, "bag-info.txt"), "bag-info.txt: is no file of its own"},
		{"manifest link", link(secret, "manifest-sha512.txt"), "there is no payload manifest"},
		{"pipe", func(dir string) error { return exec.Command("mkfifo", filepath.Join(dir, "data", "p")).Run() }, "data/p: is no file of its own (a pipe)"},
		{"terminal escapes", func(dir string) error { return os.WriteFile(filepath.Join(dir, "data", "\x1b[2J"), nil, 0o600) }, `"data/\x1b[2J": is not listed`},
		{"large tag file", func(dir string) error {
			return os.WriteFile(filepath.Join(dir, "bag-info.txt"), make([]byte, 2<<20), 0o600)
		}, "bag-info.txt: was not read: it is larger than 1 MB"},
	} {
		dir := lay(t, basic())
		if err := c.change(dir); err != nil {
			t.Fatal(c.name, err)
		}
		r := validate(t, dir)
		if r.Valid {
			t.Errorf("%s: valid", c.name)
		}
		checkBag(t, c.name, dir, r.Complete, false, c.problem)
	}
}

func TestNoBag(t *testing.T) {
	if _, err := bag.Validate(t.Context(), filepath.Join(t.TempDir(), "nothing")); err == nil {
		t.Error("no error for a folder that is not there")
	}
	checkBag(t, "empty folder", t.TempDir(), false, false, "bagit.txt: is missing")
}

// The lowest bit of every byte of every file turned over once: always found.
func TestEveryByte(t *testing.T) {
	dir := lay(t, basic())
	for _, p := range []string{"bagit.txt", "data/hello.txt", "manifest-sha512.txt", "tagmanifest-sha512.txt"} {
		name := filepath.Join(dir, p)
		good, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for i := range good {
			bad := []byte(string(good))
			bad[i] ^= 1
			if err := os.WriteFile(name, bad, 0o644); err != nil {
				t.Fatal(err)
			}
			if r := validate(t, dir); r.Valid {
				t.Errorf("%s: byte %d changed and not found", p, i)
			}
		}
		if err := os.WriteFile(name, good, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
