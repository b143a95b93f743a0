package record_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"backleaf/record"
)

// roll is a book with twenty numbers of 2026 (batch may: 142 to 155) and two
// of 2027, of which one has a serial of 2026 again.
func roll(t testing.TB, naan string) record.Roll {
	t.Helper()
	r := record.Roll{Batches: map[record.Key][]record.Number{}, NAAN: naan}
	add := func(year, serial int, batch record.Key) {
		n, err := record.NewNumber("KB", year, serial, naan)
		if err != nil {
			t.Fatal(err)
		}
		r.Numbers = append(r.Numbers, n)
		r.Batches[batch] = append(r.Batches[batch], n)
	}
	for s := 142; s <= 155; s++ {
		add(26, s, "may")
	}
	for s := 160; s <= 165; s++ {
		add(26, s, "june")
	}
	add(27, 165, "next")
	add(27, 166, "next")
	return r
}

func TestFind(t *testing.T) {
	r := roll(t, "")
	for _, c := range []struct{ in, want, err string }{
		{"KB26-0142-1", "KB26-0142-1", ""}, {"kb2601421", "KB26-0142-1", ""}, {"KB26-0142", "KB26-0142-1", ""},
		{"kb260142", "KB26-0142-1", ""}, {"142", "KB26-0142-1", ""}, {"0142", "KB26-0142-1", ""}, {" 142 ", "KB26-0142-1", ""},
		{"166", "KB27-0166", ""},
		{"165", "", "fits KB26-0165-"}, {"batch:june", "", "one panel is taken here, and batch:june names 6: KB26-0160-"}, {"batch:jnue", "", "nearest: batch:june"},
		{"0142-0145", "", "one panel is taken here, and 0142-0145 names 4: KB26-0142-1, "}, {"145..142", "", "backwards"}, {"all", "", "one panel is taken here, and all names"},
		{"KB27-0165", "KB27-0165", ""},
		{"KB26-0142-2", "", "does not fit the number; nearest: KB26-0142-1"},
		{"KB26-0412-1", "", "nearest: KB26-0142-1"},
		{"KC26-0142-1", "", "nearest: KB26-0142-1"},
		{"KB26-0143-1", "", "nearest: KB26-014"},
		{"KB26-0141-X", "", "does not fit"},
		{"999", "", `there is no panel "999"`}, {"0", "", "there is no panel"}, {"", "", "is not a panel number"}, {"-", "", "is not a panel number"},
		{"Quince", "", `there is no panel "Quince"`}, {strings.Repeat("9", 60), "", "is not a panel number"},
	} {
		n, err := r.Find(c.in)
		if c.err == "" {
			if err != nil || !strings.HasPrefix(string(n), c.want) {
				t.Errorf("%q: %s, %v", c.in, n, err)
			}
		} else if err == nil || !strings.Contains(err.Error(), c.err) {
			t.Errorf("%q: %s, %v; expected %s", c.in, n, err, c.err)
		}
	}
	// Titles and own references, whole, in quotes or not; two readings are refused.
	r.Called = map[string][]record.Number{record.CalledAs("Low  tide, evening"): r.Numbers[:1], "98-14": r.Numbers[1:2], "145": r.Numbers[1:2], "146": r.Numbers[4:5], "142-144": r.Numbers[5:6], "dune": r.Numbers[:2]}
	for _, c := range []struct{ in, want, err string }{
		{"low tide, Evening", "KB26-0142-1", ""}, {"“Low tide, evening”", "KB26-0142-1", ""}, {"98-14", "KB26-0143", ""},
		{"145", "", `"145" could be the number KB26-0145-`}, {"0145", "KB26-0145", ""}, {"KB26-0145", "KB26-0145", ""}, {"146", "KB26-0146", ""},
		{"dune", "", `"dune" fits KB26-0142-1, KB26-0143-`}, {"dunes", "", `nearest: KB26-0142-1, called "dune"`}, {"low tide", "", `called "low tide, evening"`},
	} {
		n, err := r.Find(c.in)
		if c.err == "" && (err != nil || !strings.HasPrefix(string(n), c.want)) || c.err != "" && (err == nil || !strings.Contains(err.Error(), c.err)) {
			t.Errorf("%q: %s, %v", c.in, n, err)
		}
	}
	if ns, err := r.Select([]string{"Low tide, evening", "144, 0150-0151"}, nil); err != nil || len(ns) != 4 {
		t.Error(ns, err)
	}
	// A right number that this book does not hold is not called does not fit.
	other, _ := record.NewNumber("KB", 26, 500, "")
	if _, err := r.Find(strings.ToLower(string(other))); err == nil || !strings.Contains(err.Error(), "there is no panel "+string(other)+" in this book") {
		t.Errorf("%s: %v", other, err)
	}
	if _, err := (record.Roll{}).Find("142"); err == nil || strings.Contains(err.Error(), "nearest") {
		t.Errorf("an empty book: %v", err)
	}
}

