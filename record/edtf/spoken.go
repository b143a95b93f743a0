package edtf

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"backleaf/record/pattern"
)

// months by their names in English, German and French, without accents; three
// letters or more of one will do.
var months = []string{"january januar janvier", "february februar fevrier", "march marz maerz mrz mars", "april avril", "may mai", "june juni juin", "july juli juillet",
	"august aout", "september septembre", "october oktober octobre", "november novembre", "december dezember decembre"}

// seasons have the numbers of EDTF.
var seasons = map[string]string{"spring": "21", "fruhling": "21", "fruehling": "21", "fruhjahr": "21", "fruehjahr": "21", "printemps": "21", "summer": "22", "sommer": "22", "ete": "22",
	"autumn": "23", "fall": "23", "herbst": "23", "automne": "23", "winter": "24", "hiver": "24"}

var (
	plain    = strings.NewReplacer("é", "e", "è", "e", "û", "u", "ü", "u", "ä", "a", "ö", "o", "’", "'", "–", "-", "—", "-", ",", " ")
	about    = pattern.Of(`^(?:~|c\.|c |c(?:[0-9])|ca\.|circa |ca |about |around |approx\.|approx |approximately |um |etwa |gegen |vers |environ )\s*`)
	perhaps  = pattern.Of(`^(?:possibly|probably|perhaps|wohl|vermutlich|vielleicht|peut-etre|probablement) | ?\(?\?\)?$`)
	around   = pattern.Of(`^[(\[](.*)[)\]]$|^(.*[0-9])[.,]0?$`) // brackets, and what a spreadsheet puts to a year
	filler   = pattern.Of(`^(?:in|im|en|au|a l'|le|les|the) (?:the )?| of `)
	decade   = pattern.Of(`^(?:annees )?([0-9]{3})0(?:s|'s|ies|er|er[ -]jahre)$|^annees ([0-9]{3})0$`)
	gaps     = pattern.Of(`^([0-9]{2,3})(\?{1,2})$`)
	years    = pattern.Of(`^([0-9]{4}) ?(?:-|/|bis|to|a) ?([0-9]{4}|[0-9]{2})$`)
	named    = pattern.Of(`^(?:([0-9]{1,2})(?:\.|er|st|nd|rd|th)?[ -]+)?([a-z]{3,})\.?(?:[ -]+([0-9]{1,2})(?:st|nd|rd|th|\.)?)?[ -]+('?[0-9]{2}|[0-9]{4})$`)
	dayFirst = pattern.Of(`^([0-9]{1,2})\. ?([0-9]{1,2})\. ?([0-9]{2}|[0-9]{4})$`)
	yearLast = pattern.Of(`^(0?[1-9]|1[0-2])[/.]([0-9]{4})$`)
	allFirst = pattern.Of(`^([0-9]{4})[/.]([0-9]{1,2})[/.]([0-9]{1,2})$`)
)

// Spoken turns a date as people write it in English, German or French into
// EDTF: "summer 1998", "3. Mai 1998", "août 98", "1990er", "um 1995", "1998/99",
// "12.3.98". It is empty for what it does not know, and not always a date
// ("31. Februar 1998"). A year of two figures is the last one that has been.
// form, if any, is asked first, without "about" and the like.
func Spoken(typed string, now time.Time, form func(string) string) string {
	s := strings.Join(strings.Fields(plain.Replace(strings.ToLower(typed))), " ")
	if m := around().FindStringSubmatch(s); m != nil {
		s = m[1] + m[2]
	}
	tail := ""
	if m := about().FindString(s); m != "" {
		s, tail = s[len(strings.TrimRight(m, "0123456789")):], "~"
	} else if m := gaps().FindStringSubmatch(s); m != nil && len(m[1])+len(m[2]) == 4 {
		return m[1] + strings.Repeat("X", len(m[2]))
	} else if perhaps().MatchString(s) {
		s, tail = perhaps().ReplaceAllString(s, ""), "?"
	}
	s = strings.TrimSpace(filler().ReplaceAllString(s, " "))
	as := ""
	if form != nil {
		as = form(s)
	}
	if as == "" {
		as = spoken(s, now)
	}
	if as == "" {
		return ""
	}
	return as + tail
}

func spoken(s string, now time.Time) string {
	if m := decade().FindStringSubmatch(s); m != nil {
		return m[1] + m[2] + "X"
	}
	if m := years().FindStringSubmatch(s); m != nil && !(len(m[2]) == 2 && m[2] <= "24" && !follows(m[1], m[2])) {
		if len(m[2]) == 2 {
			m[2] = m[1][:2] + m[2]
		}
		return m[1] + "/" + m[2]
	}
	if m := named().FindStringSubmatch(s); m != nil && (m[1] == "" || m[3] == "") {
		return namedDate(m[1]+m[3], m[2], m[4], now)
	}
	if m := dayFirst().FindStringSubmatch(s); m != nil {
		return fmt.Sprintf("%s-%02s-%02s", century(m[3], now), m[2], m[1])
	}
	if m := yearLast().FindStringSubmatch(s); m != nil {
		return fmt.Sprintf("%s-%02s", m[2], m[1])
	}
	if m := allFirst().FindStringSubmatch(s); m != nil {
		return fmt.Sprintf("%s-%02s-%02s", m[1], m[2], m[3])
	}
	if _, err := Parse(s); err == nil { // "c. 1998"
		return s
	}
	return strings.ToUpper(s) // "c. 199x"
}

// follows reports two figures of the year after the one of four.
func follows(year, figures string) bool {
	n, _ := strconv.Atoi(year)
	return fmt.Sprintf("%02d", (n+1)%100) == figures
}

// namedDate is a date by the name of its month or season. "May 20" is a day as
// well as a year, and so neither.
func namedDate(day, name, year string, now time.Time) string {
	if len(year) == 2 && year <= "31" && day == "" {
		return ""
	}
	year = century(strings.TrimPrefix(year, "'"), now)
	if n, ok := seasons[name]; ok && day == "" {
		return year + "-" + n
	}
	for i, names := range months {
		for _, full := range strings.Fields(names) {
			switch {
			case name == "jui" || !strings.HasPrefix(full, name):
			case day != "":
				return fmt.Sprintf("%s-%02d-%02s", year, i+1, day)
			default:
				return fmt.Sprintf("%s-%02d", year, i+1)
			}
		}
	}
	return ""
}

// century puts the figures before a year of two, so that it is not ahead.
func century(year string, now time.Time) string {
	if len(year) != 2 {
		return year
	}
	n, _ := strconv.Atoi(year)
	for n += now.Year() / 100 * 100; n > now.Year(); {
		n -= 100
	}
	return strconv.Itoa(n)
}
