package main

import (
	"backleaf/cmd/internal/terminal"
	"backleaf/record/studio"
)

// stages are the words for long work: how far it has come, or what it is.
var stages = map[string]terminal.Stage{
	"checking-deposit":  {Busy: "checking the deposit"},
	"copying-book":      {Busy: "copying and verifying the book"},
	"copying-entries":   {Busy: "copying and verifying %d entries"},
	"entries":           {Far: "entries"},
	"files":             {Far: "files"},
	"import":            {Far: "entries and panels"},
	"panels":            {Far: "panels"},
	"photographs":       {Far: "photographs"},
	"restoring-entries": {Busy: "verifying and copying %d entries"},
	"site":              {Far: "pages"},
	"writing-panels":    {Busy: "writing %d panels"},
}

// progress shows how far long work has come, on a terminal only.
func (a *app) progress() studio.Progress { return terminal.Progress(a.err, stages) }
