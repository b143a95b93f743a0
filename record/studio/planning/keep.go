package planning

import (
	"context"
	"reflect"
	"strconv"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/plan"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/tell"
)

// FromRecipe turns a recipe of the shelf into steps. Its amounts are for each
// face alike.
func FromRecipe(r record.Recipe) []Step {
	var out []Step
	for _, s := range r.Steps {
		step := Step{Do: plan.Coating, Purpose: s.Purpose, Faces: s.Faces, Cloth: s.Cloth}
		if s.Cloth != "" {
			step.Do = plan.LayingCloth
		}
		if s.Material != "" && s.Material != record.Unknown {
			step.Mix = []record.Part{{Parts: 1, Material: s.Material}}
		}
		mg, _ := s.Spread.MilligramsPerSquareMeter()
		ul, _ := s.Spread.MicrolitersPerSquareMeter()
		step.Spread = plan.Amount{Milligrams: float64(mg), Microliters: float64(ul)}
		out = append(out, step)
	}
	return out
}

// Recipe finds a recipe on the shelf.
func Recipe(w *record.Workshop, k record.Key) (record.Recipe, error) {
	r, ok := w.Recipe(k)
	if !ok {
		e := refuse.Cannot("no-such-recipe", "there is no recipe %q on the shelf", k)
		e.Field = "recipe"
		return r, e
	}
	return r, nil
}

// AsRecipe makes a recipe of how a panel was made: its coats and cloth with
// what was laid on a square metre. A recipe keeps one material a coat, and no
// thinner.
func AsRecipe(ctx context.Context, b *book.Book, n record.Number, key record.Key) (record.Recipe, []record.Said, error) {
	r := record.Recipe{Key: key}
	w, err := b.Around(ctx, n)
	if err != nil {
		return r, nil, err
	}
	var warnings []record.Said
	for _, s := range fromPanel(w, w.Panel(n), false) {
		if s.Do != plan.Coating && s.Do != plan.LayingCloth {
			continue
		}
		step := record.RecipeStep{Purpose: s.Purpose, Faces: s.Faces, Cloth: s.Cloth}
		switch {
		case len(s.Mix) > 1:
			return r, nil, refuse.Cannot("recipe-of-mix", "a recipe keeps one material a coat, and here %d were mixed", len(s.Mix))
		case len(s.Mix) == 1:
			step.Material = s.Mix[0].Material
		}
		if mp, ok := s.Thinned.Millipercent(); ok && mp > 0 {
			warnings = append(warnings, record.Say("recipe-without-thinner", record.With("thinned", s.Thinned), record.With("purpose", s.Purpose), record.With("faces", s.Faces)))
		}
		amount, unit := s.Spread.Milligrams, " g/m2"
		if amount == 0 {
			amount, unit = s.Spread.Microliters, " mL/m2"
		}
		if amount > 0 {
			if err := step.Spread.UnmarshalText([]byte(strconv.FormatFloat(amount/1000, 'f', 1, 64) + unit)); err != nil {
				return r, nil, err
			}
		}
		r.Steps = append(r.Steps, step)
	}
	if len(r.Steps) == 0 {
		return r, nil, refuse.Cannot("recipe-of-nothing", "no coat and no cloth is recorded on %s before its paint", n)
	}
	return r, warnings, nil
}

// KeepRecipe puts a recipe on the shelf, and tells it.
func KeepRecipe(ctx context.Context, v *studio.View, c *tell.Catalogue, at record.When, r record.Recipe) (studio.Written, error) {
	w, err := v.Write(ctx, record.Entry{At: at, Body: r})
	if old, there := v.Shop.Recipe(r.Key); there && err == nil && !reflect.DeepEqual(old, r) {
		w.Warnings = append(w.Warnings, record.Say("recipe-replaced", record.With("recipe", r.Key)))
	}
	w.Means = append(w.Means, Told(c, r)...)
	return w, err
}

// Told says the steps of a recipe, a line each.
func Told(c *tell.Catalogue, r record.Recipe) (said []record.Said) {
	for i, s := range FromRecipe(r) {
		step := r.Steps[i]
		said = append(said, record.Say("recipe-step", tell.Told("act", s.Name(c)), record.With("material", step.Material), record.With("cloth", step.Cloth), record.With("spread", step.Spread)))
	}
	return said
}
