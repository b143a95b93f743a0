package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/cmd/internal/terminal"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/handover"
	"backleaf/record/studio/private"
	"backleaf/record/studio/shelf"
	"backleaf/record/tell"
)

// ways is one act as each door is told it: as flags, as typed values and as an
// entry of a file; and what each says.
type ways struct {
	words string
	at    string // RFC 3339
	on    string // panels
	body  record.Body
	json  string // the entry without its panels and time
	warns []string
	no    string // what the refusal says
}

// The same acts through the commands, the package and an import: the same
// bytes, the same warnings, the same refusals.
func TestThreeWays(t *testing.T) {
	mix := func(m, lot record.Key) []record.Part { return []record.Part{{Parts: 1, Material: m, Lot: lot}} }
	before, err := os.ReadFile(prepared(t, t.TempDir()))
	if err != nil {
		t.Fatal(err)
	}
	front, all := []record.Face{record.Front}, []record.Face{record.Front, record.Back, record.Edges}
	for _, x := range []ways{
		{"coat 1,2 --with s1 --as sealer --on all --extra edges --amount|60 g --rh 50% --temp|20 °C --at 10:00", "10:00", "1 2",
			record.Coat{Purpose: record.Sealer, Faces: all, Extra: []record.Face{record.Edges}, Coating: record.Coating{Mix: mix("acrylic-sealer", "s1"), WetTotal: of[record.Amount]("60 g"), Humidity: of[record.Percent]("50 %"), Temperature: of[record.Temperature]("20 °C")}},
			`"kind":"coat","purpose":"sealer","faces":["front","back","edges"],"extra":["edges"],"mix":[{"parts":1,"material":"acrylic-sealer","lot":"s1"}],"wet_total":"60 g","humidity":"50 %","temperature":"20 °C"`, nil, ""},
		{"coat 1 --with acrylic-ground --on front --at 10:00", "10:00", "1", record.Coat{Faces: front, Coating: record.Coating{Mix: mix("acrylic-ground", "")}},
			`"kind":"coat","faces":["front"],"mix":[{"parts":1,"material":"acrylic-ground"}]`, nil, ""}, // its purpose follows from the shelf
		{"coat 1 --with s1 --on back --amount|2.5 kg --wet-film|9 mm --at 10:00", "10:00", "1",
			record.Coat{Faces: []record.Face{record.Back}, Coating: record.Coating{Mix: mix("acrylic-sealer", "s1"), WetTotal: of[record.Amount]("2.5 kg"), WetFilm: of[record.Length]("9 mm")}},
			`"kind":"coat","faces":["back"],"mix":[{"parts":1,"material":"acrylic-sealer","lot":"s1"}],"wet_total":"2.5 kg","wet_film":"9 mm"`, []string{"purpose-not-recorded", "unlikely-amount", "unlikely-value", "more-than-there-was"}, ""},
		{"coat 4 --with s1 --as sealer --on front --at 10:00", "10:00", "4", record.Coat{Purpose: record.Sealer, Faces: front, Coating: record.Coating{Mix: mix("acrylic-sealer", "s1")}},
			`"kind":"coat","purpose":"sealer","faces":["front"],"mix":[{"parts":1,"material":"acrylic-sealer","lot":"s1"}]`, nil, "is not here"},
		{"coat 3 --with s1 --as sealer --on front --at 10:00", "10:00", "3", record.Coat{Purpose: record.Sealer, Faces: front, Coating: record.Coating{Mix: mix("acrylic-sealer", "s1")}},
			`"kind":"coat","purpose":"sealer","faces":["front"],"mix":[{"parts":1,"material":"acrylic-sealer","lot":"s1"}]`, []string{"done-twice", "too-early"}, ""},
		{"coat 1 --with s1 --on front --as sealer --amount|0 g --at 10:00", "10:00", "1", record.Coat{Purpose: record.Sealer, Faces: front, Coating: record.Coating{Mix: mix("acrylic-sealer", "s1"), WetTotal: of[record.Amount]("0 g")}},
			`"kind":"coat","purpose":"sealer","faces":["front"],"mix":[{"parts":1,"material":"acrylic-sealer","lot":"s1"}],"wet_total":"0 g"`, nil, "a coat of nothing"},
		{"cloth 1 --cloth acrylic-ground --with acrylic-ground --on front --at 10:00", "10:00", "1", record.ClothLaid{Faces: front, Cloth: "acrylic-ground", Coating: record.Coating{Mix: mix("acrylic-ground", "")}},
			`"kind":"cloth","faces":["front"],"cloth":"acrylic-ground","mix":[{"parts":1,"material":"acrylic-ground"}]`, []string{"not-meant-for", "not-meant-for"}, ""},
		{"cloth 5 --cloth linen-fine --with s1 --oversize|2 m --at 10:00", "10:00", "5", record.ClothLaid{Faces: front, Cloth: "linen-fine", Oversize: of[record.Length]("2 m"), Coating: record.Coating{Mix: mix("acrylic-sealer", "s1")}},
			`"kind":"cloth","faces":["front"],"cloth":"linen-fine","oversize":"2 m","mix":[{"parts":1,"material":"acrylic-sealer","lot":"s1"}]`, []string{"meant-without-cloth", "unlikely-value"}, ""},
		{"trim 1 --at 10:00", "10:00", "1", record.Trimmed{}, `"kind":"trimmed"`, []string{"no-cloth-to-trim"}, ""},
		{"sand 3 --grit P80 --on front --at 10:00", "10:00", "3", record.Sanded{Faces: front, Scale: "P", Grit: 80}, `"kind":"sanded","faces":["front"],"scale":"P","grit":80`, []string{"coarse-grit", "too-early"}, ""},
		{"paint 1,2 --medium oil --pigment|lead_white=PW_1 --at 10:00", "10:00", "1 2", record.PaintLayer{Medium: "oil", Pigments: []record.Pigment{{Name: "lead_white", Index: "PW_1"}}},
			`"kind":"paint","medium":"oil","pigments":[{"name":"lead_white","colour_index":"PW_1"}]`, []string{"against"}, ""},
		{"varnish 1 --with s1 --at 10:00", "10:00", "1", record.Varnish{Coating: record.Coating{Mix: mix("acrylic-sealer", "s1")}},
			`"kind":"varnish","mix":[{"parts":1,"material":"acrylic-sealer","lot":"s1"}]`, []string{"no-paint-to-varnish", "not-meant-for"}, ""},
		{"warm 1,2 --on front --for|5 min --at 10:00", "10:00", "1 2", record.WarmAir{Faces: front, For: of[record.Duration]("5 min")}, `"kind":"warm-air","faces":["front"],"for":"5 min"`, nil, ""},
		{"warm 4 --on front --at 10:00", "10:00", "4", record.WarmAir{Faces: front}, `"kind":"warm-air","faces":["front"]`, nil, "is not here"},
		{"bare 2 --on back --at 10:00", "10:00", "2", record.LeftBare{Faces: []record.Face{record.Back}}, `"kind":"left-bare","faces":["back"]`, nil, ""},
		{"bare 3 --on front,back --at 10:00", "10:00", "3", record.LeftBare{Faces: []record.Face{record.Front, record.Back}}, `"kind":"left-bare","faces":["front","back"]`, []string{"bare-but-coated"}, ""},
		{"coat 1 --with birch-ply-3mm --on front --at 10:00", "10:00", "1", record.Coat{Faces: front, Coating: record.Coating{Mix: mix("birch-ply-3mm", "")}},
			`"kind":"coat","faces":["front"],"mix":[{"parts":1,"material":"birch-ply-3mm"}]`, []string{"meant-otherwise"}, ""},
		{"coat 1 --with linen-fine --as barrier --on front --at 10:00", "10:00", "1", record.Coat{Purpose: record.Barrier, Faces: front, Coating: record.Coating{Mix: mix("linen-fine", "")}},
			`"kind":"coat","purpose":"barrier","faces":["front"],"mix":[{"parts":1,"material":"linen-fine"}]`, []string{"meant-otherwise"}, ""},
		{"inspect 1 --bow|80 mm --span|40 cm --at 10:00", "10:00", "1", record.Inspection{Bow: of[record.Length]("80 mm"), Span: of[record.Length]("40 cm")}, `"kind":"inspection","bow":"80 mm","span":"40 cm"`, []string{"unlikely-value"}, ""},
		{"inspect 1 --bow|8 mm --at 10:00", "10:00", "1", record.Inspection{Bow: of[record.Length]("8 mm")}, `"kind":"inspection","bow":"8 mm"`, nil, "means nothing without its span"},
		{"inspect 1 --at 10:00", "10:00", "1", record.Inspection{}, `"kind":"inspection"`, nil, "what was seen?"},
		{"climate --place rack --at 10:00", "10:00", "", record.Climate{Place: "rack"}, `"kind":"climate","place":"rack"`, nil, "a reading"},
		{"sand 1 --grit P1800 --on front --at 10:00", "10:00", "1", record.Sanded{Faces: front, Scale: "P", Grit: 1800}, `"kind":"sanded","faces":["front"],"scale":"P","grit":1800`, nil, "there is no paper P 1800"},
		{"inspect 4 --edges sound --at 10:00", "10:00", "4", record.Inspection{Edges: "sound"}, `"kind":"inspection","edges":"sound"`, nil, ""}, // away, and sayable
		{"climate --temp|2 °C --rh 99% --at 10:00", "10:00", "", record.Climate{Temperature: of[record.Temperature]("2 °C"), Humidity: of[record.Percent]("99 %")}, `"kind":"climate","temperature":"2 °C","humidity":"99 %"`, []string{"unlikely-value", "unlikely-value"}, ""},
		{"climate --temp|700 °C --at 10:00", "10:00", "", record.Climate{Temperature: of[record.Temperature]("700 °C")}, `"kind":"climate","temperature":"700 °C"`, nil, "not the temperature of a room"},
		{"note 1,2 dent --at 10:00", "10:00", "1 2", record.Note{Text: "dent"}, `"kind":"note","text":"dent"`, nil, ""},
		{"panel discard 2 --because split --at 10:00", "10:00", "2", record.Discarded{Because: "split"}, `"kind":"discarded","because":"split"`, nil, ""},
		{"panel describe 1 --title \U00013000 --at 10:00", "10:00", "1", record.Described{Title: "\U00013000"}, `"kind":"described","title":"` + "\U00013000" + `"`, []string{"not-printable"}, ""},
		{"handover 4 --how sale --at 10:00", "10:00", "4", record.HandedOver{How: "sale"}, `"kind":"handed-over","how":"sale"`, []string{"is-away"}, ""},
		{"lot add t1 acrylic-sealer --sheet|5x5 mm --at 10:00", "10:00", "", record.Lot{Key: "t1", Material: "acrylic-sealer", Sheet: of[record.Size]("5 x 5 mm")},
			`"kind":"lot","key":"t1","material":"acrylic-sealer","sheet":"5 x 5 mm"`, []string{"unlikely-value"}, ""},
		{"material add ply --use board --board plywood --thickness|0.3 mm --at 10:00", "10:00", "", record.Material{Key: "ply", Name: "ply", Uses: []record.Use{"board"}, Board: record.Board{Kind: "plywood", Thickness: of[record.Length]("0.3 mm")}},
			`"kind":"material","key":"ply","name":"ply","uses":["board"],"board":{"kind":"plywood","thickness":"0.3 mm"}`, []string{"unlikely-value"}, ""},
		{"amend 8 --set wet_total=900_g --because x", "16:00", "", record.Amended{Entry: 8, Because: "x", Change: []byte(`{"wet_total":"900 g"}`)},
			`"kind":"amended","entry":8,"because":"x","change":{"wet_total":"900 g"}`, []string{"unlikely-amount"}, ""},
		{"amend 8 --set temperature=700_C --because x", "16:00", "", record.Amended{Entry: 8, Because: "x", Change: []byte(`{"temperature":"700 °C"}`)},
			`"kind":"amended","entry":8,"because":"x","change":{"temperature":"700 °C"}`, nil, "not the temperature of a room"},
		{"amend 8 --set wet_total=0_g --because x", "16:00", "", record.Amended{Entry: 8, Because: "x", Change: []byte(`{"wet_total":"0 g"}`)},
			`"kind":"amended","entry":8,"because":"x","change":{"wet_total":"0 g"}`, nil, "a coat of nothing"},
		{"amend 7 --set size=30x40x3cm --because x", "16:00", "", record.Amended{Entry: 7, Because: "x", Change: []byte(`{"size":"30 x 40 x 3 cm"}`)},
			`"kind":"amended","entry":7,"because":"x","change":{"size":"30 x 40 x 3 cm"}`, nil, "3 cm: birch-ply-3mm is recorded as 3 mm thick"},
		{"coat 1 --with s1 --on front --as sealer --amount|60 kg --at 10:00", "10:00", "1", record.Coat{Purpose: record.Sealer, Faces: front, Coating: record.Coating{Mix: mix("acrylic-sealer", "s1"), WetTotal: of[record.Amount]("60 kg")}},
			`"kind":"coat","purpose":"sealer","faces":["front"],"mix":[{"parts":1,"material":"acrylic-sealer","lot":"s1"}],"wet_total":"60 kg"`, nil, "no panel holds 500 kg a square metre"},
		{"inspect 1 --bow|80 cm --span|40 cm --at 10:00", "10:00", "1", record.Inspection{Bow: of[record.Length]("80 cm"), Span: of[record.Length]("40 cm")}, `"kind":"inspection","bow":"80 cm","span":"40 cm"`, nil, "80 cm: it was measured over 40 cm"},
		{"withdraw 8 --because x", "16:00", "", record.Withdrawn{Entry: 8, Because: "x"}, `"kind":"withdrawn","entry":8,"because":"x"`, nil, ""},
		{"coat 1,2 --with s1 --as sealer --on front --at 17:00", "17:00", "1 2", record.Coat{Purpose: record.Sealer, Faces: front, Coating: record.Coating{Mix: mix("acrylic-sealer", "s1")}},
			`"kind":"coat","purpose":"sealer","faces":["front"],"mix":[{"parts":1,"material":"acrylic-sealer","lot":"s1"}]`, nil, "later than now"},
	} {
		t.Run(strings.ReplaceAll(x.words, "|", " "), func(t *testing.T) { x.run(t, before) })
	}
}

