package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
	"backleaf/record/studio/refuse"
	"backleaf/record/toolcheck"
)

// phrasing is a question to one of the eight panels of testdata/asked, written
// by somebody who had not seen how questions are read: what a true answer must
// say, and what would be false.
type phrasing struct {
	Panel, Question, Topic string
	Must                   []string
	MustNot                []string `json:"must_not"`
	Odd                    bool     // misspelt, or in an unusual order
}

// number of each panel in the book that panels.txt makes.
var askedOf = map[string]string{"removed": "DK18-0001", "lead": "DK21-0001", "old": "DK26-0001", "discarded": "DK23-0001", "stolen": "DK20-0001",
	"corrected": "DK22-0001", "acrylic": "DK24-0001", "demo": "DK25-0001"}

// TestAsked puts four lists of phrasings to eight panels. No answer may be
// false. Of lists A, C and D at least nine of ten must be understood and answered with
// all that belongs to the answer. List B was only ever used to measure: its
// figures are printed.
func TestAsked(t *testing.T) {
	s := eightPanels(t)
	for _, list := range []struct {
		file string
		need float64
	}{{"phrasings-a.json", 0.9}, {"phrasings-c.json", 0.9}, {"phrasings-d.json", 0.9}, {"phrasings-b.json", 0}} {
		data, err := os.ReadFile(filepath.Join("testdata", "asked", list.file))
		if err != nil {
			t.Fatal(err)
		}
		var all []phrasing
		if err := json.Unmarshal(data, &all); err != nil {
			t.Fatal(err)
		}
		if !toolcheck.Thorough() { // every third: the lists mix all topics
			nr := 0
			all = slices.DeleteFunc(all, func(phrasing) bool { nr++; return nr%3 != 0 })
		}
		right, short, open := 0, 0, 0
		for _, q := range all {
			said, understood := answered(t, s, q)
			for _, x := range q.MustNot {
				if m := matched(x, said); m != "" {
					t.Errorf("%s, %s: %q is answered with a falsehood, %q:\n%s", list.file, q.Panel, q.Question, m, said)
				}
			}
			missing := ""
			for _, x := range q.Must {
				if matched(x, said) == "" {
					missing = x
				}
			}
			switch {
			case !understood && q.Topic != "none":
				open++
			case !understood || missing == "":
				right++
				continue
			default:
				short++
			}
			if list.need > 0 {
				t.Logf("%s: %q (%s): %s", q.Panel, q.Question, q.Topic, said)
			}
		}
		n := float64(len(all))
		t.Logf("%s: %d phrasings, %d right (%.1f %%), %d not understood, %d answered beside the point", list.file, len(all), right, 100*float64(right)/n, open, short)
		if float64(right) < list.need*n {
			t.Errorf("%s: only %d of %d are right", list.file, right, len(all))
		}
	}
}

func matched(expr, said string) string {
	return regexp.MustCompile("(?i)" + expr).FindString(said)
}

// answered is the answer as it is printed, without the lines that repeat the
// question.
func answered(t *testing.T, s *studio.Session, q phrasing) (said string, understood bool) {
	var out bytes.Buffer
	a := &app{out: &out, err: &out, env: func(string) string { return "" }}
	r, err := questions.Ask(t.Context(), a.catalogue(), s, askedOf[q.Panel], q.Question)
	var no *refuse.Error
	if errors.As(err, &no) && no.Said.Code == "not-understood" {
		said, hint, _ := refused(a.catalogue(), err)
		return said + "\n" + hint, false
	}
	if err != nil {
		t.Fatal(err)
	}
	if err := a.sayReply(r); err != nil {
		t.Fatal(err)
	}
	lines := []string{r.First + "\n"}
	for l := range strings.Lines(out.String()) {
		if strings.HasPrefix(l, "  ") {
			lines = append(lines, l)
		}
	}
	return strings.Join(lines, ""), true
}

// eightPanels records the panels of testdata/asked as they would be at a
// command line.
func eightPanels(t *testing.T) *studio.Session {
	dir := t.TempDir()
	text, err := os.ReadFile(filepath.Join("testdata", "asked", "panels.txt"))
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	a := &app{in: strings.NewReader(""), out: &out, err: &out, env: func(string) string { return "" }}
	var now time.Time
	a.now = func() time.Time { return now }
	r := csv.NewReader(strings.NewReader(strings.ReplaceAll(string(text), `\"`, `""`)))
	r.Comma, r.Comment, r.FieldsPerRecord = ' ', '#', -1
	for {
		words, err := r.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if words[0] == "clock" {
			if now, err = time.Parse(time.RFC3339, words[1]); err != nil {
				t.Fatal(err)
			}
			continue
		}
		for i, w := range words {
			if words[max(0, i-1)] == "-o" {
				words[i] = filepath.Join(dir, w)
			}
		}
		if code := a.run(t.Context(), append([]string{"--clock-is-right", "--book", filepath.Join(dir, "studio.sqlite")}, words...)); code != 0 {
			t.Fatalf("%q: exit code %d\n%s", words, code, &out)
		}
		out.Reset()
	}
	b, err := book.OpenReadOnly(t.Context(), filepath.Join(dir, "studio.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	return a.session(b)
}
