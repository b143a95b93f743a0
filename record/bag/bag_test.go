package bag_test

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"testing/iotest"
	"time"

	"backleaf/record/bag"
	"backleaf/record/toolcheck"
)

var date = time.Date(2026, 5, 2, 14, 5, 0, 0, time.FixedZone("", 7200))

func sample() bag.Bag {
	return bag.Bag{
		Payload: []bag.File{
			bag.Bytes("records/KB26-0142-1.json", []byte(`{"number":"KB26-0142-1"}`)),
			bag.Bytes("README.txt", []byte("How to read this folder\n")),
			bag.Bytes("empty", nil),
			bag.Bytes("photographs/Ωmega ünd Ж.png", []byte{0, 1, 2, '\r', '\n'}),
		},
		Tags:  []bag.File{bag.Bytes("about/context.txt", []byte("context"))},
		Info:  []bag.Field{{"Source-Organization", "Atelier <Ü> & \"Co\""}, {"External-Description", "six panels"}},
		Agent: "a test",
		Date:  date,
	}
}

func writeSample(t *testing.T) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "bag")
	if err := bag.Write(dir, sample()); err != nil {
		t.Fatal(err)
	}
	return dir
}

func validate(t *testing.T, dir string) bag.Report {
	t.Helper()
	r, err := bag.Validate(t.Context(), dir)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestWriteAndValidate(t *testing.T) {
	dir := writeSample(t)
	r := validate(t, dir)
	if !r.Complete || !r.Valid || len(r.Problems)+len(r.Notes) != 0 {
		t.Errorf("report %+v", r)
	}
	if r.Files != 4 || r.Octets != 24+24+5 || fmt.Sprint(r.Algorithms) != "[sha256 sha512]" {
		t.Errorf("report %+v", r)
	}
	want := "Source-Organization: Atelier <Ü> & \"Co\"\nExternal-Description: six panels\n" +
		"Bag-Software-Agent: a test\nBagging-Date: 2026-05-02\nPayload-Oxum: 53.4\n"
	if b, err := os.ReadFile(filepath.Join(dir, "bag-info.txt")); err != nil || string(b) != want {
		t.Errorf("bag-info.txt %q, %v", b, err)
	}
	if got := bag.FormatInfo(r.Info); got != want {
		t.Errorf("fields read back as %q", got)
	}
}

func TestSameBytes(t *testing.T) {
	a, b := writeSample(t), writeSample(t)
	count := 0
	err := filepath.WalkDir(a, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		count++
		x, _ := os.ReadFile(p)
		y, err := os.ReadFile(strings.Replace(p, a, b, 1))
		if string(x) != string(y) {
			t.Errorf("%s differs", p)
		}
		return err
	})
	if err != nil || count != 11 {
		t.Errorf("%d files, %v", count, err)
	}
}

// The checksum tools of any Unix check a bag by themselves.
func TestSumTools(t *testing.T) {
	dir := writeSample(t)
	for _, algorithm := range []string{"sha256", "sha512"} {
		toolcheck.Require(t, algorithm+"sum")
		for _, m := range []string{"manifest-", "tagmanifest-"} {
			cmd := exec.Command(algorithm+"sum", "--strict", "-c", m+algorithm+".txt")
			cmd.Dir = dir
			if out, err := cmd.CombinedOutput(); err != nil || strings.Count(string(out), ": OK") != 4+1*strings.Count(m, "tag") {
				t.Errorf("%s: %s %v", cmd, out, err)
			}
		}
	}
}

func TestNeverOverwrites(t *testing.T) {
	dir := writeSample(t)
	other := sample()
	other.Payload = nil
	if err := bag.Write(dir, other); !errors.Is(err, fs.ErrExist) {
		t.Errorf("error %v", err)
	}
	if r := validate(t, dir); !r.Valid || r.Files != 4 {
		t.Errorf("the bag was touched: %+v", r)
	}
}

// A reader fails, at the first byte or after some, in each file in turn:
// nothing is left.
func TestReaderFails(t *testing.T) {
	stop := errors.New("the stick was pulled out")
	broken := func(path string, before int) bag.File {
		return bag.File{Path: path, Open: func() (io.ReadCloser, error) {
			if before < 0 {
				return nil, stop
			}
			return io.NopCloser(io.MultiReader(strings.NewReader(strings.Repeat("x", before)), iotest.ErrReader(stop))), nil
		}}
	}
	n := len(sample().Payload)
	for i := range n + 1 {
		for _, before := range []int{-1, 0, 100_000} {
			b := sample()
			if i < n {
				b.Payload[i] = broken(b.Payload[i].Path, before)
			} else {
				b.Tags[0] = broken(b.Tags[0].Path, before)
			}
			parent := t.TempDir()
			err := bag.Write(filepath.Join(parent, "bag"), b)
			left, _ := os.ReadDir(parent)
			if !errors.Is(err, stop) || len(left) != 0 {
				t.Errorf("file %d: error %v, left %v", i, err, left)
			}
		}
	}
}