func of[T any, P interface {
	*T
	UnmarshalText([]byte) error
}](s string) (v T) {
	if err := P(&v).UnmarshalText([]byte(s)); err != nil {
		panic(err)
	}
	return v
}

var actsNow = time.Date(2026, 5, 2, 13, 0, 0, 0, time.UTC) // 16:00 in Riga

// prepared makes the book that each act is done in: six panels, the third
// sealed at ten, the fourth sold, the fifth meant to carry no cloth.
func prepared(t *testing.T, dir string) string {
	t.Helper()
	path := filepath.Join(dir, "studio.sqlite")
	for _, line := range []string{"studio new --maker Anna --mark KB --zone Europe/Riga", "material starter birch-ply-3mm linen-fine acrylic-sealer acrylic-ground",
		"lot add s1 acrylic-sealer --quantity|1 L", "panel add --count 6 --batch a --size|30x40 cm x 3 mm --board birch-ply-3mm --at 08:00",
		"coat 3 --with s1 --as sealer --on front --at 09:50", "handover 4 --how sale --at 09:00", "panel intend 5 --cloth no"} {
		if said, code := actOut(path, line); code != exitDone {
			t.Fatalf("%s: %s", line, said)
		}
	}
	return path
}

// actOut runs a command line; a bar stands between a flag and a value with
// spaces in it.
func actOut(path, line string) (said string, code int) {
	args := []string{"--book", path}
	for _, word := range strings.Split(line, " --") {
		head := strings.Fields(word)
		for i := range head {
			if strings.HasPrefix(head[0], "set") {
				head[i] = strings.ReplaceAll(head[i], "0_", "0 ")
			}
		}
		if flag, value, ok := strings.Cut(word, "|"); ok {
			head = []string{flag, value}
		}
		if len(args) > 2 {
			head[0] = "--" + head[0]
		}
		args = append(args, head...)
	}
	var err bytes.Buffer
	a := &app{in: strings.NewReader(""), out: &bytes.Buffer{}, err: &err, env: func(string) string { return "" }, now: func() time.Time { return actsNow }}
	code = a.run(context.Background(), args)
	return err.String(), code
}

