package main

import (
	"errors"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// once is a flag that is given at most once: of two values one would silently
// count for nothing.
type once struct {
	pflag.Value
	given bool
}

func (o *once) Set(s string) error {
	if o.given {
		return errors.New("given twice: which of the two is meant?")
	}
	o.given = true
	return o.Value.Set(s)
}

// onlyOnce lets every flag of a command and of those below it that is no list
// be given at most once.
func onlyOnce(c *cobra.Command) {
	wrap := func(f *pflag.Flag) {
		if _, list := f.Value.(pflag.SliceValue); !list && f.Value.Type() != "bool" {
			f.Value = &once{Value: f.Value}
		}
	}
	c.Flags().VisitAll(wrap)
	c.PersistentFlags().VisitAll(wrap)
	for _, sub := range c.Commands() {
		onlyOnce(sub)
	}
}
