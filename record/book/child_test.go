package book_test

import (
	"bufio"
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/toolcheck"
)

// TestMain lets the test binary stand in for another process that works on a
// book: BOOK_CHILD is what it does, BOOK_PATH the book.
func TestMain(m *testing.M) {
	if what := os.Getenv("BOOK_CHILD"); what != "" {
		if err := child(what, os.Getenv("BOOK_PATH")); err != nil {
			fmt.Println("error:", err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// child does its work and prints a line for each append or backup that was
// acknowledged.
func child(what, path string) error {
	word, arg, _ := strings.Cut(what, " ")
	if word == "read" {
		b, err := book.OpenReadOnly(ctx, path)
		if err != nil {
			return err
		}
		r, err := b.Verify(ctx, nil)
		fmt.Println(r.Entries)
		return err
	}
	n, _ := strconv.Atoi(arg)
	if word == "limit" {
		limitFileSize(uint64(n))
		n = 1 << 30
	}
	b, err := book.Open(ctx, path)
	if err != nil {
		return err
	}
	for i := range n {
		switch word {
		case "append", "limit":
			es, err := b.Append(ctx, time.Now(), note(i))
			if err != nil {
				return err
			}
			fmt.Println(es[0].Seq)
		case "import":
			many := make([]record.Entry, 50)
			for j := range many {
				many[j] = note(j)
			}
			es, err := b.Append(ctx, time.Now(), many...)
			if err != nil {
				return err
			}
			fmt.Println(es[len(es)-1].Seq)
		case "backup":
			to := filepath.Join(filepath.Dir(path), fmt.Sprintf("backup-%d-%d", os.Getpid(), i))
			if err := b.Backup(ctx, time.Now(), to, book.Everything, nil); err != nil {
				return err
			}
			fmt.Println(0)
		}
	}
	return b.Close()
}

// note is an entry about no panel, or at times about one.
func note(i int) record.Entry {
	e := record.Entry{Body: record.Note{Text: fmt.Sprintf("note %d of process %d", i, os.Getpid())}}
	if i%10 == 0 {
		e.Panels = []record.Number{number(i/10%3 + 1)}
	}
	return e
}

func command(what, path string) *exec.Cmd {
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), "BOOK_CHILD="+what, "BOOK_PATH="+path)
	return c
}

// TestKilled kills a process at some moment of its work, again and again:
// whatever it acknowledged is there, and no half file is.
func TestKilled(t *testing.T) {
	random := rand.New(rand.NewPCG(1, uint64(time.Now().UnixNano())))
	var path string
	var killed int
	for round := range toolcheck.Rounds(200, 8) {
		if round%10 == 0 { // a book grows too large to be verified each time
			b := newBook(t)
			put(t, b, afternoon()...)
			b.Close()
			path = b.Path()
		}
		what := []string{"append", "import", "append", "backup"}[round%4]
		c := command(what+" 1000000", path)
		out, err := c.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		lines := bufio.NewScanner(out)
		lines.Scan() // it is at work
		last := lines.Text()
		wait := time.Duration(random.IntN(40_000)) * time.Microsecond
		time.AfterFunc(wait, func() { c.Process.Kill() })
		for lines.Scan() {
			last = lines.Text()
		}
		c.Wait()
		acked, err := strconv.ParseInt(last, 10, 64)
		if err != nil {
			t.Fatalf("round %d, %s: the process said %q", round, what, last)
		}
		killed++
		if r := holds(t, path); r.Entries < acked {
			t.Fatalf("round %d, %s, killed after %v: entry %d was acknowledged, the book has %d", round, what, wait, acked, r.Entries)
		}
		b, err := book.Open(ctx, path) // the next start is clean
		if err != nil {
			t.Fatal(err)
		}
		put(t, b, `{"kind":"note","text":"next start"}`)
		clean := filepath.Join(filepath.Dir(path), "clean")
		if err := b.Backup(ctx, clock, clean, book.Everything, nil); err != nil {
			t.Fatal(err)
		}
		b.Close()
		os.Remove(clean)
		left, _ := filepath.Glob(filepath.Join(filepath.Dir(path), "*"))
		for _, f := range left {
			if strings.HasPrefix(filepath.Base(f), "backup-") {
				holds(t, f)
				os.Remove(f)
			} else if f != path {
				t.Errorf("round %d, %s: %s was left behind", round, what, f)
			}
		}
		if hidden, _ := filepath.Glob(filepath.Join(filepath.Dir(path), ".*")); hidden != nil {
			t.Errorf("round %d, %s: left behind: %v", round, what, hidden)
		}
	}
	t.Logf("%d kills", killed)
}

// TestTwoWriters lets two processes write while a third makes backups.
func TestTwoWriters(t *testing.T) {
	b := newBook(t)
	began := int64(len(put(t, b, afternoon()...)))
	each := toolcheck.Rounds(1500, 100)
	var wg sync.WaitGroup
	outs := make([]bytes.Buffer, 3)
	for i, what := range []string{say("append %d", each), say("append %d", each), say("backup %d", max(5, each/50))} {
		c := command(what, b.Path())
		c.Stdout = &outs[i]
		wg.Go(func() {
			if err := c.Run(); err != nil {
				t.Errorf("%s: %v: %s", what, err, outs[i].String())
			}
		})
	}
	wg.Wait()
	seen := map[string]bool{}
	for _, out := range outs[:2] {
		for _, s := range strings.Fields(out.String()) {
			if seen[s] {
				t.Errorf("entry %s was given twice", s)
			}
			seen[s] = true
		}
	}
	if r := holds(t, b.Path()); r.Entries != began+int64(2*each) || len(seen) != 2*each {
		t.Errorf("%d entries, %d acknowledged, want %d more than %d", r.Entries, len(seen), 2*each, began)
	}
	copies, _ := filepath.Glob(filepath.Join(filepath.Dir(b.Path()), "backup-*"))
	for _, c := range copies {
		holds(t, c)
	}
}
