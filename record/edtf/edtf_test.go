package edtf_test

import (
	"encoding/json"
	"errors"
	"slices"
	"testing"
	"time"

	"backleaf/record/edtf"
)

// Examples of the Extended Date/Time Format specification, Library of
// Congress, 4 February 2019, levels 0 and 1. Only the expressions are the
// specification's; bounds follow from the calendar (an empty bound is none),
// words are ours.
var specification = []struct{ text, first, last, words string }{
	// Level 0: date
	{"1985-04-12", "1985-04-12T00:00:00Z", "1985-04-12T23:59:59Z", "12 April 1985"},
	{"1985-04", "1985-04-01T00:00:00Z", "1985-04-30T23:59:59Z", "April 1985"},
	{"1985", "1985-01-01T00:00:00Z", "1985-12-31T23:59:59Z", "1985"},
	// Level 0: date and time
	{"1985-04-12T23:20:30", "1985-04-12T23:20:30Z", "1985-04-12T23:20:30Z", "12 April 1985, 23:20:30"},
	{"1985-04-12T23:20:30Z", "1985-04-12T23:20:30Z", "1985-04-12T23:20:30Z", "12 April 1985, 23:20:30"},
	{"1985-04-12T23:20:30-04", "1985-04-13T03:20:30Z", "1985-04-13T03:20:30Z", "12 April 1985, 23:20:30"},
	{"1985-04-12T23:20:30+04:30", "1985-04-12T18:50:30Z", "1985-04-12T18:50:30Z", "12 April 1985, 23:20:30"},
	// Level 0: time interval
	{"1964/2008", "1964-01-01T00:00:00Z", "2008-12-31T23:59:59Z", "between 1964 and 2008"},
	{"2004-06/2006-08", "2004-06-01T00:00:00Z", "2006-08-31T23:59:59Z", "between June 2004 and August 2006"},
	{"2004-02-01/2005-02-08", "2004-02-01T00:00:00Z", "2005-02-08T23:59:59Z", "between 1 February 2004 and 8 February 2005"},
	{"2004-02-01/2005-02", "2004-02-01T00:00:00Z", "2005-02-28T23:59:59Z", "between 1 February 2004 and February 2005"},
	{"2004-02-01/2005", "2004-02-01T00:00:00Z", "2005-12-31T23:59:59Z", "between 1 February 2004 and 2005"},
	{"2005/2006-02", "2005-01-01T00:00:00Z", "2006-02-28T23:59:59Z", "between 2005 and February 2006"},
	// Level 1: letter-prefixed calendar year
	{"Y170000002", "Y170000002", "Y170000002", "170000002"},
	{"Y-170000002", "Y-170000002", "Y-170000002", "170000003 BC"},
	// Level 1: season
	{"2001-21", "2001-03-01T00:00:00Z", "2001-05-31T23:59:59Z", "spring 2001"},
	// Level 1: qualification of a whole date
	{"1984?", "1984-01-01T00:00:00Z", "1984-12-31T23:59:59Z", "possibly 1984"},
	{"2004-06~", "2004-06-01T00:00:00Z", "2004-06-30T23:59:59Z", "about June 2004"},
	{"2004-06-11%", "2004-06-11T00:00:00Z", "2004-06-11T23:59:59Z", "possibly about 11 June 2004"},
	// Level 1: unspecified digits from the right
	{"201X", "2010-01-01T00:00:00Z", "2019-12-31T23:59:59Z", "2010s"},
	{"20XX", "2000-01-01T00:00:00Z", "2099-12-31T23:59:59Z", "between 2000 and 2099"},
	{"2004-XX", "2004-01-01T00:00:00Z", "2004-12-31T23:59:59Z", "2004, month not stated"},
	{"1985-04-XX", "1985-04-01T00:00:00Z", "1985-04-30T23:59:59Z", "April 1985, day not stated"},
	{"1985-XX-XX", "1985-01-01T00:00:00Z", "1985-12-31T23:59:59Z", "1985, month and day not stated"},
	// Level 1: extended interval, open end, open start
	{"1985-04-12/..", "1985-04-12T00:00:00Z", "", "on or after 12 April 1985"},
	{"1985-04/..", "1985-04-01T00:00:00Z", "", "in or after April 1985"},
	{"1985/..", "1985-01-01T00:00:00Z", "", "in or after 1985"},
	{"../1985-04-12", "", "1985-04-12T23:59:59Z", "on or before 12 April 1985"},
	{"../1985-04", "", "1985-04-30T23:59:59Z", "in or before April 1985"},
	{"../1985", "", "1985-12-31T23:59:59Z", "in or before 1985"},
	// Level 1: extended interval, unknown end, unknown start
	{"1985-04-12/", "1985-04-12T00:00:00Z", "", "from 12 April 1985, end not known"},
	{"1985-04/", "1985-04-01T00:00:00Z", "", "from April 1985, end not known"},
	{"1985/", "1985-01-01T00:00:00Z", "", "from 1985, end not known"},
	{"/1985-04-12", "", "1985-04-12T23:59:59Z", "until 12 April 1985, beginning not known"},
	{"/1985-04", "", "1985-04-30T23:59:59Z", "until April 1985, beginning not known"},
	{"/1985", "", "1985-12-31T23:59:59Z", "until 1985, beginning not known"},
	// Level 1: negative calendar year
	{"-1985", "-1985", "-1985", "1986 BC"},
}

