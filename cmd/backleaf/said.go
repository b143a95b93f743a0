package main

import (
	"errors"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/tell"
)

// warn prints warnings.
func (a *app) warn(v *studio.View, ws []record.Said) {
	c := a.catalogue()
	if v != nil {
		c = c.At(v.Now, v.Zone)
	}
	for _, w := range ws {
		a.talk("%s", tell.Say(c, w))
	}
}

// exitCodes are the exit codes of refusals.
var exitCodes = map[refuse.Class]int{refuse.Failed: exitError, refuse.Unclear: exitUsage, refuse.Broken: exitIntegrity, refuse.NoBook: exitNoBook, refuse.Later: exitNewer}

// refused says a refusal in the words of the command line: an input is the
// flag of that name.
func refused(c *tell.Catalogue, err error) (said, hint string, code int) {
	said = err.Error()
	r, ok := errors.AsType[*refuse.Error](err)
	if !ok {
		return said, "", exitError
	}
	if err == error(r) && r.Field != "" {
		said = "--" + said
	}
	return said, c.Fill(c.Hints[r.Said.Code], r.Said.Values...), exitCodes[r.Class]
}
