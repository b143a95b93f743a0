//go:build linux

package main

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/crc32"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/studio/verify"
	"backleaf/record/toolcheck"
)

// sparse is a file of three gigabytes that takes no room.
func sparse(t *testing.T, path string) {
	t.Helper()
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE, 0o644)
	if err == nil {
		err = errors.Join(f.Truncate(3<<30), f.Close())
	}
	if err != nil {
		t.Fatal(err)
	}
}

// filled is a file that repeats a part until it has some megabytes.
func filled(t *testing.T, path, begin, part, end string, mb int) {
	t.Helper()
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	w := bufio.NewWriter(f)
	w.WriteString(begin)
	for n := len(begin); n < mb<<20-len(end)-len(part); n += len(part) {
		w.WriteString(part)
	}
	w.WriteString(end)
	if err := errors.Join(w.Flush(), f.Close()); err != nil {
		t.Fatal(err)
	}
}

// wideJournal is a journal whose entries name tens of thousands of panels each.
func wideJournal(t *testing.T, path string) {
	t.Helper()
	var ns strings.Builder
	for i := range 60000 {
		n, err := record.NewNumber("KB", 2026, i+1, "")
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&ns, ",%q", n)
	}
	const moment = `"v":1,"written":"2026-05-02T08:00:00+02:00"}`
	b := bytes.NewBufferString(`{"backleaf":"entries","v":1,"entries":[{"journal":"0123456789bcdfghjkmnpqrstv","kind":"studio","maker":"A","mark":"KB","seq":1,` + moment)
	fmt.Fprintf(b, ",\n"+`{"kind":"cut","panels":[%s],"seq":2,"size":"300 x 400 x 3 mm",`+moment, ns.String()[1:])
	for i := range 60 {
		fmt.Fprintf(b, ",\n"+`{"kind":"note","panels":[%s],"seq":%d,"text":"a",`+moment, ns.String()[1:], i+3)
	}
	writeTo(t, path, append(b.Bytes(), "]}"...))
}

// peakMB watches the memory that a program has had at most, until it ends. What
// Linux says afterwards is also that of the test, from which it was started
// (setmax_mm_hiwater_rss in its exec).
func peakMB(pid int) <-chan int64 {
	out := make(chan int64, 1)
	go func() {
		peak := int64(math.MaxInt64)
		for {
			status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
			_, rest, found := strings.Cut(string(status), "VmHWM:")
			if err != nil || !found {
				out <- peak
				return
			}
			var kB int64
			if _, err := fmt.Sscan(rest, &kB); err == nil {
				peak = kB >> 10
			}
			time.Sleep(time.Millisecond)
		}
	}()
	return out
}

// vastPNG says that it has fifty thousand pixels a side.
func vastPNG(t *testing.T, path string) {
	head := []byte("IHDR\x00\x00\xc3\x50\x00\x00\xc3\x50\x08\x02\x00\x00\x00")
	data := append([]byte("\x89PNG\r\n\x1a\n\x00\x00\x00\x0d"), head...)
	data = binary.BigEndian.AppendUint32(data, crc32.ChecksumIEEE(head))
	writeTo(t, path, append(data, "\x00\x00\x00\x00IDAT\x35\xaf\x06\x1e\x00\x00\x00\x00IEND\xae\x42\x60\x82"...))
}

