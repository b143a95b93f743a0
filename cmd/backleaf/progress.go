package main

import (
	"cmp"
	"fmt"

	"github.com/schollz/progressbar/v3"

	"backleaf/record/studio"
)

// stages are the words for long work: how far it has come, or what it is.
var stages = map[string]struct{ busy, far string }{
	"checking-deposit":  {busy: "checking the deposit"},
	"copying-book":      {busy: "copying and verifying the book"},
	"copying-entries":   {busy: "copying and verifying %d entries"},
	"entries":           {far: "entries"},
	"files":             {far: "files"},
	"import":            {far: "entries and panels"},
	"panels":            {far: "panels"},
	"photographs":       {far: "photographs"},
	"restoring-entries": {busy: "verifying and copying %d entries"},
	"site":              {far: "pages"},
	"writing-panels":    {busy: "writing %d panels"},
}

// progress shows how far long work has come and how long it will still take,
// on a terminal only.
func (a *app) progress() studio.Progress {
	if !a.isTerminal() {
		return nil
	}
	var bar *progressbar.ProgressBar
	var of string
	return func(stage string, done, total int64) {
		words := stages[stage]
		switch {
		case words.far != "":
			if bar == nil || stage != of {
				of, bar = stage, progressbar.NewOptions64(cmp.Or(total, 1), progressbar.OptionSetWriter(a.err), progressbar.OptionSetDescription(words.far),
					progressbar.OptionShowCount(), progressbar.OptionSetWidth(20), progressbar.OptionSetPredictTime(true), progressbar.OptionThrottle(100e6))
			}
			_ = bar.Set64(done) // a picture of the work, not the work
		case done == 0 && total > 0:
			fmt.Fprintf(a.err, words.busy+" …", total)
		case done == 0:
			fmt.Fprint(a.err, words.busy+" …")
		}
		if done == total && total > 0 {
			bar = nil
			fmt.Fprint(a.err, "\r\x1b[K")
		}
	}
}
