package record_test

import (
	"slices"
	"strings"
	"testing"

	"backleaf/record"
)

// Figures of the Noid documentation (13030/xf93gt2q, whose worked sum is 891;
// 13030/tf5p30086k) and demonstration identifiers of the same scheme; the
// short ones come from a published test of the weights.
var noid = []string{
	"13030/xf93gt2q", "13030/tf5p30086k", "99999/fk4ck01k77", "99999/fk44479c3d",
	"11", "012", "0013", "00014", "000015", "0000016", "00000017", "000000018", "0000000019",
	"0000000001b", "00000000001c", "000000000001d", "0000000000001f",
}

const alphabet = "0123456789bcdfghjkmnpqrstvwxz"

func TestCheckCharacter(t *testing.T) {
	for _, id := range noid {
		last := len(id) - 1
		if got := record.CheckCharacter(id[:last]); got != id[last] {
			t.Errorf("%s: got %c", id, got)
		}
	}
	if got, want := record.CheckCharacter("13030/xf93gt2"), alphabet[891%29]; got != want {
		t.Errorf("sum 891: got %c, expected %c", got, want)
	}
	for _, id := range []string{"13030/xd93gt2q", "13030/xf83gt2q", "13030/xf39gt2q", "13030/xf93gt2x"} {
		if last := len(id) - 1; record.CheckCharacter(id[:last]) == id[last] {
			t.Errorf("%s passes", id)
		}
	}
}

// Any one wrong character and any two swapped neighbours are found: 29 is
// prime and no number has 29 characters.
func TestSlipsAreFound(t *testing.T) {
	for _, naan := range []string{"", "13030"} {
		for _, serial := range []int{1, 9, 142, 999, 5040, 9999, 10000, 1234567} {
			n, err := record.NewNumber("KBXZ", 26, serial, naan)
			if err != nil {
				t.Fatal(err)
			}
			b := []byte(n.Bare())
			for i := range b {
				for _, c := range []byte(strings.ToUpper(alphabet)) {
					wrong := slices.Clone(b)
					wrong[i] = c
					if _, err := record.ParseNumber(string(wrong), naan); (err == nil) != (c == b[i]) {
						t.Errorf("%s for %s: %v", wrong, n, err)
					}
				}
				if i > 0 && b[i] != b[i-1] {
					wrong := slices.Clone(b)
					wrong[i], wrong[i-1] = wrong[i-1], wrong[i]
					if got, err := record.ParseNumber(string(wrong), naan); err == nil {
						t.Errorf("%s passes as %s", wrong, got)
					}
				}
			}
		}
	}
}

func TestNewNumber(t *testing.T) {
	// By hand: the ordinals of k,b,2,6,0,1,4,2 are 17,10,2,6,0,1,4,2;
	// 17+20+6+24+0+6+28+16 = 117 = 4*29+1.
	for _, c := range []struct {
		mark         string
		year, serial int
		want         record.Number
	}{
		{"KB", 26, 142, "KB26-0142-1"}, {"KB", 2026, 142, "KB26-0142-1"}, {"kb", 26, 1, ""}, {"", 26, 1, ""},
		{"KBCDF", 26, 1, ""}, {"KL", 26, 1, ""}, {"KA", 26, 1, ""}, {"K1", 26, 1, ""}, {"KB", 26, 0, ""}, {"KB", 26, 10000000, ""},
	} {
		n, err := record.NewNumber(c.mark, c.year, c.serial, "")
		if n != c.want || (err == nil) != (c.want != "") {
			t.Errorf("%s %d %d: %s, %v", c.mark, c.year, c.serial, n, err)
		}
		if err == nil && (!n.WellFormed() || n.Year() != 26 || n.Serial() != 142) {
			t.Errorf("%s: %d %d", n, n.Year(), n.Serial())
		}
	}
}

func TestParseNumber(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"KB26-0142-1", "KB26-0142-1"}, {"kb26-0142-1", "KB26-0142-1"}, {"Kb2601421", "KB26-0142-1"}, {"kb26-01421", "KB26-0142-1"},
		{" KB26-0142-1 ", "KB26-0142-1"}, {"KB26\u20110142\u20131", "KB26-0142-1"},
		{"KB26-0142", ""}, {"KB26-0142-2", ""}, {"KB26-142-1", ""}, {"KB26-00142-1", ""}, {"KL26-0142-1", ""}, {"26-0142-1", ""},
		{"KB26-0000-0", ""}, {"KB26-0142-l", ""}, {"KB26-O142-1", ""}, {"KB26-0142-1x", ""}, {"", ""}, {"-", ""}, {"KB26 0142 1", ""},
		{"ſB26-0142-1", ""}, {strings.Repeat("9", 1000), ""},
	} {
		n, err := record.ParseNumber(c.in, "")
		if string(n) != c.want || (err == nil) != (c.want != "") {
			t.Errorf("%q: %q, %v", c.in, n, err)
		}
		var u record.Number
		if err := u.UnmarshalText([]byte(c.in)); (err == nil) != (c.in == c.want && c.want != "") && c.in != "KB26-0142-2" {
			t.Errorf("%q as the text of an entry: %v", c.in, err)
		}
	}
	// Under an ARK prefix the same panel has another check character.
	if n, err := record.ParseNumber("KB26-0142-1", "99999"); err == nil {
		t.Errorf("%s passes under a prefix", n)
	}
}

func FuzzNumber(f *testing.F) {
	f.Add("kb26-0142-1", "")
	f.Add("KBXZ99-1234567-b", "13030")
	f.Fuzz(func(t *testing.T, s, naan string) {
		n, err := record.ParseNumber(s, naan)
		if err != nil {
			if n != "" {
				t.Fatalf("%q: %q with %v", s, n, err)
			}
			return
		}
		if again, err := record.ParseNumber(string(n), naan); err != nil || again != n || !n.WellFormed() || n.Serial() < 1 {
			t.Fatalf("%q, then %q: %v", n, again, err)
		}
	})
}
