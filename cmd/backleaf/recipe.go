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
		done, err := planning.KeepRecipe(d.ctx, d.v, d.app.words(d.v.Shop.Studio), d.at, made)
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
			for _, step := range planning.Told(words, r.Body) {
				t.Row(tell.Say(words, step))
			}
		}
		return bodies(w.Recipes), record.Say("no-recipes"), nil
	})
}