// TestMain lets TestDiskFull run this program under a file size limit.
func TestMain(m *testing.M) {
	if dir := os.Getenv("BAG_TEST_DIR"); dir != "" {
		b := sample()
		b.Payload = append(b.Payload, bag.Bytes("large", make([]byte, 1<<20)))
		fmt.Println(bag.Write(filepath.Join(dir, "bag"), b))
		return
	}
	os.Exit(m.Run())
}

func TestDiskFull(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no file size limit can be set")
	}
	toolcheck.Require(t, "bash") // it sets the limit
	dir := t.TempDir()
	cmd := exec.Command("bash", "-c", "ulimit -f 100; exec "+os.Args[0])
	cmd.Env = append(os.Environ(), "BAG_TEST_DIR="+dir)
	out, err := cmd.CombinedOutput()
	left, _ := os.ReadDir(dir)
	if err != nil || !strings.Contains(string(out), "file too large") || len(left) != 0 {
		t.Errorf("%s %v, left %v", out, err, left)
	}
}

func TestFromDisk(t *testing.T) {
	dir := writeSample(t)
	again := filepath.Join(t.TempDir(), "again")
	b := bag.Bag{Date: date, Payload: []bag.File{bag.FromDisk("copy.json", filepath.Join(dir, "data", "records", "KB26-0142-1.json"))}}
	if err := bag.Write(again, b); err != nil || !validate(t, again).Valid {
		t.Error(err)
	}
}

func TestWriteRefuses(t *testing.T) {
	long := strings.Repeat("x", 256)
	for _, p := range []string{
		"", ".", "..", "/etc/passwd", "../x", "a/../../x", "a//b", "a/", "./a", "~/x", `a\b`, "c:/x", "c:x", "a\x00b", "a\nb", "a\rb", "a\x1bb",
		"a\u202eb", "\xff", "CON", "con", "nul.txt", "x/Lpt1.json", "COM¹", "a.", "a ", " a", "a:b", "a*", "a?", `a"`, "a<b", "a|b", "e\u0301", long,
	} {
		b := sample()
		b.Payload = append(b.Payload, bag.Bytes(p, nil))
		refused(t, fmt.Sprintf("path %q", p), b)
	}
	for _, pair := range [][2]string{{"a", "a"}, {"a", "A"}, {"straße", "STRAẞE"}, {"a", "a/b"}, {"A/c", "a"}, {"ÄB/c", "äb"}} {
		b := sample()
		b.Payload = append(b.Payload, bag.Bytes(pair[0], nil), bag.Bytes(pair[1], nil))
		refused(t, fmt.Sprint("paths ", pair), b)
	}
	for _, p := range []string{"data/x", "Data", "bagit.txt", "BagIt.txt", "bag-info.txt", "fetch.txt", "manifest-md5.txt", "tagmanifest-sha256.txt", "../x"} {
		b := sample()
		b.Tags = append(b.Tags, bag.Bytes(p, nil))
		refused(t, fmt.Sprintf("tag file %q", p), b)
	}
	for _, f := range []bag.Field{{"", "x"}, {"A:B", "x"}, {"A\n", "x"}, {"A", "x\nBagging-Date: 1999-01-01"}, {"A", "x\x1b[2J"}, {"payload-oxum", "1.1"}, {"A", "\xff"}, {" A", "x"}} {
		b := sample()
		b.Info = append(b.Info, f)
		refused(t, fmt.Sprintf("field %q", f), b)
	}
	b := sample()
	b.Date = time.Time{}
	refused(t, "no date", b)
}

func refused(t *testing.T, what string, b bag.Bag) {
	t.Helper()
	parent := t.TempDir()
	err := bag.Write(filepath.Join(parent, "bag"), b)
	if left, _ := os.ReadDir(parent); err == nil || !strings.HasPrefix(err.Error(), "cannot write bag ") || len(left) != 0 {
		t.Errorf("%s: error %v, left %v", what, err, left)
	}
}

// RFC 8493 section 2.1.3: a percent sign in a path is written %25.
func TestPercent(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "bag")
	b := sample()
	b.Payload = []bag.File{bag.Bytes("100% linen%0A.txt", []byte("x"))}
	if err := bag.Write(dir, b); err != nil {
		t.Fatal(err)
	}
	m, err := os.ReadFile(filepath.Join(dir, "manifest-sha256.txt"))
	if err != nil || !strings.HasSuffix(string(m), "  data/100%25 linen%250A.txt\n") {
		t.Errorf("manifest %q, %v", m, err)
	}
	if r := validate(t, dir); !r.Valid {
		t.Errorf("report %+v", r)
	}
}
