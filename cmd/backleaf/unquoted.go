package main

import (
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/pattern"
)

var figure = pattern.Of(`^[-+]?[0-9][0-9.,/]*$`)

var serial = pattern.Of(`^[0-9]+$`)

// units are the units that may stand after a figure.
var units = slices.Concat(record.Amount{}.Units(), record.Length{}.Units(), record.Temperature{}.Units(), record.Duration{}.Units(),
	record.Percent{}.Units(), []string{"ml", "l", "C", "F"})

var faceNames = append(append([]string{}, record.Words("Face")...), "edge", "all")

// joinUnits puts together what belongs together where quotes, commas or colons
// were forgotten: --amount 20 g, --on front back, 2 - 5, batch may.
func joinUnits(args []string) []string {
	var out []string
	for i, a := range args {
		last := len(out) - 1
		switch {
		case i >= 2 && slices.Contains(faceNames, a) && slices.Contains(faceNames, args[i-1]) && (strings.HasPrefix(out[last-1], "--on") || strings.HasPrefix(out[last-1], "--extra")):
			out[last] += "," + a
			continue
		case i >= 1 && out[last] == "batch" && args[0] != "batch" && !strings.HasPrefix(a, "-") && (i < 2 || !strings.HasPrefix(args[i-2], "--")):
			out[last] += ":" + a
			continue
		case i >= 2 && args[i-1] == "-" && serial().MatchString(args[i-2]) && serial().MatchString(a):
			out = append(out[:last-1], args[i-2]+"-"+a)
			continue
		}
		if i >= 2 && slices.Contains(units, a) && figure().MatchString(args[i-1]) && strings.HasPrefix(args[i-2], "--") && !strings.Contains(args[i-2], "=") {
			out[len(out)-1] += " " + a
			continue
		}
		if i >= 1 && slices.Contains(units, a) && strings.HasPrefix(args[i-1], "--") && figure().MatchString(args[i-1][strings.IndexByte(args[i-1], '=')+1:]) {
			out[len(out)-1] += " " + a
			continue
		}
		out = append(out, a)
	}
	return out
}