// Forms the specification describes without printing the very example.
var further = []struct{ text, first, last, words string }{
	{"2026-05-02T14:05:00+02:00", "2026-05-02T12:05:00Z", "2026-05-02T12:05:00Z", "2 May 2026, 14:05"},
	{"2001-22", "2001-06-01T00:00:00Z", "2001-08-31T23:59:59Z", "summer 2001"},
	{"2001-23", "2001-09-01T00:00:00Z", "2001-11-30T23:59:59Z", "autumn 2001"},
	{"2019-24", "2019-12-01T00:00:00Z", "2020-02-29T23:59:59Z", "winter 2019"},
	{"2000-02-29", "2000-02-29T00:00:00Z", "2000-02-29T23:59:59Z", "29 February 2000"},
	{"1998~", "1998-01-01T00:00:00Z", "1998-12-31T23:59:59Z", "about 1998"},
	{"199X~", "1990-01-01T00:00:00Z", "1999-12-31T23:59:59Z", "about the 1990s"},
	{"200X", "2000-01-01T00:00:00Z", "2009-12-31T23:59:59Z", "between 2000 and 2009"},
	{"1998~/2001?", "1998-01-01T00:00:00Z", "2001-12-31T23:59:59Z", "between about 1998 and possibly 2001"},
	{"2019-21/2019-23", "2019-03-01T00:00:00Z", "2019-11-30T23:59:59Z", "between spring 2019 and autumn 2019"},
	{"0985", "0985-01-01T00:00:00Z", "0985-12-31T23:59:59Z", "AD 985"},
	{"0000", "0000-01-01T00:00:00Z", "0000-12-31T23:59:59Z", "1 BC"},
}

func TestSpecification(t *testing.T) {
	for _, c := range slices.Concat(specification, further) {
		d, err := edtf.Parse(c.text)
		if err != nil {
			t.Error(err)
			continue
		}
		if d.String() != c.text {
			t.Errorf("%s: spelled back as %s", c.text, d)
		}
		if got := d.Words(); got != c.words {
			t.Errorf("%s: in words %q, want %q", c.text, got, c.words)
		}
		checkBound(t, c.text+" earliest", d.Earliest, c.first, time.January, 1)
		checkBound(t, c.text+" latest", d.Latest, c.last, time.December, 31)
	}
}

// checkBound takes a bound beyond RFC 3339's years as its EDTF year.
func checkBound(t *testing.T, what string, bound func() (time.Time, bool), want string, m time.Month, d int) {
	t.Helper()
	got, ok := bound()
	if ok != (want != "") {
		t.Errorf("%s: bound %v, want %q", what, ok, want)
		return
	}
	if !ok {
		return
	}
	if years := map[string]int{"Y170000002": 170000002, "Y-170000002": -170000002, "-1985": -1985}; years[want] != 0 {
		if got.Year() != years[want] || got.Month() != m || got.Day() != d {
			t.Errorf("%s: %v, want year %d", what, got, years[want])
		}
		return
	}
	if s := got.UTC().Format(time.RFC3339); s != want {
		t.Errorf("%s: %s, want %s", what, s, want)
	}
}

// Level 2 examples of the same specification: refused, and the error says why.
func TestLevel2(t *testing.T) {
	for _, s := range []string{
		"Y-17E7", "1950S2", "Y171010000S3", "Y3388E2S3", "2001-34",
		"[1667,1668,1670..1672]", "[..1760-12-03]", "[1760-12..]", "[1760-01,1760-02,1760-12..]", "[1667,1760-12]", "[..1984]",
		"{1667,1668,1670..1672}", "{1960,1961-12}", "{..1984}",
		"2004-06~-11", "2004?-06-11", "?2004-06-~11", "2004-%06-11",
		"156X-12-25", "15XX-12-25", "XXXX-12-XX", "1XXX-XX", "1XXX-12", "1984-1X",
		"2004-06-~01/2004-06-~20", "2004-06-XX/2004-07-03",
	} {
		if _, err := edtf.Parse(s); !errors.Is(err, edtf.ErrLevel2) {
			t.Errorf("%s: error %v does not say level 2", s, err)
		}
	}
}

