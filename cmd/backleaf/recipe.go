package main

import (
	"strings"

	"backleaf/cmd/internal/terminal"
	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/planning"
	"backleaf/record/tell"
)

func recipeFrom(a *app) {
	var key string
	o := &moment{}
	a.acts("recipe from", o, func(d *doing) (studio.Written, error) {
		made, warnings, err := planning.AsRecipe(d.ctx, d.v.Book, d.v.Panels[0], record.Key(strings.ToLower(key)))
		if err != nil {
			return studio.Written{}, err
		}
		done, err := planning.KeepRecipe(d.ctx, d.v, d.at, made)
		done.Warnings = append(warnings, done.Warnings...)
		return done, err
	}, flags{"at": &o.at, "except": &o.except, "as": needed{&key}})
}

func recipeCompare(a *app) {
	var key string
	a.reads("recipe compare", flags{"recipe": needed{&key}, "json": &a.asJSON}, func(r *run) error {
		v, err := r.Look(r.ctx, r.args, nil)
		if err != nil {
			return err
		}
		w, err := r.Book.Around(r.ctx, v.Panels...) // amounts are shared out over all panels of an entry
		if err != nil {
			return err
		}
		made, err := planning.Recipe(w, record.Key(strings.ToLower(key)))
		if err != nil {
			return err
		}
		words := a.words(w.Studio)
		spent := planning.Compare(w, v.Panels, planning.FromRecipe(made), words)
		if a.asJSON {
			return a.sayJSON(spent)
		}
		for _, x := range spent {
			a.say("%s", x.Say(words))
		}
		return nil
	})
}

func recipeList(a *app) {
	a.shelfList("recipe list", func(_ *run, w *record.Workshop, t *terminal.Table) (any, record.Said, error) {
		words := a.words(w.Studio)
		for _, r := range w.Recipes {
			t.Row(string(r.Body.Key))
			for i, s := range planning.FromRecipe(r.Body) {
				step := r.Body.Steps[i]
				t.Row(tell.Say(words, record.Say("recipe-step", tell.Told("act", s.Name(words)), record.With("material", step.Material),
					record.With("cloth", step.Cloth), record.With("spread", step.Spread))))
			}
		}
		return bodies(w.Recipes), record.Say("no-recipes"), nil
	})
}
