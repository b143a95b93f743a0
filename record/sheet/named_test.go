package sheet

import (
	"strings"
	"testing"
	"time"
)

// The EDTF on the right is that of the Library of Congress specification:
// seasons 21 to 24, "~" for about, X for a figure that is not known.
func TestNamedDates(t *testing.T) {
	now := time.Date(2026, 5, 2, 12, 0, 0, 0, time.UTC)
	for typed, want := range map[string]string{
		"Sommer 1998": "1998-22", "summer 1998": "1998-22", "été 1998": "1998-22", "Frühjahr 2001": "2001-21", "fall 1999": "1999-23", "hiver 1997": "1997-24",
		"um 1995": "1995~", "vers 1995": "1995~", "around 1995": "1995~", "ca. 1995": "1995~", "etwa Mai 1995": "1995-05~",
		"1990er": "199X", "1990er Jahre": "199X", "1990s": "199X", "années 1990": "199X",
		"Mai 1998": "1998-05", "3. Mai 1998": "1998-05-03", "May 3, 1998": "1998-05-03", "3 May 1998": "1998-05-03", "août 2003": "2003-08", "Okt. 1987": "1987-10", "März 1990": "1990-03", "Dez 1990": "1990-12",
		"juillet 1990": "1990-07", "juin 1990": "1990-06", "1er mai 1990": "1990-05-01", "1998": "1998", "1990": "1990",
		"ca. 2001": "2001~", "circa 1890s": "189X~", "c1998": "1998~", "approx. 1995": "1995~", "wohl 1995": "1995?", "(1998)": "1998", "1998 (?)": "1998?", "1998.0": "1998", "1998.": "1998",
		"1990er-Jahre": "199X", "1990ies": "199X", "199?": "199X", "19??": "19XX", "1998-99": "1998/1999", "1998/99": "1998/1999", "1998–2001": "1998/2001", "1998 bis 2000": "1998/2000", "2003/04": "2003/2004",
		"Mai 98": "1998-05", "May '05": "2005-05", "03-Mar-02": "2002-03-03", "Mar-98": "1998-03", "3 May 02": "2002-05-03", "1998/3/12": "1998-03-12", "12.3.98": "1998-03-12", "Juni 98": "1998-06",
		"summer of 1998": "1998-22", "im Sommer 1998": "1998-22", "in 1998": "1998", "?": "unknown", "n.d.": "unknown", "o.J.": "unknown", "Unbekannt": "unknown",
	} {
		w, err := parseDate(typed, "", now)
		if err != nil || w.String() != want {
			t.Errorf("%q: %q, %v; want %q", typed, w, err, want)
		}
	}
	for _, typed := range []string{"31. Februar 1998", "Sommer", "32 May 1998", "May 20", "1998/03", "98", "90er", "early 1990s", "before 1998", "Winter 1998/99", "March-April 1998", "12/3/1998", "19th century", "36000", "-", "1990err", "marvellous 1998", "jui 1998", "Sommer 2027"} {
		if w, err := parseDate(typed, "", now); err == nil {
			t.Errorf("%q is read as %q", typed, w)
		}
	}
}

// What a refusal of a date names as an example can be read.
func TestExamplesOfDates(t *testing.T) {
	now := time.Date(2026, 5, 2, 12, 0, 0, 0, time.UTC)
	_, err := parseDate("no date", "", now)
	_, list, _ := strings.Cut(err.Error(), " like ")
	examples := strings.Split(strings.Replace(list, " or ", ", ", 1), ", ")
	if len(examples) < 5 {
		t.Fatalf("%q", err)
	}
	for _, x := range examples {
		if w, err := parseDate(x, "", now); err != nil {
			t.Errorf("%q: %v", x, err)
		} else if strings.ContainsAny(x, "äöüßéû") || strings.HasPrefix(x, "um ") || strings.Contains(x, "Mai") {
			t.Errorf("%q is no English: %v", x, w)
		}
	}
}

// A name of one letter is not near to every name that holds it.
func TestNearestOfShort(t *testing.T) {
	if s := nearest("Cloth", []string{"H", "W", "No"}); s != "" {
		t.Error(s)
	}
	if s := nearest("Cloth", []string{"H", "Cloth front"}); s != "; nearest: Cloth front" {
		t.Error(s)
	}
}
