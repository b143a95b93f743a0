package record

// Recipe is the usual way in which a studio makes a panel, kept on the shelf.
// A later entry of the same key describes it anew.
type Recipe struct {
	Key   Key          `json:"key"`
	Name  string       `json:"name,omitzero"`
	Steps []RecipeStep `json:"steps"`
	Note  string       `json:"note,omitzero" is:"text"`
}

// RecipeStep is one coat of a recipe, or a cloth and what it is laid into.
type RecipeStep struct {
	Purpose  Purpose `json:"purpose,omitzero"`
	Faces    []Face  `json:"faces"`
	Material Key     `json:"material,omitzero" ref:"material"`
	Cloth    Key     `json:"cloth,omitzero" ref:"material"`
	Spread   Spread  `json:"spread,omitzero"` // wet amount per area of one face
}

func (Recipe) Kind() Kind { return "recipe" }
