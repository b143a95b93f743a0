package safefile_test

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
	"sync"
	"testing"
	"time"

	"backleaf/record/safefile"
)

func content(s string) func(*os.File) error {
	return func(f *os.File) error { _, err := io.WriteString(f, s); return err }
}

// want checks that dir holds exactly these files (name, content, name, …) and
// nothing hidden.
func want(t *testing.T, dir string, pairs ...string) {
	t.Helper()
	expect := map[string]string{}
	for i := 0; i < len(pairs); i += 2 {
		expect[pairs[i]] = pairs[i+1]
	}
	got := map[string]string{}
	err := filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() && !strings.HasPrefix(d.Name(), ".") {
			return err
		}
		b, _ := os.ReadFile(p)
		rel, _ := filepath.Rel(dir, p)
		got[filepath.ToSlash(rel)] = string(b)
		return nil
	})
	if err != nil || fmt.Sprint(got) != fmt.Sprint(expect) {
		t.Errorf("folder holds %q, want %q (%v)", got, expect, err)
	}
}

func TestWriteReplaces(t *testing.T) {
	dir := t.TempDir()
	p := filepath.Join(dir, "a.pdf")
	for _, s := range []string{"first", "second"} {
		if err := safefile.Write(p, 0o644, content(s)); err != nil {
			t.Fatal(err)
		}
		want(t, dir, "a.pdf", s)
	}
}

// What is of another kind stays as it is.
func TestRenew(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x")
	for _, data := range []string{"kind one", "kind two"} {
		if err := safefile.Renew(path, "kind", []byte(data)); err != nil {
			t.Fatal(err)
		}
	}
	if err := safefile.Renew(path, "sort", []byte("sort")); !errors.Is(err, fs.ErrExist) {
		t.Errorf("written over another kind: %v", err)
	}
	if got, _ := os.ReadFile(path); string(got) != "kind two" {
		t.Errorf("got %q", got)
	}
}

// A folder in the way is called one, and is there all the same.
func TestFolderThere(t *testing.T) {
	dir := t.TempDir()
	none := func(string) error { return nil }
	for what, err := range map[string]error{"create": safefile.Create(dir, 0o644, content("new")), "folder": safefile.CreateDir(dir, none), "renew": safefile.Renew(dir, "kind", nil)} {
		if !errors.Is(err, fs.ErrExist) || !strings.HasSuffix(err.Error(), "a folder of that name is there already") {
			t.Errorf("%s: %v", what, err)
		}
	}
}

func TestMode(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has no such modes")
	}
	p := filepath.Join(t.TempDir(), "key.pem")
	if err := safefile.Create(p, 0o600, content("k")); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(p); err != nil || info.Mode() != 0o600 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
}

func TestCreateRefuses(t *testing.T) {
	dir := t.TempDir()
	p := filepath.Join(dir, "a")
	if err := safefile.Create(p, 0o644, content("old")); err != nil {
		t.Fatal(err)
	}
	if err := safefile.Create(p, 0o644, content("new")); !errors.Is(err, fs.ErrExist) {
		t.Errorf("error %v", err)
	}
	if err := safefile.CreateDir(p, func(string) error { return nil }); !errors.Is(err, fs.ErrExist) {
		t.Errorf("error %v", err)
	}
	want(t, dir, "a", "old")
}

// The name is taken by somebody else while the content is being written.
func TestCreateLosesRace(t *testing.T) {
	dir := t.TempDir()
	p := filepath.Join(dir, "a")
	err := safefile.Create(p, 0o644, func(f *os.File) error {
		return errors.Join(content("new")(f), os.WriteFile(p, []byte("theirs"), 0o644))
	})
	if !errors.Is(err, fs.ErrExist) {
		t.Errorf("error %v", err)
	}
	want(t, dir, "a", "theirs")
	d := filepath.Join(dir, "d")
	err = safefile.CreateDir(d, func(string) error {
		return errors.Join(os.Mkdir(d, 0o755), os.WriteFile(filepath.Join(d, "x"), []byte("theirs"), 0o644))
	})
	if !errors.Is(err, fs.ErrExist) {
		t.Errorf("error %v", err)
	}
	want(t, dir, "a", "theirs", "d/x", "theirs")
}

