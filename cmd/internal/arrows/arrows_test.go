package arrows_test

import (
	"encoding/json"
	"go/parser"
	"go/token"
	"io"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "backleaf/"

// allowed names, for each room below the commands, the rooms it may import.
// A new room needs a line here.
var allowed = map[string][]string{
	"schema":           {},
	"record/edtf":      {},
	"record/safefile":  {},
	"record/pattern":   {},
	"record/toolcheck": {},
	"record/invented":  {"record", "record/accept", "record/form", "record/edtf", "schema"},
	"record/amount":    {"record", "record/edtf", "record/measure", "record/trade"},
	"record":           {"record/edtf", "schema"},
	"record/form":      {"record"},
	"record/accept":    {"record", "record/form"},
	"record/bag":       {"record/safefile"},
	"record/measure":   {"record", "record/edtf"},
	"record/balance":   {"record", "record/edtf", "record/measure"},
	"record/linkedart": {"record"},
	"record/seal":      {"record", "record/edtf", "record/safefile", "schema"},
	"record/book":      {"record", "record/accept", "record/form", "record/edtf", "record/seal", "record/safefile", "schema"},
	"record/check":     {"record", "record/amount", "record/balance", "record/edtf", "record/measure", "record/trade"},
	"record/deed":      {"record", "record/check", "record/form", "record/edtf", "record/seal", "schema"},
	"record/pdf":       {},
	"record/paper":     {"record/pdf"},
	"record/paper/web": {"record/paper"},
	"record/plan":      {},

	"record/plan/worksheet": {"record", "record/measure", "record/paper", "record/plan", "record/tell"},

	"record/section": {"record/paper"},
	"record/tell":    {"record", "record/amount", "record/balance", "record/check", "record/edtf", "record/measure", "record/paper", "record/section", "record/trade"},
	"record/find":    {"record", "record/check", "record/edtf"},
	"record/sheet":   {"record", "record/edtf", "record/accept", "schema"},
	"record/trade":   {"record"},
	"record/deposit": {"record", "record/form", "record/linkedart", "record/sheet", "record/tell", "schema"},
	"record/ask":     {"record", "record/check", "record/edtf", "record/section", "record/tell", "record/trade"},
	"label":          {"record/*", "schema"},
	"certificate":    {"record/*", "schema", "certificate/photo"},

	"record/studio/refuse":    {"record"},
	"record/studio":           {"record", "record/accept", "record/form", "record/book", "record/tell", "record/studio/private", "record/studio/refuse"},
	"record/studio/private":   {"record", "record/book"},
	"record/studio/kept":      {"record", "record/book", "record/safefile", "certificate/photo", "record/studio/refuse"},
	"record/studio/stock":     {"record", "record/book", "record/plan"},
	"record/studio/typed":     {"record", "record/edtf", "record/accept", "record/tell", "record/studio", "record/studio/private", "record/studio/refuse"},
	"record/studio/bench":     {"record", "record/accept", "record/book", "record/form", "record/check", "record/measure", "record/paper", "record/tell", "record/trade", "record/studio", "record/studio/kept", "record/studio/refuse", "record/studio/stock"},
	"record/studio/handover":  {"record", "record/accept", "record/form", "record/book", "record/studio", "record/studio/bench", "record/studio/private", "record/studio/refuse"},
	"record/studio/shelf":     {"record", "record/accept", "record/book", "record/tell", "record/studio", "record/studio/bench", "record/studio/private", "record/studio/refuse"},
	"record/studio/questions": {"record", "record/amount", "record/ask", "record/book", "record/check", "record/deed", "record/find", "record/tell", "record/studio", "record/studio/private", "record/studio/refuse", "record/studio/shelf", "record/studio/typed", "record/studio/verify"},
	"record/studio/planning":  {"record", "record/book", "record/check", "record/plan", "record/plan/worksheet", "record/tell", "record/studio", "record/studio/bench", "record/studio/private", "record/studio/refuse", "record/studio/shelf", "record/studio/stock", "record/studio/typed"},
	"record/studio/keys":      {"record", "record/book", "record/deed", "record/paper", "record/seal", "record/tell", "record/studio", "record/studio/refuse"},
	"record/studio/papers":    {"record/*", "label", "certificate", "certificate/dossier"},
	"record/studio/site":      {"record", "record/book", "record/deed", "record/form", "record/safefile", "record/seal", "record/tell", "record/studio", "record/studio/kept", "record/studio/refuse", "certificate/page"},
	"record/studio/copies":    {"record", "record/book", "record/studio", "record/studio/kept", "record/studio/keys", "record/studio/refuse", "record/studio/typed"},
	"record/studio/exchange":  {"record", "record/accept", "record/form", "record/book", "record/sheet", "record/studio", "record/studio/bench", "record/studio/handover", "record/studio/private", "record/studio/refuse", "record/studio/typed"},
	"record/studio/verify":    {"record", "record/bag", "record/deed", "record/pdf", "record/safefile", "record/seal", "record/studio/refuse"}, // no book
	"record/studio/deposit":   {"record/*", "certificate", "certificate/dossier", "schema"},
	"record/studio/register":  {"record", "record/bag", "record/book", "record/deed", "record/form", "record/safefile", "record/seal", "record/tell", "record/studio", "record/studio/deposit", "record/studio/keys", "record/studio/kept", "record/studio/refuse", "record/studio/verify"},

	"certificate/photo":   {},
	"certificate/dossier": {"record/*", "schema", "certificate/photo"},
	"certificate/page":    {"record/*", "certificate/photo"},
}

// onlyIn names the libraries that one production file alone may import, and
// where that file stands.
var onlyIn = map[string]string{
	"filippo.io/edwards25519":    "record/seal",
	"github.com/go-pdf/fpdf":     "record/paper",
	"github.com/skip2/go-qrcode": "record/paper",
	"golang.org/x/net":           "certificate/page",
	"modernc.org/sqlite":         "record/book",
}

type pkg struct {
	Dir, ImportPath                    string
	GoFiles, TestGoFiles, XTestGoFiles []string
	Imports, TestImports, XTestImports []string
}

// rooms reads the packages of this module with the go command.
func rooms(t *testing.T) []pkg {
	t.Helper()
	cmd := exec.Command("go", "list", "-json", "./...")
	cmd.Dir = filepath.Join("..", "..", "..")
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	var all []pkg
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p pkg
		if err := d.Decode(&p); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		all = append(all, p)
	}
	if len(all) < 5 {
		t.Fatalf("only %d packages found", len(all))
	}
	return all
}

