package main

import (
	"bytes"
	"cmp"
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode"

	"golang.org/x/net/html"

	"backleaf/cmd/internal/benchpage"
	"backleaf/record"
	"backleaf/record/ask"
	"backleaf/record/book"
	"backleaf/record/check"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/tell"
	"backleaf/record/toolcheck"
)

// madeUp is a language of which no letter is one of ours.
var madeUp = tell.English().Each(func(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) {
			return '¤'
		}
		return r
	}, s)
})

const frozenCopy = "v1"

// inMadeUp are the questions that a person puts to a book, and what they draw.
var inMadeUp = [][]string{
	{"show", "1"}, {"show", "2"}, {"check", "1"}, {"check"}, {"check", "--all"}, {"due"}, {"list"}, {"find", "--binder", "unknown"}, {"find", "acrylic"},
	{"panel", "list"}, {"lot", "list"}, {"material", "list"}, {"material", "show", "linen-fine"}, {"maker", "list"}, {"recipe", "list"},
	{"journal"}, {"journal", "12"}, {"studio", "show"}, {"studio", "key", "show"}, {"handover", "show", "1"}, {"cost", "1"}, {"verify"}, {"verify", frozenCopy + "/record"}, {"head", "show"},
	{"plan", "14 of 30x40 cm, 6 of 20x25 cm", "--sheet", "2440 x 1220 mm", "--cloth", "linen-fine", "--bolt", "150 cm", "--kerf", "3 mm", "--board", "birch-ply-3mm", "-o", "plan.pdf"},
	{"dossier", "1", "-o", "dossier.pdf"}, {"label", "1", "2", "-o", "label.pdf", "--because", "Invented"}, {"certificate", "1", "-o", "cert.pdf", "--because", "Invented"},
	{"studio", "key", "recovery-sheet", "recovery.pdf"}, {"coat", "2", "--with", "sealer-1", "--on", "back", "--amount", "900 g"}, {"sand", "2", "--on", "front", "--grit", "P60"},
	{"amend", "12", "--set", "at=2024-05", "--because", "Invented"}, {"withdraw", "13", "--because", "Invented"}, {"handover", "1", "--how", "return"}, {"panel", "publish", "1"}, {"site", "site"},
}

// pagesInMadeUp are the pages at the bench.
var pagesInMadeUp = []string{"/", "/batch/may", "/panel/DM25-0001-T", "/panel/DM25-0002-3", "/finish/DM25-0001-T", "/panels", "/shelf", "/find", "/find?q=acrylic", "/entry/12", "/pair",
	"/act/coat?panel=DM25-0002-3&on=front", "/act/cloth?panel=DM25-0002-3", "/act/sand?panel=DM25-0002-3&on=front", "/act/cut", "/act/inspect?panel=DM25-0002-3&edges=sound", "/act/describe?panel=DM25-0001-T", "/act/note?panel=DM25-0001-T&text=Invented"}

