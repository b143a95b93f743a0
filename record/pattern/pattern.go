// Package pattern holds regular expressions (regexp/syntax) that are compiled
// when one is first asked: a run of the program needs few of the many.
package pattern

import (
	"regexp"
	"sync"
)

// Of returns an expression, which panics when it is first asked if it is none.
func Of(expr string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expr) })
}
