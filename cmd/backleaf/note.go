package main

import (
	"backleaf/record"
	"strconv"
	"strings"
)

func newNote(a *app) {
	var b record.Note
	o := &moment{terms: func(args []string) ([]string, error) {
		b.Text = strings.TrimSpace(args[len(args)-1])
		if _, err := strconv.Atoi(b.Text); err == nil && len(args) == 1 || b.Text == "" {
			return nil, usage("put the text last, in quotes: backleaf note 1 \"…\"", "what is to be noted?")
		}
		return args[:len(args)-1], nil
	}}
	actAt(a, "note", o, &b)
}
