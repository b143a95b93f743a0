package arrows_test

import (
	"encoding/json"
	"io"
	"os/exec"
	"strings"
	"testing"
)

type goModule struct {
	Path, Version, GoVersion, GoMod string
	Main                            bool
}

// modules reads what go.mod chooses, by path; "" is this module.
func modules(t *testing.T) map[string]goModule {
	t.Helper()
	out, err := exec.Command("go", "list", "-m", "-json", "all").Output()
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]goModule{}
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var m goModule
		if err := d.Decode(&m); err == io.EOF {
			return all
		} else if err != nil {
			t.Fatal(err)
		}
		if m.Main {
			m.Path = ""
		}
		all[m.Path] = m
	}
}

// modernc.org/libc is half of modernc.org/sqlite: the two are tested together
// by their author, and another pair is not (README of modernc.org/sqlite).
func TestLibcIsTheOneOfSQLite(t *testing.T) {
	all := modules(t)
	out, err := exec.Command("go", "mod", "edit", "-json", all["modernc.org/sqlite"].GoMod).Output()
	if err != nil {
		t.Fatal(err)
	}
	var sqlite struct{ Require []goModule }
	if err := json.Unmarshal(out, &sqlite); err != nil {
		t.Fatal(err)
	}
	for _, m := range sqlite.Require {
		if m.Path == "modernc.org/libc" {
			if got := all[m.Path].Version; got != m.Version {
				t.Errorf("modernc.org/libc is at %s, sqlite asks for %s", got, m.Version)
			}
			return
		}
	}
	t.Error("sqlite no longer asks for modernc.org/libc: this test can go")
}

// go.mod asks for no newer Go than the libraries do.
func TestLanguageVersion(t *testing.T) {
	all := modules(t)
	for path, m := range all {
		if path != "" && m.GoVersion == all[""].GoVersion {
			return
		}
	}
	t.Errorf("go.mod asks for Go %s, and no library does", all[""].GoVersion)
}