// No word that a person reads, but of help, comes from anywhere else than the
// catalogue, the record and what was typed. Errors of files, flags and what is
// typed there are English, where they arise.
func TestMadeUpLanguage(t *testing.T) {
	dir, path := frozen(t)
	told := recordedIn(t, path)
	t.Chdir(filepath.Dir(path))
	if err := os.Symlink(dir, frozenCopy); err != nil {
		t.Fatal(err)
	}
	if err := seal.DemoKey().Create("studio.key", nil); err != nil {
		t.Fatal(err)
	}
	now := time.Date(2025, 5, 20, 9, 0, 0, 0, time.UTC)
	commands := slices.Clone(inMadeUp)
	for _, topic := range ask.Topics() {
		commands = append(commands, []string{"ask", "1", tell.English().Question(topic)})
	}
	for _, args := range commands {
		if !toolcheck.Thorough() && slices.Contains([]string{"plan", "dossier", "label", "certificate"}, args[0]) {
			continue // they take as long as all the others together
		}
		var said bytes.Buffer
		a := &app{in: strings.NewReader(""), out: &said, err: &said, env: func(string) string { return "" }, now: func() time.Time { return now }, random: fixedSalt{}, lang: madeUp}
		if code := a.run(context.Background(), args); code != exitDone && code != exitFinding {
			t.Errorf("backleaf %q: exit code %d\n%s", args, code, said.String())
		}
		text := said.String()
		if args[0] == "journal" && len(args) > 1 || args[0] == "material" {
			text = fields.ReplaceAllString(text, "") // names of fields, which are typed, stand before their words
		}
		told.in(t, strings.Join(args, " "), text, args...)
	}
	told.in(t, "recovery sheet", toolcheck.Run(t, "pdftotext", "recovery.pdf", "-"), seal.DemoKey().RecoveryText(), "DM") // the other papers have such tests of their own
	for _, page := range must(filepath.Glob("site/*/index.html")) {
		told.in(t, page, readable(t, must(os.ReadFile(page))))
	}

	ctx := context.Background()
	b, err := book.Open(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	desk := &benchpage.Server{Studio: &studio.Session{Book: b, Clock: func() time.Time { return now }, Words: madeUp}, Words: madeUp, Hosts: []string{"127.0.0.1"}, Key: func(context.Context) (*seal.Key, error) { return nil, nil }}
	pages, err := desk.Handler()
	if err != nil {
		t.Fatal(err)
	}
	for _, page := range pagesInMadeUp {
		w := httptest.NewRecorder()
		r := httptest.NewRequest(http.MethodGet, "http://127.0.0.1"+page, nil)
		r.RemoteAddr = "127.0.0.1:1"
		pages.ServeHTTP(w, r)
		if w.Code != http.StatusOK {
			t.Errorf("%s: %d", page, w.Code)
		}
		told.in(t, page, readable(t, w.Body.Bytes()))
	}
}

// untold are texts that need no catalogue.
type untold struct{ words, titles []string }

// asIs are signs that are the same in any language, and names of files.
var asIs = regexp.MustCompile(`[A-Za-z0-9+/]{40,}=*|openssl .*|sha256sum|sha(?:256|512)|[0-9a-f ]*[0-9a-f]{2,}[0-9][0-9a-f ]*|(?:[\w.-]*/)+[\w.-]*|[\w-]+\.(?:json|sig|pem|txt|pdf|sqlite|key)|\bE\d+|\b(?:mm|cm|RH|SHA|USB|PNG|QR|MITRA|QID)\b|backleaf [a-z-]+(?: [a-z-]+)*|"[a-z_.]+":|[a-z_.]+=…`)

var fields = regexp.MustCompile(`(?m)^[a-z_.]+ `)

var latin = regexp.MustCompile(`\p{Latin}{2,}`)

func (k untold) in(t *testing.T, where, said string, typed ...string) {
	t.Helper()
	words := map[string]bool{}
	for _, s := range append(typed, k.words...) {
		for _, w := range latin.FindAllString(s, -1) {
			words[strings.ToLower(w)] = true
		}
	}
	for line := range strings.Lines(said) {
		rest := line
		for _, s := range k.titles {
			rest = strings.ReplaceAll(rest, s, " ")
		}
		for _, w := range latin.FindAllString(asIs.ReplaceAllString(rest, " "), -1) {
			if !words[strings.ToLower(w)] {
				t.Errorf("%s: %q is neither in the catalogue nor in the record: %s", where, w, line)
			}
		}
	}
}

// recordedIn are the texts, keys and numbers that people gave, names of rules,
// which are typed, and the titles of publications.
func recordedIn(t *testing.T, path string) (all untold) {
	b, err := book.OpenReadOnly(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	es, err := b.Entries(context.Background(), book.Filter{})
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range es {
		all.words = append(all.words, record.FreeText(e.Entry.Body)...)
		all.words = append(all.words, string(record.KeyOf(e.Entry.Body)))
		for _, n := range e.Entry.Panels {
			all.words = append(all.words, string(n))
		}
	}
	all.words = append(all.words, "may", "image/png", "A. Buyer", "EUR", "Europe/Riga", "HTTPS://PARAUGS.EXAMPLE/P/")
	for _, r := range check.Rules {
		all.titles = append(all.titles, r.Name, r.Source)
	}
	for _, m := range regexp.MustCompile(`: +"(.+)",`).FindAllSubmatch(must(os.ReadFile(filepath.Join("..", "..", "record", "trade", "works.go"))), -1) {
		all.titles = append(all.titles, string(m[1]))
	}
	all.titles = slices.DeleteFunc(all.titles, func(s string) bool { return s == "" })
	slices.SortFunc(all.titles, func(a, b string) int { return cmp.Compare(len(b), len(a)) }) // the longest first
	return all
}

// readable is what a person sees or hears of a page: its texts, and those of
// attributes that are told.
func readable(t *testing.T, page []byte) string {
	t.Helper()
	var out strings.Builder
	z := html.NewTokenizer(bytes.NewReader(page))
	hidden := 0
	for {
		switch z.Next() {
		case html.ErrorToken:
			if z.Err() != io.EOF {
				t.Fatal(z.Err())
			}
			return out.String()
		case html.TextToken:
			if hidden == 0 {
				out.WriteString(html.UnescapeString(string(z.Raw())) + "\n")
			}
		case html.StartTagToken, html.SelfClosingTagToken:
			tag := z.Token()
			if tag.Data == "script" || tag.Data == "style" {
				hidden++
			}
			for _, a := range tag.Attr {
				if slices.Contains([]string{"alt", "title", "placeholder", "aria-label", "aria-description"}, a.Key) {
					out.WriteString(a.Val + "\n")
				}
			}
		case html.EndTagToken:
			if name, _ := z.TagName(); string(name) == "script" || string(name) == "style" {
				hidden--
			}
		}
	}
}
