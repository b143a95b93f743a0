package sheet

import (
	"fmt"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/pattern"
)

// DateForms are the ways in which a sheet may write days; parts of them
// ("05.1998", "1998") are read too, and EDTF always.
var DateForms = []string{"edtf", "DD.MM.YYYY", "DD/MM/YYYY", "DD-MM-YYYY", "MM/DD/YYYY", "MM-DD-YYYY", "YYYY.MM.DD", "YYYY/MM/DD"}

var about = pattern.Of(`(?i)^(?:~|c\.|ca\.|circa\b|ca\b|c\b|about\b|around\b|um\b|etwa\b|vers\b|environ\b)\s*`)

// parseDate reads a date of a sheet.
func parseDate(s, form string, now time.Time) (record.When, error) {
	if s == "" || strings.EqualFold(s, record.Unknown) {
		return record.ParseWhen(s)
	}
	plain, tail := s, ""
	if m := about().FindString(plain); m != "" {
		plain, tail = plain[len(m):], "~"
	} else if p, ok := strings.CutSuffix(plain, "?"); ok {
		plain, tail = strings.TrimSpace(p), "?"
	}
	if iso, ok := toISO(plain, form); ok {
		plain = iso
	} else if iso, ok := fromNames(plain); ok {
		plain = iso
	}
	w, err := record.ParseWhen(plain + tail)
	if err != nil {
		if w, err = record.ParseWhen(s); err != nil {
			also := ""
			if form != "" && form != "edtf" {
				also = " in the form " + form + ","
			}
			return w, fmt.Errorf("not a date: expected one%s like 1998, 1998-05, 1998-05-17, 1998~ (about), 199X or unknown", also)
		}
	}
	if t, ok := w.Earliest(); ok && t.After(now) {
		return w, fmt.Errorf("it is later than today")
	}
	return w, nil
}

// toISO turns "3.5.1998" into "1998-05-03", and parts of it likewise.
func toISO(s, form string) (string, bool) {
	if form == "" || form == "edtf" {
		return "", false
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
		return "", false
	}
	part := map[string]string{}
	for i, n := range names {
		f := strings.TrimSpace(figures[i])
		if strings.Trim(f, "0123456789") != "" || f == "" || len(f) > len(n) || n == "YYYY" && len(f) != 4 {
			return "", false
		}
		part[n] = strings.Repeat("0", len(n)-len(f)) + f
	}
	iso := part["YYYY"] + "-" + part["MM"]
	if part["DD"] != "" {
		iso += "-" + part["DD"]
	}
	return iso, true
}