// A library that insists on a path writes to f.Name().
func TestFillByPath(t *testing.T) {
	dir := t.TempDir()
	err := safefile.Create(filepath.Join(dir, "a"), 0o644, func(f *os.File) error {
		return os.WriteFile(f.Name(), []byte("by path"), 0o644)
	})
	if err != nil {
		t.Fatal(err)
	}
	want(t, dir, "a", "by path")
}

func TestWriteRefusesOthers(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "d"), 0o755); err != nil {
		t.Fatal(err)
	}
	for _, p := range []string{filepath.Join(dir, "d"), filepath.Join(dir, "missing", "a")} {
		if err := safefile.Write(p, 0o644, content("x")); err == nil || !strings.HasPrefix(err.Error(), "cannot write "+p) {
			t.Errorf("%s: error %v", p, err)
		}
	}
	t.Chdir(dir)
	for _, err := range []error{safefile.Write("", 0o644, content("x")), safefile.Create("", 0o644, content("x")), safefile.CreateDir("", fillDir)} {
		if err == nil || !strings.Contains(err.Error(), "it has no name") {
			t.Errorf("no name: error %v", err)
		}
	}
	want(t, dir)
}

func fillDir(dir string) error {
	return errors.Join(
		os.WriteFile(filepath.Join(dir, "one"), []byte("1"), 0o644),
		os.Mkdir(filepath.Join(dir, "in"), 0o755),
		os.WriteFile(filepath.Join(dir, "in", "two"), []byte("2"), 0o644))
}

func TestCreateDir(t *testing.T) {
	dir := t.TempDir()
	if err := safefile.CreateDir(filepath.Join(dir, "bag"), fillDir); err != nil {
		t.Fatal(err)
	}
	want(t, dir, "bag/one", "1", "bag/in/two", "2")
}

// Every step is broken in turn: afterwards the old file stands, or the new one
// whole, and nothing else is left.
func TestFaults(t *testing.T) {
	jobs := map[string]func(dir string) error{
		"write":  func(dir string) error { return safefile.Write(filepath.Join(dir, "a"), 0o644, content("new")) },
		"create": func(dir string) error { return safefile.Create(filepath.Join(dir, "b"), 0o644, content("new")) },
		"dir":    func(dir string) error { return safefile.CreateDir(filepath.Join(dir, "b"), fillDir) },
	}
	for name, job := range jobs {
		broken := 0
		for at := 0; ; at++ {
			dir := t.TempDir()
			if err := os.WriteFile(filepath.Join(dir, "a"), []byte("old"), 0o644); err != nil {
				t.Fatal(err)
			}
			n, stepBroken := 0, ""
			restore := safefile.SetFault(func(step, path string) error {
				n++
				if n-1 == at {
					stepBroken = step
					return errors.New("the disk is full")
				}
				return nil
			})
			err := job(dir)
			restore()
			if stepBroken == "" {
				if err != nil {
					t.Errorf("%s: %v without a fault", name, err)
				}
				break
			}
			broken++
			if err == nil || !strings.Contains(err.Error(), "the disk is full") {
				t.Errorf("%s: step %d (%s) broken, error %v", name, at, stepBroken, err)
			}
			lastStep := strings.Contains(err.Error(), "did not confirm")
			switch {
			case !lastStep:
				want(t, dir, "a", "old")
			case name == "write":
				want(t, dir, "a", "new")
			case name == "create":
				want(t, dir, "a", "old", "b", "new")
			default:
				want(t, dir, "a", "old", "b/one", "1", "b/in/two", "2")
			}
		}
		if broken < 6 {
			t.Errorf("%s: only %d steps were broken", name, broken)
		}
	}
}

func TestFillFails(t *testing.T) {
	dir := t.TempDir()
	stop := errors.New("the reader failed")
	half := func(f *os.File) error { io.WriteString(f, "half"); return stop }
	for _, err := range []error{
		safefile.Write(filepath.Join(dir, "a"), 0o644, half),
		safefile.Create(filepath.Join(dir, "a"), 0o644, half),
		safefile.CreateDir(filepath.Join(dir, "a"), func(dir string) error { return errors.Join(fillDir(dir), stop) }),
	} {
		if !errors.Is(err, stop) {
			t.Errorf("error %v", err)
		}
	}
	want(t, dir)
}

