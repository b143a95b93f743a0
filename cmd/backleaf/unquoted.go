package main

import (
	"regexp"
	"slices"
	"strings"

	"backleaf/record"
)

var figure = regexp.MustCompile(`^[-+]?[0-9][0-9.,/]*$`)

// units are the units that may stand after a figure.
var units = slices.Concat(record.Amount{}.Units(), record.Length{}.Units(), record.Temperature{}.Units(), record.Duration{}.Units(),
	record.Percent{}.Units(), []string{"ml", "l", "C", "F"})

// joinUnits puts a unit back to its figure where the quotes were forgotten:
// --amount 20 g.
func joinUnits(args []string) []string {
	var out []string
	for i, a := range args {
		if i >= 2 && slices.Contains(units, a) && figure.MatchString(args[i-1]) && strings.HasPrefix(args[i-2], "--") && !strings.Contains(args[i-2], "=") {
			out[len(out)-1] += " " + a
			continue
		}
		if i >= 1 && slices.Contains(units, a) && strings.HasPrefix(args[i-1], "--") && figure.MatchString(args[i-1][strings.IndexByte(args[i-1], '=')+1:]) {
			out[len(out)-1] += " " + a
			continue
		}
		out = append(out, a)
	}
	return out
}
