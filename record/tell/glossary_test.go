package tell

import (
	"flag"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"backleaf/record"
)

var update = flag.Bool("update", false, "add new codes to the list of those that stay for good")

// lasting are the codes that stand in signed records and their words: those of
// findings, rules, remedies, gaps and hazards, the words of closed lists, kinds
// and fields.
func lasting() []string {
	all := map[string]bool{}
	for _, family := range []table{englishFindings, englishBalance, englishRemedies, englishGaps} {
		for _, x := range family {
			all["said "+x.code] = true
		}
	}
	for name := range englishRules() {
		all["rule "+name] = true
	}
	for _, k := range record.Kinds() {
		all["Kind "+string(k)] = true
		for _, f := range k.Fields() {
			all["field "+string(k)+"."+f.Name] = true
			for _, w := range f.Words() {
				all[f.Type.Name()+" "+w] = true
			}
		}
	}
	for _, x := range englishTrade {
		all["code "+x.code] = true
	}
	return slices.Sorted(maps.Keys(all))
}

// A code is never dropped, for records that hold it are kept. New ones are
// added to the list by -update, when a version is given out.
func TestNoCodeIsDropped(t *testing.T) {
	const path = "testdata/codes.txt"
	now := lasting()
	data, err := os.ReadFile(path)
	if err != nil && !*update {
		t.Fatal(err)
	}
	then := strings.FieldsFunc(string(data), func(r rune) bool { return r == '\n' })
	for _, code := range then {
		if !slices.Contains(now, code) {
			t.Errorf("%q is no more: records hold it", code)
		}
	}
	if *update {
		if err := os.WriteFile(path, []byte(strings.Join(now, "\n")+"\n"), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

// Every lasting code has words in the glossary of a deposit.
func TestGlossary(t *testing.T) {
	told := map[string]bool{}
	for _, row := range English().Glossary() {
		if row[2] == "" {
			t.Errorf("%s %s: no words", row[0], row[1])
		}
		told[row[0]+" "+row[1]] = true
	}
	for _, code := range lasting() {
		list, word, _ := strings.Cut(code, " ")
		if list == "field" {
			word = word[strings.LastIndex(word, ".")+1:]
		}
		if kind, name, ok := strings.Cut(strings.TrimPrefix(code, "field "), "."); list == "field" && ok && told["field "+kind+"."+name] {
			continue
		}
		if !told[list+" "+word] {
			t.Errorf("%s: not in the glossary", code)
		}
	}
}
