package ask

import "backleaf/record"

func isGround(l record.Layer) bool     { return isCoat(l) && l.Purpose == record.Ground }
func isAdhesive(l record.Layer) bool   { return isCoat(l) && l.Purpose == record.Adhesive }
func isSealer(l record.Layer) bool     { return isCoat(l) && l.Purpose == record.Sealer }
func isSize(l record.Layer) bool       { return isCoat(l) && l.Purpose == record.Sizing }
func isIsolation(l record.Layer) bool  { return isCoat(l) && l.Purpose == record.Isolation }
func isStainBlock(l record.Layer) bool { return isCoat(l) && l.Purpose == record.StainBlock }
func isBarrier(l record.Layer) bool    { return isCoat(l) && l.Purpose == record.Barrier }
func isVarnish(l record.Layer) bool    { return l.Varnish != nil }
func isPaint(l record.Layer) bool      { return l.Paint != nil }
func isCloth(l record.Layer) bool      { return l.Cloth != nil }
func isCoat(l record.Layer) bool       { return l.Cloth == nil && l.Paint == nil && l.Varnish == nil }

// layerTopics: what was laid on, and what was taken off.
var layerTopics = []listed{
	on("new-varnish", "new varnish, over varnish, revarnish, re varnish, varnish myself, can varnish, may varnish, should varnish, another varnish, put varnish, add varnish, can coat, ready varnish, new coat varnish, recoat, safe varnish, varnish home",
		"varnish, myself, fresh, coat, top, home, new, layer, gloss, matt, protective, conservator, old", (*reader).newVarnish),
	on("removed", "varnish taken off, varnish taken, varnish took, took off, removed, who removed, removed layer, removed varnish, when varnish removed, old varnish, earlier varnish, previous varnish, former varnish, original varnish, first varnish, removal, stripped, cleaned off, why removed, taken off, get rid, varnish gone, scraped",
		"varnish, layer, coat, old, earlier, conservator, product, paint, who, when, why, with, original, solvent, first, date", (*reader).removed),
	on("varnish-removal", "varnish remover, remove varnish, removing varnish, varnish removal, varnish removable, removable, reversible, varnish reversible, varnish solvent, take varnish, take off varnish, varnish off, strip varnish, dissolve varnish, solvent, remover, get varnish off, dissolve, remove",
		"varnish, later, clean, conservator, water, take, off, safely, old, layer", (*reader).removal),
	on("isolation-coat", "isolation coat, isolation, isolating layer, isolating varnish", "coat, layer, varnish", layersOf(record.Isolation, isIsolation)),
	on("varnish", "varnish, varnished, varnishing, unvarnished, varnish resin, surface coating, final coat, final layer, top coat, topcoat, top layer, gloss, glossy, sheen, matt, matte, shiny, satin, resin, dammar, mastic, lacquer, lacquered, protective coat, protective layer, protective coating, surface finish, glaze",
		"layer, coat, coating, date, lot, final, resin, gloss, glossy, matt, matte, purpose, product, protected, protective, finish, synthetic, natural, first, surface, shiny, satin, deliberately, intended", (*reader).varnish),

	on("back", "back, back sealed, back coated, back coat, back bare, reverse, reverse sealed, verso, verso sealed, rear, rear side, back protected, behind, raw back", "sealed, unsealed, seal, sealer, coat, coated, uncoated, side, face, layer, bare, raw, protected, treated, painted, finish", face(record.Back)),
	on("edges", "edge, edge sealed, edge coated, edge bare, edge protected, rim, border", "sealed, unsealed, seal, sealer, coat, coated, uncoated, layer, bare, raw, protected, board, mdf, plywood, varnish, treated, painted", face(record.Edges)),
	on("front", "front, front sealed, recto, front side", "sealed, coat, side, layer", face(record.Front)),
	on("sealing", "sealed, unsealed, sealing, sealed round, side sealed, face sealed, seal, edge back, edge back protected, edge back sealed, front back, front back edge, protected, face coated, side coated, face bare, bare, uncoated, raw, damp, moisture, coated, which face, which side, both side, all side",
		"board, face, side, properly, mdf, plywood, hardboard, wood, round, around, against, coat, front, back, edge, completely, fully, protected, seal, sealed, bare", (*reader).sealed),

	on("stain-block", "stain block, stain blocker, support induced discolouration, discolouration, discoloration", "coat, layer", layersOf(record.StainBlock, isStainBlock)),
	on("barrier-coat", "barrier, barrier coat, vapour barrier, vapor barrier, moisture barrier", "coat, back", layersOf(record.Barrier, isBarrier)),
	on("sealer", "sealer, sealant, sealed with, board sealed with, wood sealed, mdf sealed, hardboard sealed, board sealed, plywood sealed, when sealed, sealer back, sealer front, sealer edge, sealed shellac, sealing coat, shellac, sealing product, sealing agent, impregnated",
		"board, lot, coat, layer, wood, mdf, plywood, hardboard, back, front, edge, shellac, product, seal, sealed, acrylic, first, face", layersOf(record.Sealer, isSealer)),
	on("adhesive", "adhesive, glue, glued, glued down, stuck, stuck down, stick, bonded, bond, paste, pasted, mounted, adhered, glue cloth, attached, attach, fixed, fastened, cement, stuck on",
		"cloth, linen, canvas, fabric, board, plywood, wood, support, down, lot, layer, failed, fail, polyester, cotton, pvac", (*reader).adhesive),
	on("sizing", "sizing, sized, size coat, glue size, size cloth, size ground, size under, size below, size layer, size linen, rabbit skin, rabbit skin glue, rabbit, animal glue, hide glue, gelatine", "cloth, linen, canvas, coat, layer, before, glue, ground, under, below", (*reader).sizing),
	on("thickness-of-the-layers", "film thickness, coat thickness, layer thickness, thickness coat, thickness ground, ground thick, thickness varnish, varnish thick, dry film, wet film, thickness paint, paint thick, thick coat, micron",
		"ground, varnish, paint, coat, layer, sealer, film", (*reader).films),
	on("ground", "ground, gesso, primer, priming, primed, unprimed, preparation, ground layer, chalk, undercoat, prepared, primer coat, prepared with, preparatory layer, ground colour, ground color, between paint, between cloth paint", "coat, layer, colour, color, white, lot, dry, acrylic, oil, binder, chalk, cloth, number, paint, under, before, product, red, lead", layersOf(record.Ground, isGround)),

	on("pigments", "blue, green, yellow, brown, orange, violet, purple, which red, which white, which black, pigment, colourant, colour index, colour, color, lightfast, lightfastness, palette, fade, ultramarine, ochre", "paint, index, white, blue, red, yellow, binder, black", (*reader).pigments),
	on("underdrawing", "underdrawing, drawing, sketch, charcoal, pencil, drawn", "under, paint", (*reader).underdrawing),
	on("fat-over-lean", "fat lean, fat over lean, oil content, lean, fat", "layer, paint", (*reader).fat),
	on("paint", "paint, painted, medium, paint medium, media, technique, oil, acrylic, tempera, egg tempera, alkyd, encaustic, gouache, watercolour, watercolor, paint layer, acryl, paint binder, painted with, painted in, oil painting, acrylic painting, tempera painting, water based",
		"layer, binder, oil, acrylic, acryl, tempera, egg, alkyd, medium, product, brand, watercolour, mixed, pure, real", (*reader).paint),
	on("build-up", "build up, buildup, stratigraphy, layer, structure, coat, cross section, section, layer structure, sandwich, construction, how made, made of, composition, layer paint, layer under, layer under paint, coat under paint, layer board, layer bottom, layer top, stack, anatomy, constructed, built, built up",
		"order, number, board, structure, paint, under, sequence, bottom, top, list, ground, up, outward, surface, beneath", (*reader).buildUp),
}