func (x ways) run(t *testing.T, before []byte) {
	ctx := t.Context()
	again := func() string {
		p := filepath.Join(t.TempDir(), "studio.sqlite")
		if err := os.WriteFile(p, before, 0o600); err != nil {
			t.Fatal(err)
		}
		return p
	}

	// By command.
	path := again()
	said, code := actOut(path, x.words)
	byCommand, warned := lastEntry(t, path), lines(said)

	// By package.
	other := again()
	written, codes, no := x.byPackage(t, other)
	byPackage := lastEntry(t, other)

	// By import.
	third := again()
	b := opened(t, third)
	roll, err := b.Roll(ctx)
	b.Close()
	if err != nil {
		t.Fatal(err)
	}
	panels := ""
	if x.on != "" {
		ns, err := roll.Select(strings.Fields(x.on), nil)
		if err != nil {
			t.Fatal(err)
		}
		panels = fmt.Sprintf(`"panels":%q,`, ns)
		panels = strings.ReplaceAll(panels, `" "`, `","`)
	}
	file := filepath.Join(t.TempDir(), "acts.json")
	text := fmt.Sprintf(`{"backleaf":"entries","v":1,"entries":[{"v":1,%s"at":"2026-05-02T%s:00+03:00",%s}]}`, panels, x.at, x.json)
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	saidOfFile, codeOfFile := actOut(third, "import "+file+" --also amended,withdrawn,handed-over,discarded,photograph")
	// What comes out of a file says so, and that is all that differs.
	byImport := strings.Replace(lastEntry(t, third), `"imported":{"from":"acts.json"},`, "", 1)

	if x.no != "" {
		if code == exitDone || codeOfFile == exitDone || no == nil {
			t.Fatalf("not refused by all: %d, %v, %d", code, no, codeOfFile)
		}
		for _, s := range []string{said, no.Error(), saidOfFile} {
			if !strings.Contains(s, x.no) {
				t.Errorf("%q does not say %q", s, x.no)
			}
		}
		if byCommand != byPackage || byCommand != byImport {
			t.Error("a refusal wrote something")
		}
		return
	}
	if code != exitDone || no != nil || codeOfFile != exitDone {
		t.Fatalf("%s\n%v\n%s", said, no, saidOfFile)
	}
	if byCommand != byPackage || byCommand != byImport {
		t.Errorf("not the same bytes:\n%s\n%s\n%s", byCommand, byPackage, byImport)
	}
	if got := codesOf(written); !slices.Equal(got, x.warns) {
		t.Errorf("warns of %v, want %v", got, x.warns)
	}
	if !slices.Equal(codes, warned) {
		t.Errorf("the package warns\n%q\nthe command\n%q", codes, warned)
	}
	var ofFile []string
	for _, l := range lines(saidOfFile) {
		ofFile = append(ofFile, strings.TrimPrefix(l, "line 1: "))
	}
	for i, l := range warned { // an import says it before there is an entry to be amended
		warned[i] = numbered.ReplaceAllString(l, "")
	}
	if !slices.Equal(warned, ofFile) {
		t.Errorf("the command warns\n%q\nthe import\n%q", warned, ofFile)
	}
}

