package terminal

import (
	"cmp"
	"iter"
	"slices"
	"strings"

	"backleaf/record"

	"github.com/spf13/cobra"
)

// Meant is the command that a word was likely meant for which is none below c, whose
// path ends with a space: by the words of the trade, by its name further down among
// all commands, or by a slip of the finger. Empty: none is near.
func Meant(c *cobra.Command, trade map[string]string, path, typed string, all iter.Seq[string]) string {
	near := trade[path+typed]
	if path == "panel " { // words of the trade speak of panels
		near = cmp.Or(near, trade[typed])
	}
	var names, called []string
	for name := range all {
		if strings.HasPrefix(name, path) && strings.HasSuffix(name, " "+typed) {
			called = append(called, "backleaf "+name)
		}
	}
	for _, below := range c.Commands() {
		if n := below.Name(); n != "lost" && n != "retire" && n != "forget" { // no slip leads to what cannot be undone
			names = append(names, n)
		}
	}
	slices.Sort(called)
	same := map[string]string{"list": "show", "show": "list"}[typed]
	slip := record.Nearest(cmp.Or(same, typed), names)
	if slip != "" && path != "" { // its bare name may be that of another command
		slip = "backleaf " + path + slip
	}
	return cmp.Or(near, strings.Join(called, "\" or \""), slip)
}
