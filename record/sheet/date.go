package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/edtf"
)

// DateForms are the ways in which a sheet may write days; parts of them
// ("05.1998", "1998") are read too, and EDTF always.
var DateForms = []string{"edtf", "DD.MM.YYYY", "DD/MM/YYYY", "DD-MM-YYYY", "MM/DD/YYYY", "MM-DD-YYYY", "YYYY.MM.DD", "YYYY/MM/DD"}

// nobodyKnows are the words of people for a date that is not known.
var nobodyKnows = []string{"unknown", "?", "n.d.", "undated", "unbekannt", "o.j.", "ohne jahr", "inconnu", "inconnue", "s.d."}

// parseDate reads a date of a sheet.
func parseDate(s, form string, now time.Time) (record.When, error) {
	if slices.Contains(nobodyKnows, strings.ToLower(s)) {
		s = record.Unknown
	}
	inForm := func(s string) string { return toISO(s, form) }
	w, err := record.ParseWhen(cmp.Or(inForm(s), s))
	if err != nil {
		w, err = record.ParseWhen(cmp.Or(edtf.Spoken(s, now, inForm), "?"))
	}
	if err != nil {
		also := ""
		if form != "" && form != "edtf" {
			also = " in the form " + form + ","
		}
		return w, fmt.Errorf("not a date: expected one%s like 1998, May 1998, 1998-05-17, about 1998, 1990s or unknown", also)
	}
	if t, ok := w.Earliest(); ok && t.After(now) {
		return w, fmt.Errorf("it is later than today")
	}
	return w, nil
}

// toISO turns "3.5.1998" into "1998-05-03", and parts of it likewise.
// Empty: it is not in that form.
func toISO(s, form string) string {
	if form == "" || form == "edtf" {
		return ""
	}
	if strings.HasPrefix(form, "MM") && strings.Count(s, ".") > 1 {
		return "?" // with points the day comes first; here it could be either
	}
	separator := strings.Trim(form, "DMY")[:1]
	names := strings.Split(form, separator)
	figures := strings.Split(s, separator)
	if len(figures) == 2 { // the day is the part that is left out
		var kept []string
		for _, n := range names {
			if n != "DD" {
				kept = append(kept, n)
			}
		}
		names = kept
	}
	if len(figures) != len(names) {
		return ""
	}
	part := map[string]string{}
	for i, n := range names {
		f := strings.TrimSpace(figures[i])
		if strings.Trim(f, "0123456789") != "" || f == "" || len(f) > len(n) || n == "YYYY" && len(f) != 4 {
			return ""
		}
		part[n] = strings.Repeat("0", len(n)-len(f)) + f
	}
	iso := part["YYYY"] + "-" + part["MM"]
	if part["DD"] != "" {
		iso += "-" + part["DD"]
	}
	return iso
}
