package ask

import (
	"slices"

	"backleaf/record"
)

func isVarnish(l record.Layer) bool { return l.Varnish != nil }
func isPaint(l record.Layer) bool   { return l.Paint != nil }
func isCloth(l record.Layer) bool   { return l.Cloth != nil }
func isCoat(l record.Layer) bool    { return l.Cloth == nil && l.Paint == nil && l.Varnish == nil }

// of are the coats that serve one of some purposes.
func of(purposes ...record.Purpose) func(record.Layer) bool {
	return func(l record.Layer) bool { return isCoat(l) && slices.Contains(purposes, l.Purpose) }
}

// layerTopics: what was laid on, and what was taken off.
var layerTopics = []listed{
	{"new-varnish", "new/another/fresh/second varnish, over varnish, should varnish, put/add varnish, should coat, revarnish, re varnish, ready varnish, recoat, safe varnish, varnish myself/home",
		"varnish, myself, fresh, coat, top, home, new, layer, gloss, matt, protective, conservator, old, should, put, add, another", (*reader).newVarnish},
	{"removed", "varnish taken/took/gone, varnish off taken/took, off took, off taken, layer off taken, coat off taken, removed, removed layer/varnish/who/why/when, remove layer, was remove, was remove varnish, why remove, why remove varnish, old/earlier/previous/former/original/first varnish, happened first varnish, scraped, cleaned off, get rid",
		"varnish, layer, coat, old, earlier, conservator, product, paint, who, when, why, with, original, solvent, first, date, off", (*reader).removed},
	{"varnish-removal", "remover, remove varnish, varnish remover/removable/reversible/solvent, removable, reversible, solvent, should remove, should removed, should remove/removed varnish, should off taken/take/get, take/get off, should off taken/take/get varnish, take/get off varnish, varnish off, dissolve, dissolve varnish, should removed varnish old, should remove varnish old",
		"varnish, later, clean, conservator, water, take, off, safely, old, layer, should, alcohol", (*reader).removal},
	{"isolation-coat", "isolation, isolating, isolation coat/layer, isolating layer/varnish/coat", "coat, layer, varnish, under", coats(record.Isolation)},
	{"varnish", "varnish, unvarnished, varnish resin, surface coat, final coat/layer/finish, top coat/layer, topcoat, gloss, glossy, sheen, matt, matte, shiny, shine, satin, resin, dammar, mastic, lacquer, lacquered, protect coat/layer, protective coat/layer, surface finish, glaze, how many varnish, was varnish",
		"layer, coat, date, lot, final, resin, gloss, glossy, matt, matte, purpose, product, protective, protect, finish, synthetic, natural, first, surface, shiny, satin, deliberately, intended, how, many", (*reader).varnish},

	{"back", "back, back sealed/coat/bare/seal/protect/treated/side, raw back", "sealed, unsealed, seal, coat, uncoated, side, face, layer, bare, raw, protect, treated, painted, finish", face(record.Back)},
	{"edges", "edge, edge sealed/coat/bare/seal/protect/treated/raw, rim, border, left raw edge, side, side sealed/bare/coat/painted", "sealed, unsealed, seal, coat, uncoated, layer, bare, raw, protect, board, varnish, treated, painted, side", face(record.Edges)},
	{"front", "front, front sealed/side/coat", "sealed, coat, side, layer", face(record.Front)},
	{"sealing", "sealed, unsealed, seal, sealed round, all/both side sealed/coat/bare/protect, all/both side, face sealed, face/edge/front back edge, edge back, edge back protect/sealed, front back, protect, face coat/bare, bare, uncoated, raw, damp, moisture, which face/side bare/sealed/coat, which face/side",
		"board, face, side, properly, wood, round, around, against, coat, front, back, edge, completely, fully, protect, seal, sealed, bare, water, humidity", (*reader).sealed},

	{"stain-block", "stain block/blocker/blocking, board induced discolouration, discolouration, discoloration", "coat, layer, board, stain", coats(record.StainBlock)},
	{"barrier-coat", "barrier, barrier coat, vapour barrier, vapor barrier, moisture barrier", "coat, back", coats(record.Barrier)},
	{"sealer", "sealer, sealant, sealed with, board sealed, board sealed with, wood sealed, when sealed, how sealed, how board/wood sealed, sealer back/front/edge, sealed shellac, seal coat, shellac, product seal/sealed, agent seal, who sealed, impregnated",
		"board, lot, coat, layer, wood, back, front, edge, shellac, product, seal, sealed, acrylic, first, face", coats(record.Sealer)},
	{"adhesive", "glue, glue cloth, pva, pvac, attach/mounted/hold cloth, attach/mounted board, cloth hold on, cloth on board how, attach, mounted, cloth down, hold cloth board",
		"cloth, board, wood, support, down, lot, layer, failed, fail, polyester, cotton, pvac", (*reader).adhesive},
	{"sizing", "sizing, sized, size coat/cloth/ground/under/below/layer/glue, rabbit, rabbit skin, rabbit skin glue, animal/hide/skin glue, gelatine, gelatin, how sized", "cloth, coat, layer, before, glue, ground, under, below, skin", (*reader).sizing},
	{"thickness-of-the-layers", "film thick, thick coat/layer/ground/varnish/paint/sealer/glue/film, dry/wet film, micron, micrometre", "ground, varnish, paint, coat, layer, sealer, film, thick", (*reader).films},
	{"ground", "ground, ground coat/layer/colour/white/oil/acrylic, unprimed, preparation, chalk, prepared, prepared with/surface, preparatory layer, before paint",
		"coat, layer, colour, white, lot, dry, acrylic, oil, binder, chalk, cloth, number, paint, under, before, product, red, lead, surface", coats(record.Ground)},

	{"pigments", "blue, green, yellow, brown, orange, violet, purple, black, red, which red/white/black, pigment, colourant, colour index, colour, lightfast, lightfastness, palette, fade, fading, ultramarine, ochre, will fade", "paint, index, white, blue, red, yellow, binder, black", (*reader).pigments},
	{"underdrawing", "underdrawing, drawing, sketch, sketched, charcoal, pencil, drawn, drew", "under, paint", (*reader).underdrawing},
	{"fat-over-lean", "fat lean, fat over lean, oil content, lean, fat", "layer, paint", (*reader).fat},
	{"paint", "paint, paint medium/layer/with/in/binder, medium, media, technique, oil, acrylic, acryl, tempera, egg, egg tempera, alkyd, encaustic, gouache, watercolour, watercolor, oil/acrylic/tempera painting, water based/colour, pastel",
		"layer, binder, oil, acrylic, acryl, tempera, egg, alkyd, medium, product, brand, watercolour, mixed, pure, real", (*reader).paint},
	{"build-up", "build up, buildup, stratigraphy, layer, layer many/order/list/bottom/top, structure, coat, cross section, section, layer structure, sandwich, construction, how made, composition, layer paint/under/board, layer under paint, coat under paint, layer under varnish, stack, anatomy, constructed, built, built up, under paint show/lay, between board/cloth/ground/sealer/glue/back paint/varnish/ground/oil/tempera/acrylic, between layer, surface order/up, board up surface, bottom top, wood up surface, assembled",
		"order, number, board, structure, paint, under, sequence, bottom, top, list, ground, up, outward, surface, beneath", (*reader).buildUp},
}