func TestSelect(t *testing.T) {
	r := roll(t, "13030")
	for _, c := range []struct {
		terms, except string
		serials       []int // of the panels chosen
		err           string
	}{
		{"142", "", []int{142}, ""},
		{"0142-0145", "", []int{142, 143, 144, 145}, ""},
		{"142..145", "", []int{142, 143, 144, 145}, ""},
		{"KB26-0142..KB26-0145", "", []int{142, 143, 144, 145}, ""},
		{"154-161", "", []int{154, 155, 160, 161}, ""}, // numbers that were never given are no mistake
		{"145 142 143,142", "", []int{142, 143, 145}, ""},
		{"batch:june", "", []int{160, 161, 162, 163, 164, 165}, ""},
		{"batch:JUNE", "160-164", []int{165}, ""},
		{"batch:may", "0142-0154", []int{155}, ""},
		{"all", "batch:may batch:june", []int{165, 166}, ""},
		{"batch:july", "", nil, `there is no batch "july"`},
		{"145-142", "", nil, "backwards"},
		{"142..KB27-0166", "", nil, "year's end"},
		{"142", "143", nil, "was not named"},
		{"142", "142", nil, "no panel is left"},
		{"", "", nil, "no panel was named"}, {",", "", nil, "no panel was named"},
		{"999", "", nil, "there is no panel"}, {"142-999", "", nil, "there is no panel"}, {"..", "", nil, "is not a panel number"},
	} {
		got, err := r.Select(strings.Fields(c.terms), strings.Fields(c.except))
		var serials []int
		for _, n := range got {
			serials = append(serials, n.Serial())
		}
		if !slices.Equal(serials, c.serials) || (err == nil) != (c.err == "") || err != nil && !strings.Contains(err.Error(), c.err) {
			t.Errorf("%q less %q: %v, %v", c.terms, c.except, serials, err)
		}
	}
}

func FuzzSelect(f *testing.F) {
	f.Add("0142-0155 batch:june", "143")
	f.Add("KB26-0142..KB26-0145,165", "all")
	r := roll(f, "")
	f.Fuzz(func(t *testing.T, terms, except string) {
		before := slices.Clone(r.Numbers)
		got, err := r.Select(strings.Split(terms, " "), strings.Split(except, " "))
		if !slices.Equal(before, r.Numbers) {
			t.Fatal("the roll was changed")
		}
		if err != nil {
			if got != nil {
				t.Fatalf("%v with %v", got, err)
			}
			return
		}
		if len(got) == 0 || !slices.IsSortedFunc(got, func(a, b record.Number) int { return slices.Index(r.Numbers, a) - slices.Index(r.Numbers, b) }) {
			t.Fatalf("%v", got)
		}
		for i, n := range got {
			if !slices.Contains(r.Numbers, n) || slices.Contains(got[:i], n) {
				t.Fatalf("%s in %v", n, got)
			}
		}
	})
}

// Whatever a number means by itself it means at either end of a range: where it
// could be another panel by its own reference, it is asked about.
func TestRangeByOldNumbers(t *testing.T) {
	r := roll(t, "")
	r.Called = map[string][]record.Number{"143": {r.Numbers[5]}, "145": {r.Numbers[3]}, "142": {r.Numbers[0]}}
	for s := 142; s <= 148; s++ {
		for e := s; e <= 148; e++ {
			from, to := strconv.Itoa(s), strconv.Itoa(e)
			_, err1 := r.Find(from)
			_, err2 := r.Find(to)
			for _, sep := range []string{"-", ".."} {
				if _, err := r.Select([]string{from + sep + to}, nil); (err == nil) != (err1 == nil && err2 == nil) {
					t.Errorf("%s%s%s: %v; alone %v, %v", from, sep, to, err, err1, err2)
				}
			}
		}
	}
	if ns, err := r.Select([]string{"KB26-0143-0..KB26-0145"}, nil); err == nil && len(ns) != 3 {
		t.Errorf("%v, %v", ns, err)
	}
}
