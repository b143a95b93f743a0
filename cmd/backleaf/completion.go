package main

import (
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"backleaf/cmd/internal/terminal"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
)

// completions are what the shell offers where a name of the book is asked for, as
// [questions.Names] calls it: by the name of a flag, and by what the use of a
// command calls its words.
var completions = map[string]string{
	"NUMBER": "panels", "PANEL|FILE": "panels", "except": "panels", "panel": "panels", "like": "panels",
	"trace LOT": "lots", "lot": "lots", "with": "shelf", "cloth": "shelf", "board": "shelf", "varnish": "shelf",
	"show KEY": "materials", "KEY MATERIAL": "materials", "material": "materials", "starter [KEY": "starter",
	"batch": "batches", "recipe": "recipes", "by": "makers", "finding": "rules", "why": "rules",
}

// complete lets the shell offer names, for a command and those below it.
func (a *app) complete(c *cobra.Command) {
	c.Flags().VisitAll(func(f *pflag.Flag) {
		if words := strings.Split(f.Usage, ", "); len(words) > 1 && !strings.Contains(words[0], " ") {
			c.RegisterFlagCompletionFunc(f.Name, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp))
		}
	})
	for word, sort := range completions {
		offer := func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) { return a.names(c, sort) }
		if strings.Contains(c.Use, word) {
			c.ValidArgsFunction = offer
		}
		if f := c.Flags().Lookup(word); f != nil && f.Value.Type() != "bool" {
			c.RegisterFlagCompletionFunc(word, offer)
		}
	}
	for _, sub := range c.Commands() {
		a.complete(sub)
	}
}

// names reads what the book holds, each with a word on what it is; of a book that
// cannot be read nothing is offered.
func (a *app) names(c *cobra.Command, sort string) (out []string, d cobra.ShellCompDirective) {
	a.read(c.Context(), func(s *studio.Session) error {
		names, err := questions.Names(c.Context(), s.Book, sort)
		for _, n := range names {
			out = append(out, strings.TrimSpace(n.Name+"\t"+terminal.Wrap(n.What, 0)))
		}
		return err
	})
	return out, cobra.ShellCompDirectiveNoFileComp
}
