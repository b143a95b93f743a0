package main

import (
	"fmt"

	"backleaf/record/studio"
)

// stages are the words for long work: how far it has come, or what it is.
var stages = map[string]struct{ busy, far string }{
	"checking-deposit":  {busy: "checking the deposit"},
	"copying-book":      {busy: "copying and verifying the book"},
	"copying-entries":   {busy: "copying and verifying %d entries"},
	"entries":           {far: "entries"},
	"files":             {far: "files"},
	"panels":            {far: "panels"},
	"photographs":       {far: "photographs"},
	"restoring-entries": {busy: "verifying and copying %d entries"},
	"writing-panels":    {busy: "writing %d panels"},
}

// progress shows how far long work has come, on a terminal only.
func (a *app) progress() studio.Progress {
	if !a.isTerminal() {
		return nil
	}
	return func(stage string, done, total int64) {
		words := stages[stage]
		switch {
		case words.far != "":
			fmt.Fprintf(a.err, "\r%d of %d %s", done, total, words.far)
		case done == 0 && total > 0:
			fmt.Fprintf(a.err, words.busy+" …", total)
		case done == 0:
			fmt.Fprint(a.err, words.busy+" …")
		}
		if done == total && total > 0 {
			fmt.Fprint(a.err, "\r\x1b[K")
		}
	}
}