// child runs this test program again with a job of its own; see TestMain.
func child(job, dir string) *exec.Cmd {
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), "SAFEFILE_JOB="+job, "SAFEFILE_DIR="+dir)
	return cmd
}

func TestMain(m *testing.M) {
	dir := os.Getenv("SAFEFILE_DIR")
	switch os.Getenv("SAFEFILE_JOB") {
	case "hang":
		err := safefile.Create(filepath.Join(dir, "a"), 0o644, func(f *os.File) error {
			io.WriteString(f, "half")
			fmt.Println("writing")
			time.Sleep(time.Minute)
			return nil
		})
		fmt.Println(err)
	case "hang in a folder":
		err := safefile.CreateDir(filepath.Join(dir, "a"), func(dir string) error {
			fillDir(dir)
			fmt.Println("writing")
			time.Sleep(time.Minute)
			return nil
		})
		fmt.Println(err)
	case "big":
		err := safefile.Create(filepath.Join(dir, "a"), 0o644, func(f *os.File) error {
			_, err := f.Write(make([]byte, 1<<20))
			return err
		})
		fmt.Println(err)
	default:
		os.Exit(m.Run())
	}
}

// A killed writer leaves its unfinished folder and nothing under the real
// name; the next write takes it away, but not while the writer lives, and not
// what merely looks alike.
func TestKilled(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("needs kill -9")
	}
	for _, job := range []string{"hang", "hang in a folder"} {
		t.Run(job, func(t *testing.T) { killed(t, job) })
	}
}

func killed(t *testing.T, job string) {
	dir := t.TempDir()
	cmd := child(job, dir)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	if _, err := out.Read(make([]byte, 8)); err != nil {
		t.Fatal(err)
	}
	left := func() int {
		m, _ := filepath.Glob(filepath.Join(dir, safefile.Prefix+"*"))
		return len(m)
	}
	if err := safefile.Write(filepath.Join(dir, "b"), 0o644, content("b")); err != nil || left() != 1 {
		t.Errorf("a living writer's folder: %d left, %v", left(), err)
	}
	cmd.Process.Kill()
	cmd.Wait()
	if _, err := os.Lstat(filepath.Join(dir, "a")); err == nil {
		t.Error("half a file took the real name")
	}
	alike := filepath.Join(dir, safefile.Prefix+"alike")
	if err := os.MkdirAll(filepath.Join(alike, "letters"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := safefile.Create(filepath.Join(dir, "a"), 0o644, content("a")); err != nil || left() != 1 {
		t.Errorf("after the kill: %d left, %v", left(), err)
	}
	if _, err := os.Stat(filepath.Join(alike, "letters")); err != nil {
		t.Error("a folder that is not ours was removed")
	}
}

// A real write that finds no room (the file size limit of the shell).
func TestDiskFull(t *testing.T) {
	sh, err := exec.LookPath("bash")
	if err != nil || runtime.GOOS == "windows" {
		t.Skip("needs bash to set a file size limit")
	}
	dir := t.TempDir()
	cmd := child("big", dir)
	cmd.Args = []string{"bash", "-c", "ulimit -f 100; exec " + os.Args[0]}
	cmd.Path = sh
	out, err := cmd.CombinedOutput()
	if err != nil || !strings.Contains(string(out), "file too large") {
		t.Errorf("%s %v", out, err)
	}
	want(t, dir)
}

// Many writers at once in one folder never trip over each other's tidying up.
func TestTogether(t *testing.T) {
	dir := t.TempDir()
	var wg sync.WaitGroup
	var mu sync.Mutex
	created := 0
	for i := range 8 {
		wg.Go(func() {
			for j := range 20 {
				if err := safefile.Write(filepath.Join(dir, fmt.Sprint(i)), 0o644, content(fmt.Sprint(j))); err != nil {
					t.Error(err)
				}
				err := safefile.Create(filepath.Join(dir, fmt.Sprint("c", j)), 0o644, content("c"))
				if err == nil {
					mu.Lock()
					created++
					mu.Unlock()
				} else if !errors.Is(err, fs.ErrExist) {
					t.Error(err)
				}
			}
		})
	}
	wg.Wait()
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 28 || created != 20 {
		t.Errorf("%d names, %d created, %v", len(entries), created, err)
	}
}