// Whatever file a command is given, it takes no more than some memory and time,
// says plainly what is wrong, and waits for nobody.
func TestReadersAreBounded(t *testing.T) {
	const mostMB, most = 300, 5 * time.Second
	studio, _ := issued(t)
	deposit := filepath.Join(t.TempDir(), "deposit")
	if toolcheck.Thorough() {
		typedIn(t, studio, "", "deposit", deposit)
	}
	pipe := func(t *testing.T, path string) {
		if err := syscall.Mkfifo(path, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	nothing := func(*testing.T, string) {}
	in := func(file string, lay func(*testing.T, string)) func(*testing.T, string) { // of a deposit, in the place of x
		return func(t *testing.T, path string) {
			if err := os.CopyFS(path, os.DirFS(deposit)); err != nil {
				t.Fatal(err)
			}
			at := filepath.Join(path, file)
			os.Remove(at)
			lay(t, at)
		}
	}
	with := func(begin, part, end string, mb int) func(*testing.T, string) {
		return func(t *testing.T, path string) { filled(t, path, begin, part, end, mb) }
	}
	png := func(t *testing.T, path string) { vastPNG(t, path) }
	for _, c := range []struct {
		name string
		lay  func(*testing.T, string) // what is called x
		line string
		code int
		says string
		long bool
	}{
		{"a pipe to verify", pipe, "verify x", exitError, "it is a pipe", false},
		{"a pipe to import", pipe, "import x", exitError, "it is a pipe", false},
		{"a pipe for a mapping", pipe, "import y --mapping x", exitError, "it is a pipe", false},
		{"a pipe for a photograph", pipe, "panel photo 1 x", exitError, "it is a pipe", false},
		{"a pipe for a mark", pipe, "studio change --mark-picture x", exitError, "it is a pipe", false},
		{"a pipe for a status", pipe, "verify certificate.pdf --status x", exitError, "it is a pipe", false},
		{"a pipe for a backup", pipe, "restore x --to new.sqlite --highest none", exitError, "this is not a book", false},
		{"a pipe for an older head", pipe, "head compare x", exitError, "it is a pipe", false},
		{"a pipe for labels", pipe, "label 1 -o x", exitError, "file already exists", false},
		{"a pipe for a dossier", pipe, "dossier 1 -o x", exitError, "it is a pipe", false},
		{"a pipe for a book", pipe, "list --book x", exitError, "this is not a book", false},
		{"a pipe for a record in a folder", func(t *testing.T, p string) { os.Mkdir(p, 0o755); pipe(t, filepath.Join(p, "record.json")) }, "verify x", exitError, "it is a pipe", false},
		{"a device to verify", nothing, "verify /dev/zero", exitError, "it is a device", false},
		{"a device to import", nothing, "import /dev/zero", exitError, "it is a device", false},
		{"a device for a photograph", nothing, "panel photo 1 /dev/zero", exitError, "it is a device", false},
		{"50,000 × 50,000 pixels", png, "panel photo 1 x", exitError, "pixels", false},
		{"50,000 × 50,000 pixels for a mark", png, "studio change --mark-picture x", exitError, "no PNG picture", false},
		{"a sparse file to verify", sparse, "verify x", exitError, "larger than 64 MB", false},
		{"a sparse file to import", sparse, "import x", exitError, "this is no file of entries", false},
		{"a sparse photograph", sparse, "panel photo 1 x", exitError, "larger than 64 MB", false},
		{"a sparse status", sparse, "verify certificate.pdf --status x", exitError, "more than 1000000 bytes", false},
		{"a sparse book", sparse, "verify --book x", exitError, "this is not a book", false},
		{"a sparse key", sparse, "studio key show --book k.sqlite", exitError, "", false},
		{"endless standard input", nothing, "verify -", exitError, "larger than 64 MB", false},
		{"a text of links", with("", "https://example.org/p/KB26-0001-K\n", "", 60), "verify x", exitUnverified, "a text of more than 1 048 576 bytes", true},
		{"a text of notes", with("", "backleaf/KB panel statement\nnumber: KB26-0001-K\n\n— backleaf/KB AAAA\n", "", 60), "verify x", exitUnverified, "more than", true},
		{"a note without end", with("backleaf/KB panel statement\n", "\n", "", 60), "verify x", exitUnverified, "a text of more than 1 048 576 bytes", true},
		{"one line", with("", strings.Repeat("x", 1000), "", 60), "verify x", exitUnverified, "", true},
		{"a record without end", with(`{"backleaf":"record/1","entries":`, "[", "", 15), "verify x", exitIntegrity, "", true},
		{"a proof without end", with(`{"backleaf":"inclusion/1","entries":[`, "{},", "{}]}", 60), "verify x", exitIntegrity, "", true},
		{"an import of empty entries", with(`{"backleaf":"entries","v":1,"entries":[`, "{},", "{}]}", 60), "import x", exitError, "entry 1 of the file", true},
		{"an import of lists in lists", with(`{"backleaf":"entries","v":1,"entries":[`, "[", "", 60), "import x", exitError, "", true},
		{"an import of lines", with(`{"backleaf":"entries","v":1,"entries":[`, "\n", "", 60), "import x", exitError, "", true},
		{"an import of pigments", with(`{"backleaf":"entries","v":1,"entries":[{"v":1,"kind":"paint","panels":["KB26-0001-K"],"pigments":[`, `{"name":"a"},`, `{"name":"a"}]}]}`, 60), "import x", exitError, "", true},
		{"a spreadsheet of empty rows", with("No.\n", "1\n", "", 60), "import x --mapping mapping.json --dry-run", exitError, "", true},
		{"a spreadsheet of one cell", with("No.\n\"", "a", "\"", 60), "import x --mapping mapping.json --dry-run", exitError, "", true},
		{"a sparse certificate in a deposit", in("data/papers/new.pdf", sparse), "verify x", exitIntegrity, "", true},
		{"a sparse record in a deposit", in("data/panels/KB26-0001-K/record.json", sparse), "verify x", exitIntegrity, "", true},
		{"a sparse journal in a deposit", in("data/journal.json", sparse), "verify x", exitIntegrity, "", true},
		{"a sparse journal read back", in("data/journal.json", sparse), "import x --book empty.sqlite", exitIntegrity, "data/journal.json was altered or cut short", true},
		{"a sparse book in a deposit", in("data/book.sqlite", sparse), "verify x", exitIntegrity, "", true},
		{"a sparse signature of a deposit", in(verify.DepositSignature, sparse), "verify x", exitIntegrity, "", true},
		{"a pipe for a journal in a deposit", in("data/journal.json", pipe), "verify x", exitIntegrity, "", true},
		{"a pipe for a book in a deposit", in("data/book.sqlite", pipe), "verify x", exitIntegrity, "", true},
		{"a pipe for a certificate in a deposit", in("data/papers/new.pdf", pipe), "verify x", exitIntegrity, "", true},
		{"a journal of many panels in a deposit", in("data/journal.json", wideJournal), "verify x", exitIntegrity, "more than", true},
		{"a journal of many panels", wideJournal, "import x --book empty.sqlite", exitError, "more than", true},
	} {
		if c.long && !toolcheck.Thorough() {
			continue
		}
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			for _, f := range []string{"studio.sqlite", "studio.key", "c.pdf"} {
				data, err := os.ReadFile(filepath.Join(studio, f))
				if err != nil {
					t.Fatal(err)
				}
				writeTo(t, filepath.Join(dir, strings.Replace(f, "c.pdf", "certificate.pdf", 1)), data)
			}
			writeTo(t, filepath.Join(dir, "y"), []byte("No.\n1\n"))
			writeTo(t, filepath.Join(dir, "mapping.json"), []byte(`{"backleaf":"mapping","v":1,"columns":{"No.":"own_reference"},"constants":{"height":"10","width":"10","depth":"3"},"unit":"cm"}`))
			if strings.Contains(c.line, "empty.sqlite") {
				typedAt(time.Now(), "--book", filepath.Join(dir, "empty.sqlite"), "studio", "new", "--empty")
			}
			c.lay(t, filepath.Join(dir, "x"))
			if strings.Contains(c.line, "k.sqlite") {
				os.Rename(filepath.Join(dir, "studio.sqlite"), filepath.Join(dir, "k.sqlite"))
				os.Rename(filepath.Join(dir, "x"), filepath.Join(dir, "k.key"))
				c.line = "head show --book k.sqlite"
			}
			run := program(dir, strings.Fields(c.line)...)
			run.Env = append(run.Env, "TEST_NOW="+time.Now().Format(time.RFC3339))
			if strings.HasSuffix(c.line, " -") {
				toolcheck.Require(t, "/dev/zero")
				zero, err := os.Open("/dev/zero")
				if err != nil {
					t.Fatal(err)
				}
				defer zero.Close()
				run.Stdin = zero
			}
			var said bytes.Buffer
			run.Stdout, run.Stderr = &said, &said
			if err := run.Start(); err != nil {
				t.Fatal(err)
			}
			late := time.AfterFunc(time.Minute, func() { run.Process.Kill() })
			peak := peakMB(run.Process.Pid)
			run.Wait()
			if !late.Stop() {
				t.Fatal("it hangs")
			}
			use := run.ProcessState.SysUsage().(*syscall.Rusage)
			took, mb := run.ProcessState.UserTime()+run.ProcessState.SystemTime(), min(<-peak, use.Maxrss>>10)
			t.Logf("%3d MB %5.2f s, exit code %d", mb, took.Seconds(), run.ProcessState.ExitCode())
			if mb > mostMB || took > most || said.Len() > 1<<16 {
				t.Errorf("%d MB, %v, %d bytes said", mb, took, said.Len())
			}
			out := said.String()[:min(said.Len(), 2000)]
			if run.ProcessState.ExitCode() != c.code || !strings.Contains(said.String(), c.says) || strings.Contains(out, "goroutine") {
				t.Errorf("exit code %d, expected %d and %q:\n%s", run.ProcessState.ExitCode(), c.code, c.says, out)
			}
		})
	}
}

// What cannot be said is no success: output to a full device ends in an error.
func TestFullOutput(t *testing.T) {
	toolcheck.Require(t, "/dev/full")
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer full.Close()
	dir, _ := issued(t)
	for _, line := range []string{"list", "show 1", "verify", "verify c.pdf", "verify c.pdf --json", "journal", "export", "find --where studio", "find --where studio --csv", "head show", "studio key show --pem",
		"check", "cost all", "handover show 1", "licences", "dossier 1 --text", "list --json", "panel list"} {
		c := program(dir, strings.Fields(line)...)
		c.Stdout, c.Stderr = full, io.Discard
		var exit *exec.ExitError
		if err := c.Run(); !errors.As(err, &exit) || exit.ExitCode() != exitError {
			t.Errorf("%s: %v", line, err)
		}
	}
}
