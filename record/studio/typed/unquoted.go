package typed

import (
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/pattern"
)

var figure = pattern.Of(`^[-+]?[0-9][0-9.,/]*$`)

var serial = pattern.Of(`^[0-9]+$`)

// allUnits are the units that may stand after a figure.
var allUnits = slices.Concat(record.Amount{}.Units(), record.Length{}.Units(), record.Temperature{}.Units(), record.Duration{}.Units(),
	record.Percent{}.Units(), []string{"ml", "l", "C", "F"})

var faceNames = append(append([]string{}, record.Words("Face")...), "edge", "all")

// Unquoted puts together words of a command line that belong together where
// quotes, commas or colons were forgotten: --amount 20 g, --on front back, --on back, edges, --except 1 2, 2 - 5, batch may.
func Unquoted(args []string) []string {
	var out []string
	for i, a := range args {
		var one, two string // the words before
		if i > 0 {
			one = args[i-1]
		}
		if i > 1 {
			two = args[i-2]
		}
		glue, last := "", len(out)-1
		flag, value, given := strings.Cut(one, "=")
		this, before := strings.TrimSuffix(a, ","), strings.TrimSuffix(one, ",")
		switch {
		case i > 1 && slices.Contains(faceNames, this) && slices.Contains(faceNames, before) && (strings.HasPrefix(out[last-1], "--on") || strings.HasPrefix(out[last-1], "--extra")):
			glue = ","
		case last > 0 && out[last-1] == "--except" && serial().MatchString(this) && serial().MatchString(before):
			glue = ","
		case i > 0 && out[last] == "batch" && args[0] != "batch" && !strings.HasPrefix(a, "-") && !strings.HasPrefix(two, "--"):
			glue = ":"
		case i > 1 && one == "-" && serial().MatchString(two) && serial().MatchString(a):
			out, a = out[:last-1], two+"-"+a
		case !slices.Contains(allUnits, a):
		case strings.HasPrefix(two, "--") && !strings.Contains(two, "=") && figure().MatchString(one), strings.HasPrefix(flag, "--") && given && figure().MatchString(value):
			glue = " "
		}
		if glue == "" {
			out = append(out, a)
		} else {
			out[last] = strings.TrimSuffix(out[last], glue) + glue + a
		}
	}
	return out
}
