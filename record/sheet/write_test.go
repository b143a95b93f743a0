package sheet_test

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"backleaf/record/sheet"
)

// TestGuard: the characters that begin a formula are those that the usual
// advice on CSV injection lists (common practice); the wide forms are what a
// Japanese or Chinese spreadsheet takes for them.
func TestGuard(t *testing.T) {
	for _, x := range []struct{ text, safe string }{
		{"", ""}, {"Dune", "Dune"}, {"30 x 40 cm", "30 x 40 cm"}, {"a=b", "a=b"}, {"'quoted'", "'quoted'"}, {" =1", " =1"},
		{"=1+1", "'=1+1"}, {"+1", "'+1"}, {"-1", "'-1"}, {"@SUM(A1)", "'@SUM(A1)"}, {"\t=1", "'\t=1"}, {"\r=1", "'\r=1"}, {"\n=1", "'\n=1"},
		{"＝1", "'＝1"}, {"'=1", "''=1"}, {"''=1", "'''=1"}, {"'", "'"},
	} {
		if got := sheet.Guard(x.text); got != x.safe {
			t.Errorf("Guard(%q) = %q, want %q", x.text, got, x.safe)
		}
		if got := sheet.Unguard(x.safe); got != x.text {
			t.Errorf("Unguard(%q) = %q, want %q", x.safe, got, x.text)
		}
	}
}

func FuzzGuard(f *testing.F) {
	for _, s := range []string{"", "=1", "'=1", "''", "-", "'a"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		safe := sheet.Guard(s)
		if strings.IndexAny(safe, "=+-@\t\r\n") == 0 {
			t.Errorf("Guard(%q) = %q", s, safe)
		}
		if got := sheet.Unguard(safe); got != s {
			t.Errorf("%q came back as %q", s, got)
		}
	})
}

// TestWrite: RFC 4180 sections 2.1 (lines end with CRLF), 2.6 and 2.7 (quotes
// around a line break, a comma or a quote, which is doubled).
func TestWrite(t *testing.T) {
	var b bytes.Buffer
	err := sheet.Write(&b, sheet.Rows([][]string{{"a", "b"}, {"x,y", `say "no"`}, {"two\nlines", "=1"}}))
	if want := "a,b\r\n\"x,y\",\"say \"\"no\"\"\"\r\n\"two\r\nlines\",'=1\r\n"; err != nil || b.String() != want {
		t.Errorf("%q, %v, want %q", b.String(), err, want)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(rows) != 3 || rows[2][0] != "two\nlines" {
		t.Errorf("read back: %q, %v", rows, err)
	}
}