func TestInvalid(t *testing.T) {
	for _, s := range []string{
		"", " ", "1985-13", "1985-02-30", "1900-02-29", "1985/4", "19850412", "2004-06-", "1985-04-12T25:00:00Z",
		"198", "85", "1985-4-1", "?", "??", "..", "/", "../..", "../", "/..", "1985-04-12/1985-04-11x", "1985-04-12/1985-04-11",
		"201x", "y1985", "1985-24-01", "1985-21-01", "1985-20", "1985-42", "Y1985", "Y01985", "Y12345678901", "Y", "Y-", "Y+20000",
		"1985-04-12T23:20", "1985-04-12T23:20:30.5Z", "1985-04-12T23:20:30,5Z", "1985-04-12T24:00:00", "1985-04-12T23:20:60",
		"1985-04-12T23:20:30-00:00", "1985-04-12T23:20:30+4", "1985-04-12T23:20:30+24:00", "1985-04-12T23:20:30+0200", "1985-04-12T23:20:30?", "1985-04-12t23:20:30z",
		"2004-06-11??", "2004-06-11?~", "unknown/2004", "2004/open", "1985-00", "1985-01-00", "-0000", "--1985", "+1985",
		"1985/1986/1987", "1985-04-12T00:00:00/1986", "1985-04-12 ", " 1985", "１９８５", "1985–04", "1985-04-12-01", "circa 1985", "1985\n",
	} {
		if d, err := edtf.Parse(s); err == nil || !d.IsZero() {
			t.Errorf("%q: accepted", s)
		}
	}
}

// Oldest first; what has no known beginning before, what is not recorded last.
func TestCompareOrder(t *testing.T) {
	want := []string{
		"../1985", "Y-170000002", "-1985", "0000", "20XX", "2004-02-01", "2004-02-01/2005-02", "2004-02-01/2005", "2004-02-01/..",
		"2004-02-02T01:00:00+02:00", "201X", "2019-21", "2019-22", "2026-05-02T14:05:00+02:00", "2026-05-02T14:05:01+02:00", "Y170000002", "",
	}
	var got []edtf.Date
	for _, s := range slices.Backward(want) {
		var d edtf.Date
		if err := d.UnmarshalText([]byte(s)); err != nil {
			t.Fatal(err)
		}
		got = append(got, d)
	}
	slices.SortFunc(got, edtf.Date.Compare)
	for i, d := range got {
		if d.String() != want[i] {
			t.Errorf("place %d: %q, want %q", i, d, want[i])
		}
	}
}

func TestExactDay(t *testing.T) {
	for s, want := range map[string]bool{
		"1985-04-12": true, "1985-04-12T23:20:30Z": true, "1985-04-12~": false, "1985-04-XX": false, "1985-04": false, "1985": false,
		"1985-04-12/1985-04-12": false, "1985-04-12/..": false, "2001-21": false,
	} {
		d, err := edtf.Parse(s)
		if err != nil || d.IsExactDay() != want {
			t.Errorf("%s: exact day %v, %v", s, d.IsExactDay(), err)
		}
	}
	if (edtf.Date{}).IsExactDay() {
		t.Error("a date that was not recorded is no exact day")
	}
}

func TestZero(t *testing.T) {
	var d edtf.Date
	if _, ok := d.Earliest(); ok || !d.IsZero() || d.Words() != "not recorded" {
		t.Errorf("zero date: %q %v", d.Words(), ok)
	}
	if _, ok := d.Latest(); ok {
		t.Error("the zero date has a latest bound")
	}
}

func TestJSON(t *testing.T) {
	type work struct {
		Made edtf.Date `json:"made,omitzero"`
	}
	for text, valid := range map[string]bool{`{"made":"1998~"}`: true, `{}`: true, `{"made":"1998 or so"}`: false, `{"made":1998}`: false} {
		var w work
		err := json.Unmarshal([]byte(text), &w)
		if (err == nil) != valid {
			t.Errorf("%s: error %v", text, err)
		}
		if back, _ := json.Marshal(w); valid && string(back) != text {
			t.Errorf("%s became %s", text, back)
		}
	}
}
