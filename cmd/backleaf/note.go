package main

import "backleaf/record"

func newNote(a *app) {
	var b record.Note
	o := &moment{terms: func(args []string) ([]string, error) {
		b.Text = args[len(args)-1]
		return args[:len(args)-1], nil
	}}
	actAt(a, "note", o, &b)
}