var numbered = regexp.MustCompile(`; do not type it again[^:]*: backleaf amend E[0-9]+ --set [^ ]+ --because "…"`)

// byPackage does the act without any command, and says its warnings as the
// commands do.
func (x ways) byPackage(t *testing.T, path string) (w studio.Written, said []string, no error) {
	t.Helper()
	ctx := t.Context()
	b := opened(t, path)
	defer b.Close()
	s := &studio.Session{Book: b, Clock: func() time.Time { return actsNow }}
	v, err := s.Look(ctx, strings.Fields(x.on), nil)
	if err != nil {
		t.Fatal(err)
	}
	at := of[record.When]("2026-05-02T" + x.at + ":00+03:00")
	switch b := x.body.(type) {
	case record.HandedOver:
		w, no = handover.Write(ctx, v, at, b, private.Part{})
	case record.Amended, record.Withdrawn:
		old, err := bench.Entry(ctx, s.Book, 8)
		if err != nil {
			t.Fatal(err)
		}
		w, _, no = bench.Correct(ctx, v, at, old, b)
	case record.Lot:
		w, no = shelf.AddLot(ctx, v, at, b, private.Price{})
	default:
		w, no = bench.Do(ctx, v, at, b)
	}
	for _, s := range w.Warnings {
		said = append(said, terminal.Wrap(tell.Say(tell.English().At(v.Now, v.Zone), s), 0))
	}
	return w, said, no
}

func opened(t *testing.T, path string) *book.Book {
	t.Helper()
	b, err := book.Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// lastEntry is the bytes of the last entry of a book.
func lastEntry(t *testing.T, path string) string {
	t.Helper()
	b := opened(t, path)
	defer b.Close()
	es, err := b.Entries(t.Context(), book.Filter{Last: 1})
	if err != nil || len(es) != 1 {
		t.Fatal(err)
	}
	return string(es[0].Bytes)
}

func codesOf(w studio.Written) (out []string) {
	for _, s := range w.Warnings {
		out = append(out, s.Code)
	}
	return out
}

// lines are the remarks that a command made.
func lines(said string) (out []string) {
	for l := range strings.Lines(said) {
		out = append(out, strings.TrimSpace(l))
	}
	return out
}
