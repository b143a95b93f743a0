package main

import (
	"backleaf/cmd/internal/terminal"
	"backleaf/record/studio"
)

// stages are the words for long work: how far it has come, or what it is.
var stages = map[string]terminal.Stage{
	"certificate":       {Busy: "drawing and signing the certificate"},
	"checking-deposit":  {Busy: "checking the deposit"},
	"copying-book":      {Busy: "copying and verifying the book"},
	"entries":           {Far: "entries"},
	"files":             {Far: "files"},
	"import":            {Far: "entries and panels"},
	"labels":            {Far: "labels"},
	"panels":            {Far: "panels"},
	"photographs":       {Far: "photographs"},
	"restoring-entries": {Busy: "verifying and copying %d entries"},
	"site":              {Far: "pages"},
	"writing-panels":    {Busy: "writing %d panels"},
}

// progress shows how far long work has come, on a terminal only.
func (a *app) progress() (show studio.Progress) {
	show, a.clear = terminal.Progress(a.err, stages)
	return show
}

func (a *app) cleared() {
	if a.clear != nil {
		a.clear()
	}
}
