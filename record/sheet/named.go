package sheet

import (
	"backleaf/record/pattern"
	"fmt"
	"strings"
)

// months by their names in English, German and French, without accents; three
// letters or more of one will do.
var months = []string{"january januar janvier", "february februar fevrier", "march marz maerz mrz mars", "april avril", "may mai", "june juni juin", "july juli juillet",
	"august aout", "september septembre", "october oktober octobre", "november novembre", "december dezember decembre"}

// seasons have the numbers of EDTF.
var seasons = map[string]string{"spring": "21", "fruhling": "21", "fruehling": "21", "fruhjahr": "21", "fruehjahr": "21", "printemps": "21", "summer": "22", "sommer": "22", "ete": "22",
	"autumn": "23", "fall": "23", "herbst": "23", "automne": "23", "winter": "24", "hiver": "24"}

var (
	accents = strings.NewReplacer("é", "e", "è", "e", "û", "u", "ü", "u", "ä", "a", "ö", "o")
	decade  = pattern.Of(`^(?:les )?(?:annees )?(\d{3})0(?:s|'s|er|er jahre)?$`)
	named   = pattern.Of(`^(?:(\d{1,2})(?:\.|er|st|nd|rd|th)? +)?([a-z]+)\.?(?: +(\d{1,2})(?:st|nd|rd|th)?,)?,? +(\d{4})$`)
	ofYears = pattern.Of(`s$|er$|er jahre$|^(?:les )?annees `)
)

// fromNames turns "summer 1998", "3. Mai 1998", "août 1998" and "1990er" into
// EDTF.
func fromNames(s string) (string, bool) {
	s = accents.Replace(strings.ToLower(strings.Join(strings.Fields(s), " ")))
	if m := decade().FindStringSubmatch(s); m != nil && ofYears().MatchString(s) {
		return m[1] + "X", true
	}
	m := named().FindStringSubmatch(s)
	if m == nil {
		return "", false
	}
	day, name, year := m[1]+m[3], m[2], m[4]
	if n, ok := seasons[name]; ok && day == "" {
		return year + "-" + n, true
	}
	for i, names := range months {
		for _, full := range strings.Fields(names) {
			if len(name) >= 3 && name != "jui" && strings.HasPrefix(full, name) {
				iso := fmt.Sprintf("%s-%02d", year, i+1)
				if day != "" {
					iso += fmt.Sprintf("-%02s", day)
				}
				return iso, true
			}
		}
	}
	return "", false
}
