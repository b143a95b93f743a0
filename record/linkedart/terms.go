package linkedart

import "backleaf/record"

// concept is a term of the Art & Architecture Thesaurus: its number and the
// label under which it was read.
type concept struct{ aat, label string }

// Concepts, as labelled in published extracts of the thesaurus.
var (
	painting      = concept{"300033618", "paintings (visual works)"}
	paintingAct   = concept{"300054216", "painting (image-making technique)"}
	support       = concept{"300014844", "supports (artists' materials)"}
	partType      = concept{"300241583", "part type"}
	preferredName = concept{"300404670", "preferred name"}
	ownNumber     = concept{"300404621", "owner-assigned number"}
	heightOf      = concept{"300055644", "height"}
	widthOf       = concept{"300055647", "width"}
	depthOf       = concept{"300072633", "depth"}
	frontOf       = concept{"300190703", "fronts (object portions)"}
	backOf        = concept{"300190692", "back (object portion)"}
	materialText  = concept{"300435429", "material statement"}
	sizeText      = concept{"300435430", "dimension statement"}
	conditionText = concept{"300435425", "condition statement"}
	signatureText = concept{"300028705", "signature statement"}
	markText      = concept{"300435414", "inscription statement"}
	description   = concept{"300435416", "description"}
	varnish       = concept{"300014974", "varnish (material)"}
	ground        = concept{"300015297", "ground"}
	sizeMaterial  = concept{"300015312", "size (material)"}
)

// units are the units of measurement the thesaurus has.
var units = map[string]concept{
	"mm": {"300379097", "millimeters"}, "cm": {"300379098", "centimeters"}, "in": {"300379100", "inches"},
}

// boards, fibres and media map closed words to concepts. A word without a
// concept is left out: a near one would say something else.
var (
	boards = map[record.BoardKind]concept{
		record.Plywood: {"300012849", "plywood"}, record.MDF: {"300390932", "medium-density fiberboard"},
		record.Hardboard: {"300014203", "hardboard"}, record.TemperedHardboard: {"300014203", "hardboard"},
		record.Particleboard: {"300014206", "particleboard"}, record.SolidWood: {"300011914", "wood (plant material)"},
	}
	fibres = map[record.Fibre]concept{"linen": {"300014069", "linen (material)"}, "cotton": {"300014067", "cotton (textile)"}}
	media  = map[record.PaintMedium]concept{
		"oil": {"300015050", "oil paint (paint)"}, "acrylic": {"300015058", "acrylic paint"}, "egg-tempera": {"300015062", "tempera"},
	}
	binders = map[record.Binder]concept{
		record.AnimalGlue: {"300192836", "animal glue"}, record.PVA: {"300014507", "polyvinyl acetate"}, record.Shellac: {"300014918", "shellac"},
	}
)

func (c concept) node(class string, of ...concept) node {
	n := node{"id": "http://vocab.getty.edu/aat/" + c.aat, "type": class, "_label": c.label}
	for _, t := range of {
		n["classified_as"] = []node{t.node("Type")}
	}
	return n
}
