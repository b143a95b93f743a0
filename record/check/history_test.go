package check_test

import (
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/check"
)

// history is a short panel history and the outcomes expected of it.
type history struct {
	name    string
	entries []record.Entry
	own     int // how many entries of the shelf stand before its own
	now     time.Time
	want    map[string]check.Outcome
}

const panel record.Number = "KB26-0140-D"

var moment = time.Date(2027, 6, 1, 12, 0, 0, 0, time.FixedZone("", 2*3600))

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

func at(t testing.TB, s string) time.Time {
	t.Helper()
	when, err := record.ParseWhen(fullTime(s))
	if err != nil {
		t.Fatal(err)
	}
	e, _ := when.Earliest()
	return e
}

// fullTime writes out a short time of 2026.
func fullTime(s string) string {
	switch {
	case len(s) == len("05-02T09:00") && s[5] == 'T':
		return "2026-" + s + ":00+02:00"
	case len(s) == len("05-02"):
		return "2026-" + s
	}
	return s
}

// entry reads one line of a history.
func entry(t testing.TB, line string, seq, before int) record.Entry {
	t.Helper()
	f := strings.Fields(line)
	m := map[string]any{"v": 1, "seq": seq, "kind": f[0], "written": fmt.Sprintf("2027-05-%02dT%02d:%02d:00+02:00", 1+seq/1440, seq/60%24, seq%60)}
	if f[1] != "-" {
		m["at"] = fullTime(f[1])
		if when, err := record.ParseWhen(fullTime(f[1])); err == nil {
			if last, ok := when.Latest(); ok { // written down as it happened
				m["written"] = last.In(moment.Location()).Format(time.RFC3339)
			}
		}
	}
	switch f[0] {
	case "studio", "material", "lot":
	default:
		m["panels"] = []string{string(panel)}
	}
	for _, pair := range f[2:] {
		name, value, _ := strings.Cut(pair, "=")
		if strings.HasPrefix(value, "{") {
			value = strings.ReplaceAll(value, "~", " ")
		} else {
			value = strings.ReplaceAll(value, "_", " ")
		}
		switch name {
		case "panels":
			delete(m, name)
			if value != "-" {
				m[name] = strings.Split(value, ",")
			}
		case "faces", "extra", "uses", "means":
			m[name] = strings.Split(value, ",")
		case "board", "cloth", "change":
			if strings.HasPrefix(value, "{") {
				m[name] = jsontext.Value(value)
			} else {
				m[name] = value
			}
		case "mix":
			var mix []map[string]any
			for _, part := range strings.Split(value, "+") {
				material, lot, _ := strings.Cut(part, "/")
				p := map[string]any{"parts": 1, "material": material}
				if lot != "" {
					p["lot"] = lot
				}
				mix = append(mix, p)
			}
			m[name] = mix
		case "pigments":
			var ps []map[string]any
			for _, p := range strings.Split(value, "|") {
				n, index, _ := strings.Cut(p, ":")
				pigment := map[string]any{"name": n}
				if index != "" {
					pigment["colour_index"] = index
				}
				ps = append(ps, pigment)
			}
			m[name] = ps
		case "layers":
			n, err := strconv.Atoi(strings.TrimPrefix(value, "@"))
			if err != nil {
				t.Fatalf("%s: %v", line, err)
			}
			m[name] = []int{n + before}
		case "grit", "entry":
			n, err := strconv.Atoi(strings.TrimPrefix(value, "@"))
			if err != nil {
				t.Fatalf("%s: %v", line, err)
			}
			if strings.HasPrefix(value, "@") {
				n += before
			}
			m[name] = n
		default:
			m[name] = value
		}
	}
	b, err := json.Marshal(m)
	if err != nil {
		t.Fatal(err)
	}
	e, err := accept.Parse(b)
	if err != nil {
		t.Fatalf("%s: %v", line, err)
	}
	return e
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
