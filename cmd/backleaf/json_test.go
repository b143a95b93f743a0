package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// TestOneNameOneThing reads what every command that reads says with --json: a
// name has one type everywhere. Bodies of entries are left out: their form is
// that of the journal, which the published schema holds.
func TestOneNameOneThing(t *testing.T) {
	var out bytes.Buffer
	env := map[string]string{"BACKLEAF_BOOK": filepath.Join(t.TempDir(), "studio.sqlite")}
	a := &app{in: strings.NewReader(""), out: &out, err: &bytes.Buffer{}, env: func(k string) string { return env[k] }, now: func() time.Time { return actsNow }}
	run := func(line string) int {
		out.Reset()
		return a.run(t.Context(), strings.Split(strings.ReplaceAll(line, " ", "|"), "|"))
	}
	for _, line := range []string{"studio new --maker Anna --mark KB --currency EUR", "studio key new", "material starter birch-ply-3mm linen-fine acrylic-sealer",
		"lot add s1 acrylic-sealer --number 4471 --price 20 --quantity 2L", "panel add --count 3 --batch a --size 30x40x0.3cm --board birch-ply-3mm --at 09:00", "coat 1 --with s1 --on all --amount 20g --at 10:00",
		"cloth 1 2 --cloth linen-fine --with s1 --at 10:30", "paint 1 --medium oil --at 11:00", "panel describe 1 --title Dune --own-reference 17 --at 11:00", "handover 1 --how sale --to M --price 900 --at 11:30",
		"panel discard 3 --because split", "recipe from 1 --as usual", "panel publish 1"} {
		if code := run(line); code != 0 {
			t.Fatal(line, code, a.err)
		}
	}
	types, where := map[string]map[string]bool{}, map[string]string{}
	for _, line := range []string{"studio show", "studio key show", "lot trace s1", "list", "show 1", "show 3", "check", "due", "cost 1", "find dune", "ask 1 lead", "ask 3 cloth",
		"verify", "handover show 1", "recipe compare 1 --recipe usual", "plan --like 1 --kerf 2mm --sheet 2440x1220mm --bolt 150cm", "list --sort colour"} {
		code := run(line + " --json")
		data := out.Bytes()
		if code == exitUsage {
			data = bytes.TrimSpace(a.err.(*bytes.Buffer).Bytes())
			data = data[bytes.LastIndexByte(data, '\n')+1:]
		}
		var v any
		if err := json.Unmarshal(data, &v); err != nil {
			t.Errorf("%s: %v\n%s%s", line, err, data, a.err)
			continue
		}
		eachName(v, func(name, kind string) {
			if types[name] == nil {
				types[name] = map[string]bool{}
			}
			types[name][kind] = true
			where[name+kind] = line
		})
	}
	if len(types) < 40 {
		t.Errorf("only %d names", len(types))
	}
	for name, kinds := range types {
		if len(kinds) > 1 {
			var said []string
			for _, k := range slices.Sorted(maps.Keys(kinds)) {
				said = append(said, fmt.Sprintf("%s in %q", k, where[name+k]))
			}
			t.Errorf("%s is %s", name, strings.Join(said, ", and "))
		}
	}
}

// eachName calls f for every name of a JSON value, with the type of its value.
func eachName(v any, f func(name, kind string)) {
	switch x := v.(type) {
	case []any:
		for _, y := range x {
			eachName(y, f)
		}
	case map[string]any:
		for name, y := range x {
			switch name {
			case "body", "description", "value":
				continue // of the journal's form
			case "build_up": // its names are faces
				for _, layers := range y.(map[string]any) {
					eachName(layers, f)
				}
				continue
			}
			if kind := kindOf(y); kind != "" {
				f(name, kind)
			}
			eachName(y, f)
		}
	}
}

// kindOf is the type of a JSON value; empty for a list of nothing.
func kindOf(v any) string {
	switch x := v.(type) {
	case string:
		return "a text"
	case float64:
		return "a number"
	case bool:
		return "yes or no"
	case []any:
		if len(x) == 0 {
			return ""
		}
		return "a list of " + kindOf(x[0])
	}
	return "an object"
}
