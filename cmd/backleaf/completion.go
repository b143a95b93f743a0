package main

import (
	"context"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"backleaf/cmd/internal/terminal"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
	"backleaf/record/studio/shelf"
)

// offer reads names from a book.
type offer func(context.Context, *book.Book, *record.Workshop) []string

// completions are what the shell offers where a name of the book is asked for,
// each with a word on what it is: by the name of a flag, and by what the use of a
// command calls its words.
var completions = map[string]offer{
	"NUMBER": panelNames, "PANEL|FILE": panelNames, "except": panelNames, "panel": panelNames, "like": panelNames,
	"trace LOT": lotNames, "lot": lotNames, "with": shelfNames, "cloth": shelfNames, "board": shelfNames, "varnish": shelfNames,
	"show KEY": materialNames, "KEY MATERIAL": materialNames, "material": materialNames, "starter [KEY": starterNames,
	"batch": batchNames, "recipe": recipeNames, "by": makerNames, "finding": ruleNames, "why": ruleNames,
}

// complete lets the shell offer names, for a command and those below it.
func (a *app) complete(c *cobra.Command) {
	c.Flags().VisitAll(func(f *pflag.Flag) {
		if words := strings.Split(f.Usage, ", "); len(words) > 1 && !strings.Contains(words[0], " ") {
			c.RegisterFlagCompletionFunc(f.Name, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp))
		}
	})
	for word, names := range completions {
		offer := func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) { return a.names(c, names) }
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

// names reads what the book holds; of a book that cannot be read nothing is
// offered.
func (a *app) names(c *cobra.Command, names offer) (out []string, d cobra.ShellCompDirective) {
	a.read(c.Context(), func(s *studio.Session) error {
		w, err := s.Book.WorkshopOf(c.Context())
		if err == nil {
			out = names(c.Context(), s.Book, w)
		}
		return err
	})
	return out, cobra.ShellCompDirectiveNoFileComp
}

func panelNames(ctx context.Context, b *book.Book, w *record.Workshop) (out []string) {
	b.Panels(ctx, book.Narrow{}, func(p book.Present) error {
		if p.Place != book.Discarded {
			out = append(out, string(p.Number)+"\t"+terminal.Clean(p.Title))
		}
		return nil
	})
	for _, k := range batchNames(ctx, b, w) {
		out = append(out, "batch:"+k)
	}
	return out
}

func batchNames(ctx context.Context, b *book.Book, _ *record.Workshop) (out []string) {
	roll, err := b.Roll(ctx)
	if err != nil {
		return nil
	}
	for k := range roll.Batches {
		out = append(out, string(k))
	}
	slices.Sort(out)
	return out
}

// standing offers what of one sort stands on the shelf.
func standing[B record.Body](list func(*record.Workshop) []record.Done[B], say func(B) (record.Key, string)) offer {
	return func(_ context.Context, _ *book.Book, w *record.Workshop) (out []string) {
		for _, d := range list(w) {
			key, what := say(d.Body)
			out = append(out, strings.TrimSpace(string(key)+"\t"+terminal.Clean(what)))
		}
		return out
	}
}

var (
	lotNames = standing(func(w *record.Workshop) []record.Done[record.Lot] { return w.Lots },
		func(l record.Lot) (record.Key, string) { return l.Key, string(l.Material) + " " + l.MakerLot })
	materialNames = standing(func(w *record.Workshop) []record.Done[record.Material] { return w.Materials },
		func(m record.Material) (record.Key, string) { return m.Key, m.Name })
	recipeNames = standing(func(w *record.Workshop) []record.Done[record.Recipe] { return w.Recipes },
		func(r record.Recipe) (record.Key, string) { return r.Key, "" })
	makerNames = standing(func(w *record.Workshop) []record.Done[record.Maker] { return w.Makers },
		func(m record.Maker) (record.Key, string) { return m.Key, m.Name })
)

func starterNames(context.Context, *book.Book, *record.Workshop) (out []string) {
	for _, m := range shelf.Starter() {
		out = append(out, string(m.Key)+"\t"+m.Name)
	}
	return append(out, "all")
}

func shelfNames(ctx context.Context, b *book.Book, w *record.Workshop) []string {
	return append(lotNames(ctx, b, w), materialNames(ctx, b, w)...)
}

func ruleNames(context.Context, *book.Book, *record.Workshop) []string { return questions.Rules() }
