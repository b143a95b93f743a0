package questions_test

import (
	"fmt"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/invented"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

var now = time.Date(2026, 5, 2, 12, 0, 0, 0, time.UTC)

func number(serial int) record.Number {
	n, err := record.NewNumber("KB", 26, serial, "")
	if err != nil {
		panic(err)
	}
	return n
}

func session(t testing.TB, es ...record.Entry) *studio.Session {
	t.Helper()
	b, err := book.Create(t.Context(), filepath.Join(t.TempDir(), "book"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	if _, err := b.Append(t.Context(), now, es...); err != nil {
		t.Fatal(err)
	}
	return &studio.Session{Book: b, Clock: func() time.Time { return now }}
}

// shop is six panels: 1 complete, 2 of other stuff, 3 a bare board, 4 of
// which little is known, 5 discarded, 6 back from a loan.
func shop(t testing.TB) *studio.Session {
	t.Helper()
	panels := func(serials ...int) string {
		var s []string
		for _, i := range serials {
			s = append(s, fmt.Sprintf("%q", number(i)))
		}
		return `"panels":[` + strings.Join(s, ",") + `]`
	}
	var es []record.Entry
	for _, s := range []string{
		`{"kind":"studio","maker":"Ilze Kraukle","mark":"KB"}`,
		`{"kind":"material","key":"ply","name":"birch plywood","uses":["board"],"board":{"kind":"plywood"}}`,
		`{"kind":"material","key":"sheet","name":"some board","uses":["board"]}`,
		`{"kind":"material","key":"sealer","name":"sealer","uses":["sealer","adhesive"],"binder":"acrylic-dispersion"}`,
		`{"kind":"material","key":"glue","name":"glue","uses":["size"],"binder":"animal-glue"}`,
		`{"kind":"material","key":"odd","name":"something","uses":["ground"]}`,
		`{"kind":"material","key":"linen","name":"linen","uses":["cloth"],"cloth":{"fibre":"linen"}}`,
		`{"kind":"material","key":"rag","name":"old cloth","uses":["cloth"]}`,
		`{"kind":"material","key":"gloss","name":"varnish","uses":["varnish"],"resin":"hydrocarbon resin","binder":"hydrocarbon-resin","removable":"yes"}`,
		`{"kind":"lot","key":"ply-1","material":"ply"}`,
		`{"kind":"lot","key":"sealer-1","material":"sealer"}`,
		`{"kind":"cut","batch":"a","size":"30 x 40 cm x 3 mm","board":"ply","board_lot":"ply-1","at":"2025-03-01",` + panels(1) + `}`,
		`{"kind":"cut","batch":"a","size":"40 x 30 cm","board":"sheet","at":"2026-04-01","own_reference":"No. 17b",` + panels(2) + `}`,
		`{"kind":"cut","batch":"b","size":"8 x 10 x 1/8 in","board":"ply",` + panels(3) + `}`,
		`{"kind":"cut","batch":"b","size":"unknown x unknown",` + panels(4) + `}`,
		`{"kind":"cut","batch":"b","size":"60 x 80 cm x 6 mm","board":"unknown","at":"2026-04-20",` + panels(5, 6) + `}`,
		`{"kind":"coat","purpose":"sealer","faces":["front","back","edges"],"mix":[{"parts":1,"material":"sealer","lot":"sealer-1"}],"dry_film":"40 µm",` + panels(1) + `}`,
		`{"kind":"coat","purpose":"size","faces":["front"],"mix":[{"parts":1,"material":"glue"}],` + panels(2) + `}`,
		`{"kind":"coat","faces":["front","back"],` + panels(4) + `}`,
		`{"kind":"coat","faces":["edges"],"mix":[{"parts":1,"material":"sealer"}],` + panels(5) + `}`,
		`{"kind":"cloth","faces":["back"],"cloth":"rag","mix":[{"parts":1,"material":"odd"}],` + panels(2) + `}`,
		`{"kind":"cloth","faces":["front"],"cloth":"linen",` + panels(6) + `}`,
		`{"kind":"paint","medium":"oil",` + panels(1, 2) + `}`,
		`{"kind":"varnish","mix":[{"parts":1,"material":"gloss"}],` + panels(1) + `}`,
		`{"kind":"varnish",` + panels(2) + `}`,
		`{"kind":"varnish","resin":"Dammar","removable":"no",` + panels(6) + `}`,
		`{"kind":"described","title":"Dune","made":"1998~","own_reference":"XII",` + panels(1) + `}`,
		`{"kind":"described","title":"Boats","made":"200X",` + panels(2) + `}`,
		`{"kind":"described","made":"unknown",` + panels(6) + `}`,
		`{"kind":"handed-over","how":"sale",` + panels(1) + `}`,
		`{"kind":"handed-over","how":"loan","at":"2026-04-21",` + panels(6) + `}`,
		`{"kind":"handed-over","how":"return","at":"2026-04-28",` + panels(6) + `}`,
		`{"kind":"discarded","because":"split",` + panels(5) + `}`,
	} {
		e, err := record.Parse([]byte(`{"v":1,` + s[1:]))
		if err != nil {
			t.Fatalf("%s: %v", s, err)
		}
		es = append(es, e)
	}
	return session(t, es...)
}

func find(t *testing.T, s *studio.Session, f questions.Filter) (serials []int) {
	t.Helper()
	search, err := f.Read(now)
	if err != nil {
		t.Fatalf("%+v: %v", f, err)
	}
	if _, err := search.Panels(t.Context(), s, func(r questions.Row) error { serials = append(serials, r.Number.Serial()); return nil }); err != nil {
		t.Fatalf("%+v: %v", f, err)
	}
	return serials
}

var filters = []struct {
	name   string
	filter questions.Filter
	want   []int
}{
	{"material of a coat", questions.Filter{Materials: []string{"sealer"}}, []int{1, 5}},
	{"material of the board", questions.Filter{Materials: []string{"ply"}}, []int{1, 3}},
	{"material of the cloth", questions.Filter{Materials: []string{"rag"}}, []int{2}},
	{"two materials", questions.Filter{Materials: []string{"ply", "sealer"}}, []int{1}},
	{"lot", questions.Filter{Lots: []string{"sealer-1"}}, []int{1}},
	{"lot of the board", questions.Filter{Lots: []string{"ply-1"}}, []int{1}},
	{"kind of board", questions.Filter{Boards: []string{"plywood"}}, []int{1, 3}},
	{"made in a year", questions.Filter{Made: "1998"}, []int{1}},
	{"made in years of which one may be", questions.Filter{Made: "1998 2004"}, []int{1, 2}},
	{"by the date of cutting", questions.Filter{Made: "2026"}, []int{5}},
	{"an open interval", questions.Filter{Made: "../1999"}, []int{1}},
	{"an open end", questions.Filter{Made: "2009/.."}, []int{2, 5}},
	{"made before all", questions.Filter{Made: "1900 1950"}, nil},
	{"as large, whichever way up", questions.Filter{SizeFrom: "30 x 40 cm"}, []int{1, 2, 5, 6}},
	{"at most as large", questions.Filter{SizeTo: "30 x 40 cm"}, []int{1, 2, 3}},
	{"one side too long", questions.Filter{SizeTo: "39 x 39 cm"}, []int{3}},
	{"inches", questions.Filter{SizeTo: "8 x 10 in"}, []int{3}},
	{"as thick", questions.Filter{SizeFrom: "10 x 10 cm x 3.1 mm"}, []int{3, 5, 6}},
	{"stage", questions.Filter{Stage: "varnished"}, []int{1, 2, 6}},
	{"stage board", questions.Filter{Stage: "board"}, []int{3}},
	{"in the studio", questions.Filter{Where: "studio"}, []int{2, 3, 4, 6}},
	{"away", questions.Filter{Where: "away"}, []int{1}},
	{"sold", questions.Filter{Where: "sale"}, []int{1}},
	{"on loan, but back", questions.Filter{Where: "loan"}, nil},
	{"discarded", questions.Filter{Where: "discarded"}, []int{5}},
	{"own reference", questions.Filter{Refs: []string{"17B"}}, []int{2}},
	{"own reference of the description", questions.Filter{Refs: []string{"xii"}}, []int{1}},
	{"batch", questions.Filter{Batches: []string{"b"}}, []int{3, 4, 5, 6}},
	{"words", questions.Filter{Words: "boats"}, []int{2}},
	{"face not sealed", questions.Filter{Unsealed: []string{"front"}}, []int{3, 4, 5}},
	{"no varnish", questions.Filter{Varnish: "none"}, []int{3, 4, 5}},
	{"a rule falls short", questions.Filter{Findings: []string{"varnish-removable"}}, []int{6}},
}

func TestFind(t *testing.T) {
	s := shop(t)
	for _, x := range filters {
		if got := find(t, s, x.filter); !slices.Equal(got, x.want) {
			t.Errorf("%s: %v, want %v", x.name, got, x.want)
		}
	}
}

// TestTogether: filters narrow each other.
func TestTogether(t *testing.T) {
	s := shop(t)
	for _, a := range filters {
		for _, b := range filters {
			both, ok := join(a.filter, b.filter)
			if !ok {
				continue
			}
			var want []int
			for _, n := range a.want {
				if slices.Contains(b.want, n) {
					want = append(want, n)
				}
			}
			if got := find(t, s, both); !slices.Equal(got, want) {
				t.Errorf("%s and %s: %v, want %v", a.name, b.name, got, want)
			}
		}
	}
}

// join puts two filters together; ok is false if they give the same field.
func join(a, b questions.Filter) (_ questions.Filter, ok bool) {
	ok = true
	text := func(a, b string) string {
		if a != "" && b != "" {
			ok = false
		}
		return a + b
	}
	return questions.Filter{
		Words: text(a.Words, b.Words), Materials: append(a.Materials, b.Materials...), Lots: append(a.Lots, b.Lots...),
		Boards: append(a.Boards, b.Boards...), Unsealed: append(a.Unsealed, b.Unsealed...), Findings: append(a.Findings, b.Findings...),
		Batches: append(a.Batches, b.Batches...), Refs: append(a.Refs, b.Refs...), Varnish: text(a.Varnish, b.Varnish),
		Made: text(a.Made, b.Made), SizeFrom: text(a.SizeFrom, b.SizeFrom), SizeTo: text(a.SizeTo, b.SizeTo),
		Stage: text(a.Stage, b.Stage), Where: text(a.Where, b.Where)}, ok
}

// A list says of every panel what its whole story says, however large the book
// and whatever was corrected; and so does the panel read alone.
func TestListIsTheStory(t *testing.T) {
	s := session(t, slices.Collect(invented.Journal(3, 1400))...)
	w, err := s.Book.Workshop(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	var rows []questions.Row
	err = questions.List(t.Context(), s.Book, questions.Listing{Discarded: true}, func(r questions.Row) error { rows = append(rows, r); return nil })
	of, err2 := s.Book.Count(t.Context())
	if err != nil || err2 != nil || len(rows) != 1400 || of != 1400 {
		t.Fatal(len(rows), of, err, err2)
	}
	for i, r := range rows {
		p := w.Panels[i]
		story := questions.StoryOf(w, p)
		if r.Number != p.Number || r.Title != p.Description().Title || r.Own != p.Description().Owner || r.Made != p.Description().Made ||
			r.Batch != story.Batch || r.Size != story.Size || r.Stage != story.Stage || !reflect.DeepEqual(r.Where, story.Where) {
			t.Errorf("%+v, %+v", r, story)
		}
		if i%9 != 0 {
			continue
		}
		if w, p, err := questions.One(t.Context(), s.Book, string(p.Number)); err != nil || !reflect.DeepEqual(questions.StoryOf(w, p), story) {
			t.Errorf("%s read alone: %+v, %v, want %+v", r.Number, questions.StoryOf(w, p), err, story)
		}
	}
}

// What is due is found among the panels that are here, whenever it is asked for.
func TestDueIsOfThoseHere(t *testing.T) {
	s := session(t, slices.Collect(invented.Journal(5, 420))...)
	w, err := s.Book.Workshop(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	for _, then := range []time.Time{time.Date(1990, 1, 20, 0, 0, 0, 0, time.UTC), time.Date(1990, 2, 5, 0, 0, 0, 0, time.UTC), now} {
		here := slices.DeleteFunc(slices.Clone(w.Panels), func(p *record.Panel) bool { _, gone := p.Discarded(); return gone })
		want, _ := questions.Due(tell.English(), w, here, then)
		got, _, err := questions.DueOf(t.Context(), tell.English(), s.Book, nil, then)
		if err != nil || len(slices.Collect(want)) == 0 || !reflect.DeepEqual(slices.Collect(got), slices.Collect(want)) {
			t.Errorf("%v: %d steps, want %d, %v", then, len(slices.Collect(got)), len(slices.Collect(want)), err)
		}
	}
}
