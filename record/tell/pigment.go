package tell

import (
	"strings"

	"backleaf/record"
)

// metals of pigments by Colour Index generic name, from memory of the Colour
// Index; only those that harm whoever sands, heats or cleans them.
var metals = map[string]string{
	"PW 1": "lead", "PY 41": "lead", "PR 105": "lead", "PY 42:1": "lead",
	"PY 34": "chromate", "PR 103": "chromate", "PR 104": "chromate", "PY 46": "lead",
	"PY 35": "cadmium", "PY 37": "cadmium", "PO 20": "cadmium", "PR 108": "cadmium",
	"PR 106": "mercury", "PG 21": "arsenic", "PG 22": "arsenic", "PY 39": "arsenic",
}

// metalNames are how a pigment without an index says it itself.
var metalNames = map[string]string{"lead": "lead", "flake white": "lead", "cremnitz": "lead", "naples yellow genuine": "lead", "cadmium": "cadmium",
	"vermilion": "mercury", "emerald green": "arsenic", "orpiment": "arsenic", "realgar": "arsenic", "chrome yellow": "chromate"}

// MetalOf returns the harmful metal of a pigment, as a key of
// [DossierHazards].Metals, or nothing. "Hue" in a name
// says that the metal is imitated.
func MetalOf(p record.Pigment) string {
	index := strings.ToUpper(strings.Join(strings.Fields(p.Index), " "))
	if i := strings.IndexAny(index, "0123456789"); i > 0 && !strings.Contains(index, " ") {
		index = index[:i] + " " + index[i:]
	}
	if m, ok := metals[index]; ok {
		return m
	}
	name := strings.ToLower(p.Name)
	if index != "" && index != strings.ToUpper(record.Unknown) || strings.Contains(name, "hue") || strings.Contains(name, "lead-free") {
		return ""
	}
	for word, m := range metalNames {
		if strings.Contains(name, word) {
			return m
		}
	}
	return ""
}
