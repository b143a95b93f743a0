package main

import (
	"backleaf/record"
	"fmt"
	"strconv"
)

func newNote(a *app) {
	var b record.Note
	o := &moment{terms: func(args []string) ([]string, error) {
		b.Text = args[len(args)-1]
		if _, err := strconv.Atoi(b.Text); err == nil && len(args) == 1 {
			return nil, usage(fmt.Sprintf("put the text after it, in quotes: backleaf note %s \"…\"", b.Text), "what is to be noted of panel %s?", b.Text)
		}
		return args[:len(args)-1], nil
	}}
	actAt(a, "note", o, &b)
}
