package main

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/planning"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
)

func newRecipe(a *app) *cobra.Command {
	return folder("recipe", "recipes: coats and cloth with their usual amounts", recipeFrom(a), recipeList(a), recipeCompare(a))
}

func recipeFrom(a *app) *cobra.Command {
	var o moment
	var key string
	c := &cobra.Command{
		Use: "from " + panelWords, Short: "keep how panels were made as a recipe",
		Long: `Keep how panels were made, before their paint, as a recipe on the shelf: coats and cloth
by face with what was laid on a square metre. The first of the panels is taken; a later
recipe of the same key replaces an earlier one.`,
		Example: `  backleaf recipe from batch:may --as usual
  backleaf recipe from 0142 --as thin`,
		Args: wanted(1, -1, "panels that were made by it"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needs(key, "--as usual", "what is the recipe to be called?"); err != nil {
				return err
			}
			return a.atBench(c.Context(), &o, args, func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (studio.Written, error) {
				w, err := v.Book.Workshop(ctx) // amounts are shared out over all panels of an entry
				if err != nil {
					return studio.Written{}, err
				}
				made, warnings, err := planning.AsRecipe(w, w.Panel(v.Panels[0]), record.Key(strings.ToLower(key)))
				if err != nil {
					return studio.Written{}, err
				}
				done, err := planning.KeepRecipe(ctx, v, at, made)
				done.Warnings = append(warnings, done.Warnings...)
				return done, err
			})
		},
	}
	o.flags(c)
	c.Flags().StringVar(&key, "as", "", "key of the recipe, like \"usual\"")
	return c
}

func recipeCompare(a *app) *cobra.Command {
	var key string
	c := &cobra.Command{
		Use: "compare " + panelWords, Short: "compare a recipe with what was used",
		Long: `Compare a recipe of the shelf with what was used on panels, act by act: what it would
have taken for their sizes, what the record says was laid, and what is not done yet.`,
		Example: `  backleaf recipe compare batch:june --recipe usual
  backleaf recipe compare 0140-0153 --recipe usual --json`,
		Args: wanted(1, -1, "panels that were made by it"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needs(key, "--recipe usual", "with which recipe?"); err != nil {
				return err
			}
			return a.read(c.Context(), func(s *studio.Session) error {
				v, err := s.Look(c.Context(), args, nil)
				if err != nil {
					return err
				}
				w, err := s.Book.Workshop(c.Context()) // amounts are shared out over all panels of an entry
				if err != nil {
					return err
				}
				r, err := planning.Recipe(w, record.Key(strings.ToLower(key)))
				if err != nil {
					return err
				}
				words := a.words(w.Studio)
				spent := planning.Compare(w, v.Panels, planning.FromRecipe(r), words)
				if a.asJSON {
					return a.sayJSON(spent)
				}
				for _, x := range spent {
					a.say("%s", x.Say(words))
				}
				return nil
			})
		},
	}
	c.Flags().StringVar(&key, "recipe", "", "recipe of the shelf")
	return a.jsonFlag(c)
}

func recipeList(a *app) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: "list", Short: "list the recipes on the shelf",
		Example: `  backleaf recipe list
  backleaf recipe list --json`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.shelf(c, func(w *record.Workshop) error {
				if a.asJSON {
					return a.sayJSON(bodies(w.Recipes))
				}
				words := a.words(w.Studio)
				if len(w.Recipes) == 0 {
					a.noted("no-recipes")
				}
				for _, r := range w.Recipes {
					a.say("%s", r.Body.Key)
					for i, s := range planning.FromRecipe(r.Body) {
						step := r.Body.Steps[i]
						a.tell(words, record.Say("recipe-step", tell.Told("act", s.Name(words)), record.With("material", step.Material),
							record.With("cloth", step.Cloth), record.With("spread", step.Spread)))
					}
				}
				return nil
			})
		},
	})
}
