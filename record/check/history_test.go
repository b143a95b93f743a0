package check_test

import (
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/invented"
)

// history is a short panel history and the outcomes expected of it.
type history struct {
	name    string
	entries []record.Entry
	own     int // how many entries of the shelf stand before its own
	now     time.Time
	want    map[string]check.Outcome
}

const panel = invented.Panel

var moment = invented.Moment

var outcomes = map[string]check.Outcome{
	"holds": check.Holds, "short": check.FallsShort, "open": check.NotRecorded, "not": check.NotApplicable,
}

// histories reads testdata/histories.txt; the format stands at its head.
func histories(t testing.TB) []history {
	t.Helper()
	text, err := os.ReadFile("testdata/histories.txt")
	if err != nil {
		t.Fatal(err)
	}
	var shelf []string
	var out []history
	for _, section := range strings.Split("\n"+string(text), "\n== ")[1:] {
		lines := strings.Split(strings.TrimSpace(section), "\n")
		h := history{name: lines[0], now: moment, want: map[string]check.Outcome{}}
		var own, extra []string
		for _, l := range lines[1:] {
			word, rest, _ := strings.Cut(strings.TrimSpace(l), " ")
			o, listed := outcomes[strings.TrimSuffix(word, ":")]
			switch {
			case word == "" || strings.HasPrefix(word, "#"):
			case strings.HasSuffix(word, ":") && listed:
				for _, rule := range strings.Fields(rest) {
					if _, ok := check.RuleNamed(rule); !ok {
						t.Fatalf("%s: there is no rule %s", h.name, rule)
					}
					if h.want[rule] != "" {
						t.Fatalf("%s: %s is listed twice", h.name, rule)
					}
					h.want[rule] = o
				}
			case word == "shelf:":
				extra = append(extra, rest)
			case word == "now":
				h.now = at(t, rest)
			default:
				own = append(own, l)
			}
		}
		if h.name == "shelf" {
			shelf = own
			continue
		}
		named := used(slices.Concat(shelf, extra), own)
		h.own = len(named)
		for i, l := range slices.Concat(named, own) {
			h.entries = append(h.entries, entry(t, l, i+1, h.own))
		}
		out = append(out, h)
	}
	return out
}

// used leaves of the shelf what a history needs: the studio, the lots and
// materials that it names, and the materials of those lots.
func used(shelf, own []string) []string {
	key := func(line string) string {
		_, rest, _ := strings.Cut(line, " key=")
		k, _, _ := strings.Cut(rest, " ")
		return k
	}
	need := strings.Join(own, " ")
	mentions := func(k string) bool {
		return slices.Contains(strings.FieldsFunc(need, func(r rune) bool { return strings.ContainsRune(" =/+", r) }), k)
	}
	for _, l := range shelf {
		if strings.HasPrefix(l, "lot ") && mentions(key(l)) {
			_, m, _ := strings.Cut(l, " material=")
			need += " " + m
		}
	}
	var out []string
	for _, l := range shelf {
		if strings.HasPrefix(l, "studio ") || mentions(key(l)) {
			out = append(out, l)
		}
	}
	return out
}

func at(t testing.TB, s string) time.Time { return invented.Time(s) }

func lines(t testing.TB, text string) []record.Entry { return invented.Lines(text) }

func entry(t testing.TB, line string, seq, before int) record.Entry {
	return invented.Line(line, seq, before)
}

// judge folds entries and judges the panel; nil where it was never cut.
func judge(t testing.TB, entries []record.Entry, now time.Time) map[string]check.Finding {
	t.Helper()
	w, p := fold(t, entries)
	if p == nil {
		return nil
	}
	out := map[string]check.Finding{}
	for _, f := range check.Panel(w, p, now) {
		out[f.Rule] = f
	}
	return out
}

func fold(t testing.TB, entries []record.Entry) (*record.Workshop, *record.Panel) {
	t.Helper()
	w, err := record.Fold(entries)
	if err != nil {
		t.Fatal(err)
	}
	return w, w.Panel(panel)
}

// codes lists what a finding says.
func codes(f check.Finding) string {
	var out []string
	for _, s := range f.Said {
		out = append(out, s.Code)
	}
	return strings.Join(out, " ")
}