// ours gives the room of an import path, "" if it is not of this module.
func ours(path string) string {
	room, ok := strings.CutPrefix(path, module)
	if !ok {
		return ""
	}
	return room
}

func isCommand(room string) bool { return room == "cmd" || strings.HasPrefix(room, "cmd/") }

func may(from, to string) bool {
	if to == "record/pattern" {
		return true
	}
	for _, a := range allowed[from] {
		if a == to || strings.HasSuffix(a, "/*") && (to+"/" == a[:len(a)-1] || strings.HasPrefix(to, a[:len(a)-1])) {
			return true
		}
	}
	return false
}

// Arrows point down only.
func TestArrows(t *testing.T) {
	for _, p := range rooms(t) {
		from := ours(p.ImportPath)
		if isCommand(from) {
			continue
		}
		if _, ok := allowed[from]; !ok {
			t.Errorf("%s has no line in the table of rooms", from)
			continue
		}
		for _, path := range p.Imports {
			if to := ours(path); to == "record/toolcheck" || to == "record/invented" || to != "" && !may(from, to) {
				t.Errorf("%s imports %s", from, to)
			}
		}
		// A test may look sideways, but it knows nothing of what is above.
		for _, path := range append(p.TestImports, p.XTestImports...) {
			to := ours(path)
			if isCommand(to) || strings.HasPrefix(from, "record") && (to == "label" || to == "certificate") && !may(from, to) {
				t.Errorf("a test of %s imports %s", from, to)
			}
		}
	}
}

// Whatever a studio does can be done behind any door: it pulls in neither the
// command line nor HTTP.
func TestStudioHasNoDoor(t *testing.T) {
	for _, dep := range pulledIn(t, "./record/studio/...") {
		if strings.HasPrefix(dep, "net/http") || strings.HasPrefix(dep, "github.com/spf13/") || strings.HasPrefix(dep, "golang.org/x/term") {
			t.Errorf("record/studio pulls in %s", dep)
		}
	}
}

// pulledIn lists packages and all that they import.
func pulledIn(t *testing.T, packages ...string) []string {
	t.Helper()
	cmd := exec.Command("go", append([]string{"list", "-deps"}, packages...)...)
	cmd.Dir = filepath.Join("..", "..", "..")
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	deps := strings.Fields(string(out))
	if !slices.Contains(deps, module+"record") {
		t.Fatalf("go list gave %q", deps)
	}
	return deps
}

// The whole of what record pulls in is pure, and whoever verifies a paper needs
// no database.
func TestPure(t *testing.T) {
	for room, without := range map[string][]string{
		"record":               {"database/sql", "modernc.org/", "net/http", "github.com/go-pdf/", "github.com/spf13/"},
		"record/form":          {"database/sql", "modernc.org/", "net/http", "github.com/go-pdf/", "github.com/spf13/"},
		"record/measure":       {"database/sql", "modernc.org/", "net/http", "github.com/go-pdf/", "github.com/spf13/"},
		"record/deed":          {"database/sql", "modernc.org/"},
		"record/studio/verify": {"database/sql", "modernc.org/"},
	} {
		for _, dep := range pulledIn(t, "./"+room) {
			if slices.ContainsFunc(without, func(w string) bool { return dep == w || strings.HasPrefix(dep, w) }) {
				t.Errorf("%s pulls in %s", room, dep)
			}
		}
	}
}

// Each library that could die is imported by one file, and cobra by commands.
func TestLibrariesStandAlone(t *testing.T) {
	users := map[string][]string{}
	for _, p := range rooms(t) {
		room := ours(p.ImportPath)
		for _, name := range p.GoFiles {
			for _, path := range imports(t, filepath.Join(p.Dir, name)) {
				if path == "github.com/spf13/cobra" && !isCommand(room) {
					t.Errorf("%s/%s imports %s", room, name, path)
				}
				if path == "database/sql" && room != "record/book" {
					t.Errorf("%s/%s imports %s", room, name, path)
				}
				for library, home := range onlyIn {
					if path == library || strings.HasPrefix(path, library+"/") {
						users[library] = append(users[library], room+"/"+name)
						if room != home {
							t.Errorf("%s/%s imports %s, which belongs in %s", room, name, path, home)
						}
					}
				}
			}
		}
	}
	for library := range onlyIn {
		if len(users[library]) != 1 {
			t.Errorf("%s should be imported by one file, not by %q", library, users[library])
		}
	}
}

func imports(t *testing.T, file string) []string {
	t.Helper()
	f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	var paths []string
	for _, spec := range f.Imports {
		path, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		paths = append(paths, path)
	}
	return paths
}
