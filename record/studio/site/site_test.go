package site_test

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/invented"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/site"
	"backleaf/record/toolcheck"
)

var ctx = context.Background()

// today is the clock of the tests.
var today = time.Date(2050, 6, 1, 12, 0, 0, 0, time.UTC)

func clock() time.Time { return today }

// TestMain lets the test binary stand in for another process that writes a site.
func TestMain(m *testing.M) {
	if dir := os.Getenv("SITE_DIR"); dir != "" {
		if err := write(os.Getenv("SITE_BOOK"), dir); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// nobody has no passphrase.
type nobody struct{}

func (nobody) Passphrase(string) ([]byte, error) { return nil, nil }
func (nobody) NewPassphrase() ([]byte, error)    { return nil, nil }
func (nobody) Warn(record.Said)                  {}

func write(path, dir string) error {
	b, err := book.OpenReadOnly(ctx, path)
	if err != nil {
		return err
	}
	defer b.Close()
	key, err := keys.Current(ctx, b, nobody{})
	if err != nil {
		return err
	}
	_, err = site.Write(ctx, &studio.Session{Book: b, Clock: clock}, site.Order{Dir: dir, Index: true, Key: key})
	return err
}

// atelier is an invented studio with a key and a folder for its site.
type atelier struct {
	testing.TB
	*studio.Session
	dir string
	key *seal.Key
}

func newAtelier(t testing.TB, panels int) *atelier {
	t.Helper()
	path := filepath.Join(t.TempDir(), "studio.sqlite")
	b, err := book.Create(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	a := &atelier{TB: t, Session: &studio.Session{Book: b, Clock: clock}, dir: filepath.Join(t.TempDir(), "site")}
	if _, err := b.Append(ctx, clock(), slices.Collect(invented.Journal(1, panels))...); err != nil {
		t.Fatal(err)
	}
	if _, err := keys.Make(ctx, a.Session, nobody{}, false); err != nil {
		t.Fatal(err)
	}
	if a.key, err = keys.Current(ctx, b, nobody{}); err != nil || a.key == nil {
		t.Fatal("no key", err)
	}
	return a
}

func (a *atelier) append(es ...record.Entry) {
	a.Helper()
	for i := range es {
		if es[i].At.IsZero() {
			es[i].At = record.Moment(clock())
		}
	}
	if _, err := a.Book.Append(ctx, clock(), es...); err != nil {
		a.Fatal(err)
	}
}

func (a *atelier) publish(shown record.Answer, ns ...record.Number) {
	a.Helper()
	a.append(record.Entry{Panels: ns, Body: record.Published{Shown: shown}})
}

func (a *atelier) write(change ...func(*site.Order)) site.Result {
	a.Helper()
	o := site.Order{Dir: a.dir, Key: a.key}
	for _, c := range change {
		c(&o)
	}
	r, err := site.Write(ctx, a.Session, o)
	if err != nil {
		a.Fatal(err)
	}
	return r
}

// stand is what stands in the folder: contents and times.
func (a *atelier) stand() map[string]string {
	out := map[string]string{}
	filepath.WalkDir(a.dir, func(path string, d fs.DirEntry, err error) error {
		if err == nil && d.Type().IsRegular() {
			data, _ := os.ReadFile(path)
			info, _ := d.Info()
			name, _ := filepath.Rel(a.dir, path)
			out[name] = fmt.Sprint(info.ModTime().UnixNano(), seal.DigestOf(data))
		}
		return nil
	})
	return out
}

func (a *atelier) page(n record.Number) string {
	data, err := os.ReadFile(filepath.Join(a.dir, n.Bare(), "index.html"))
	if err != nil {
		a.Error(err)
	}
	return string(data)
}

// Only what changed is written; what is taken back says so; what nobody names
// any more goes.
func TestOnlyWhatChanged(t *testing.T) {
	a := newAtelier(t, 20)
	one, two, three := invented.Number(0), invented.Number(1), invented.Number(2)
	a.publish(record.Yes, one, two, three)
	dry := a.write(func(o *site.Order) { o.DryRun = true })
	if _, err := os.Lstat(a.dir); !errors.Is(err, fs.ErrNotExist) || len(dry.Written) != 3 {
		t.Errorf("a dry run wrote: %v, %v", err, dry)
	}
	if r := a.write(); len(r.Written) != 3 || r.Shown != 3 || r.Files != dry.Files {
		t.Errorf("%+v, said before %+v", r, dry)
	}
	first := a.stand()
	if r := a.write(); r.Files != 0 || !maps.Equal(first, a.stand()) {
		t.Errorf("nothing changed, and %d files were written", r.Files)
	}

	a.append(record.Entry{Panels: []record.Number{two}, Body: record.Described{Title: "Changed", Subject: "something else"}})
	if r := a.write(); !slices.Equal(r.Written, []record.Number{two}) {
		t.Errorf("one panel changed, written: %v", r.Written)
	}
	now := a.stand()
	for name, was := range first {
		if (strings.HasPrefix(name, one.Bare()) || strings.HasPrefix(name, three.Bare()) || name == "404.html") && now[name] != was {
			t.Errorf("%s was touched", name)
		}
	}
	// What was drawn for the page of before is gone, and all that is named is there.
	named := map[string]bool{}
	for _, n := range []record.Number{one, two, three} {
		for _, m := range regexp.MustCompile(`a/([0-9a-f]{64}\.[a-z]+)`).FindAllStringSubmatch(a.page(n), -1) {
			named[m[1]] = true
		}
	}
	there, _ := os.ReadDir(filepath.Join(a.dir, "a"))
	for _, f := range there {
		if !named[f.Name()] {
			t.Errorf("a/%s is named by no page", f.Name())
		}
		delete(named, f.Name())
	}
	if len(named) != 0 {
		t.Errorf("not there: %v", named)
	}

	a.publish(record.No, three)
	if r := a.write(); !slices.Equal(r.TakenBack, []record.Number{three}) || r.Shown != 2 {
		t.Errorf("%+v", r)
	}
	if p := a.page(three); !strings.Contains(p, "No longer shown") || strings.Contains(p, "Build-up") {
		t.Errorf("taken back, and the page says\n%s", p)
	}
	a.publish(record.Yes, three)
	a.write()
	if p := a.page(three); !strings.Contains(p, "Build-up") {
		t.Error("shown again, and the page does not")
	}

	// A page that somebody changed, and an asset that is lost, are made anew.
	page := filepath.Join(a.dir, one.Bare(), "index.html")
	good := a.page(one)
	if err := os.WriteFile(page, []byte(strings.Replace(good, "Build-up", "Build", 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	lost := filepath.Join(a.dir, "a", regexp.MustCompile(`a/([0-9a-f]{64}\.sig)`).FindStringSubmatch(a.page(two))[1])
	if err := os.Remove(lost); err != nil {
		t.Fatal(err)
	}
	a.write()
	if a.page(one) != good {
		t.Error("a changed page was left")
	}
	if _, err := os.Stat(lost); err != nil {
		t.Error(err)
	}

	// A list stands there only as long as it is asked for.
	index := filepath.Join(a.dir, "index.html")
	listed := func(s record.Said) bool { return s.Code == "site-list" }
	if r := a.write(func(o *site.Order) { o.Index = true }); !slices.ContainsFunc(r.Means, listed) {
		t.Errorf("the list is not told: %+v", r.Means)
	}
	if r := a.write(func(o *site.Order) { o.Index = true }); slices.ContainsFunc(r.Means, listed) {
		t.Errorf("a list that stood is told: %+v", r.Means)
	}
	if data, err := os.ReadFile(index); err != nil || !strings.Contains(string(data), "Changed") {
		t.Error("no list", err)
	}
	if r := a.write(); !slices.Equal(r.Removed, []string{"index.html"}) || !slices.ContainsFunc(r.Warnings, func(s record.Said) bool { return s.Code == "site-index-removed" }) {
		t.Errorf("%+v", r)
	}
}

// A folder of somebody else's is left alone.
func TestForeignFolder(t *testing.T) {
	a := newAtelier(t, 4)
	a.publish(record.Yes, invented.Number(0))
	for _, name := range []string{"holiday.jpg", "404.html", "index.html", "MR260001X/index.html"} {
		a.dir = t.TempDir()
		path := filepath.Join(a.dir, filepath.FromSlash(name))
		os.MkdirAll(filepath.Dir(path), 0o755)
		if err := os.WriteFile(path, []byte("mine"), 0o644); err != nil {
			t.Fatal(err)
		}
		if _, err := site.Write(ctx, a.Session, site.Order{Dir: a.dir, Key: a.key}); err == nil {
			t.Errorf("wrote beside %s", name)
		}
		if len(a.stand()) != 1 {
			t.Errorf("something stands beside %s", name)
		}
	}
	// In a site of ours, what is not ours stays.
	a.dir = t.TempDir()
	a.write()
	mine := filepath.Join(a.dir, "MR260001X", "index.html")
	os.MkdirAll(filepath.Dir(mine), 0o755)
	if err := os.WriteFile(mine, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	a.write()
	if _, err := os.Stat(mine); err != nil {
		t.Error(err)
	}
}

// The status names papers by digests, those of panels that are not shown too.
func TestStatusOfPapers(t *testing.T) {
	a := newAtelier(t, 4)
	one, two := invented.Number(0), invented.Number(1)
	sum := func(s string) string { return seal.DigestOf([]byte(s)).String() }
	issue := func(n record.Number, record_ string, replaces int64) int64 {
		es, err := a.Book.Append(ctx, clock(), record.Entry{At: record.Moment(clock()), Panels: []record.Number{n}, Body: record.Issued{Record: sum(record_), Replaces: replaces}})
		if err != nil {
			t.Fatal(err)
		}
		return es[0].Seq
	}
	first := issue(one, "first", 0)
	issue(one, "second", first)
	other := issue(two, "other", 0)
	a.append(record.Entry{Panels: []record.Number{two}, Body: record.Revoked{Certificate: other, Because: "lost"}},
		record.Entry{Panels: []record.Number{two}, Body: record.HandedOver{How: "theft"}})
	a.publish(record.Yes, one)
	shown := a.write().Shown
	note, err := os.ReadFile(filepath.Join(a.dir, "status"))
	if err != nil {
		t.Fatal(err)
	}
	s, err := seal.OpenStatus(note)
	if err != nil || s.Key != a.key.Public() || s.Date != "2050-06-01" {
		t.Fatalf("%+v, %v", s, err)
	}
	for _, c := range []struct {
		paper string
		says  []seal.Standing
	}{{"first", []seal.Standing{seal.Issued, seal.Replaced}}, {"second", []seal.Standing{seal.Issued}}, {"other", []seal.Standing{seal.Issued, seal.Withdrawn, seal.Stolen}}, {"none", nil}} {
		if says := s.Says(seal.DigestOf([]byte(c.paper))); !slices.Equal(says, c.says) {
			t.Errorf("%s: %q, want %q", c.paper, says, c.says)
		}
	}
	for _, n := range []record.Number{one, two} {
		if strings.Contains(string(note), string(n)) || strings.Contains(string(note), n.Bare()) {
			t.Errorf("it names %s", n)
		}
	}
	if len(s.Papers[seal.Shown]) != shown {
		t.Errorf("it names %d pages", len(s.Papers[seal.Shown]))
	}
}

// whole reports what is wrong with a site as a visitor meets it.
func whole(dir string) error {
	names, err := os.ReadDir(dir)
	if err != nil {
		return nil // not there yet
	}
	last := regexp.MustCompile(`<!-- backleaf [0-9a-f]{64} [0-9a-f]{64} ([0-9a-f]{64}) -->$`)
	for _, n := range names {
		path := filepath.Join(dir, n.Name())
		switch {
		case n.Name() == "status":
			note, err := os.ReadFile(path)
			if _, open := seal.OpenStatus(note); err == nil && open != nil {
				return fmt.Errorf("the status: %w", open)
			}
			continue
		case n.IsDir() && n.Name() != "a" && !strings.HasPrefix(n.Name(), "."):
			path = filepath.Join(path, "index.html")
		case strings.HasSuffix(n.Name(), ".html"):
		default:
			continue
		}
		data, err := os.ReadFile(path)
		if err != nil {
			continue // its folder is there, or gone, a moment before or after it
		}
		m := last.FindSubmatch(data)
		if m == nil || seal.DigestOf(data[:strings.LastIndexByte(string(data), '\n')+1]).String() != string(m[1]) {
			return fmt.Errorf("%s is not whole", path)
		}
		for _, a := range regexp.MustCompile(`a/([0-9a-f]{64})\.[a-z]+`).FindAllStringSubmatch(string(data), -1) {
			asset, err := os.ReadFile(filepath.Join(dir, a[0]))
			if now, _ := os.ReadFile(path); err != nil && string(now) != string(data) {
				break // it was replaced while we read
			}
			if err != nil || seal.DigestOf(asset).String() != a[1] {
				return fmt.Errorf("%s names %s: %v", path, a[0], err)
			}
		}
	}
	return nil
}

// A run is killed at any moment while visitors read: every page they meet is
// whole, and the next run completes it.
func TestKilled(t *testing.T) {
	rounds := 4
	if toolcheck.Thorough() {
		rounds = 100
	}
	a := newAtelier(t, 12)
	stop, met := make(chan bool), make(chan error, 1)
	go func() {
		for {
			select {
			case <-stop:
				met <- nil
				return
			default:
				if err := whole(a.dir); err != nil {
					met <- err
					return
				}
			}
		}
	}()
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	run := func() *exec.Cmd {
		cmd := exec.Command(program)
		cmd.Env = append(os.Environ(), "SITE_DIR="+a.dir, "SITE_BOOK="+a.Book.Path())
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		return cmd
	}
	a.publish(record.Yes, invented.Number(0), invented.Number(1))
	start := time.Now()
	if err := run().Wait(); err != nil {
		t.Fatal(err)
	}
	took := time.Since(start)
	chance := rand.New(rand.NewPCG(1, 2))
	killed := 0
	for i := range rounds {
		n := invented.Number(i % 12)
		a.publish([]record.Answer{record.Yes, record.Yes, record.No}[i%3], n, invented.Number((i+5)%12))
		a.append(record.Entry{Panels: []record.Number{n}, Body: record.Described{Subject: fmt.Sprint("round ", i)}})
		cmd := run()
		time.Sleep(time.Duration(chance.Int64N(int64(took))))
		cmd.Process.Kill()
		if cmd.Wait() != nil {
			killed++
		} else { // the first run met a busy machine
			took /= 2
		}
	}
	close(stop)
	if err := <-met; err != nil {
		t.Error(err)
	}
	if killed == 0 {
		t.Error("no run was killed")
	}
	t.Logf("%d of %d runs were killed, at any moment of %v", killed, rounds, took)
	a.write()
	done := a.dir
	a.dir = filepath.Join(t.TempDir(), "fresh")
	a.write()
	fresh := a.stand()
	a.dir = done
	for name, stands := range a.stand() {
		_, is, _ := strings.Cut(stands, " ")
		if _, want, _ := strings.Cut(fresh[name], " "); is != want {
			t.Errorf("%s differs from a site made at once", name)
		}
		delete(fresh, name)
	}
	if len(fresh) != 0 {
		t.Errorf("not there: %v", slices.Collect(maps.Keys(fresh)))
	}
	left, _ := filepath.Glob(filepath.Join(a.dir, "*", ".backleaf-*"))
	if more, _ := filepath.Glob(filepath.Join(a.dir, ".backleaf-*")); left != nil || more != nil {
		t.Errorf("left behind: %v %v", left, more)
	}
}
