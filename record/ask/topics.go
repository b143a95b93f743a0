package ask

import (
	"slices"
	"strings"
	"sync"

	"backleaf/record"
)

// A topic is something that can be asked, with the phrases for it, each the
// words that a question must hold in any order. The words of about may stand
// beside them without asking for anything else.
type topic struct {
	code    record.Code
	phrases [][]string
	about   [][]string
	answer  func(*reader) Answer
}

// listed is a topic with its phrases parted by commas.
type listed struct {
	code           record.Code
	phrases, about string
	answer         func(*reader) Answer
}

func on(code record.Code, phrases, about string, answer func(*reader) Answer) listed {
	return listed{code, phrases, about, answer}
}

func phrasesOf(s string) [][]string {
	var out [][]string
	for p := range strings.SplitSeq(s, ",") {
		ws := content(p)
		if len(ws) < len(split(p)) { // it would be shorter than it looks
			panic("ask: a phrase holds a word that is passed over: " + p)
		}
		if ws != nil {
			out = append(out, ws)
		}
	}
	return out
}

func allListed() []listed {
	return slices.Concat(harmTopics, workTopics, layerTopics, bodyTopics, lifeTopics, recordTopics)
}

// topics is the thesaurus: the special before the general. It is made when a
// question is asked.
var topics = sync.OnceValue(func() (out []topic) {
	for _, l := range allListed() {
		out = append(out, topic{l.code, phrasesOf(l.phrases), phrasesOf(l.about), l.answer})
	}
	return out
})

// harmTopics: what harms whoever works on the panel.
var harmTopics = []listed{
	on("lead-and-toxic-pigments", "lead, lead white, flake white, toxic, poison, poisonous, cadmium, mercury, arsenic, heavy metal, naples yellow, vermilion, chromium, cobalt, nickel, barium, lead based, lead paint, lead ground, lead primer",
		"pigment, paint, ground, colour, color, red, yellow, white, layer, primer, stuff, substance, free, material, component, metal", (*reader).metals),
	on("zinc", "zinc, zinc white, zinc oxide", "pigment, paint, ground, white, oil", (*reader).zinc),
	on("hazards", "hazard, danger, dangerous, harmful, harm, health, safety, safe sand, safe clean, safe, hazardous, glove, mask, risk, health risk, child, children, allergic, warning, caution, precaution",
		"sand, clean, conservator, handle, touch, material, stuff, substance, layer, open, crate, unpack, restorer, work, paint, ground, wear, working, around, home, house", (*reader).hazards),
}

// bodyTopics: board and cloth, their sizes and how they stand.
var bodyTopics = []listed{
	on("thread-count", "thread count, thread per cm, thread per inch, thread, sett, weave count, weave, woven, centimetre thread, twill, plain weave, how fine, fine weave, coarse, coarse weave",
		"cloth, linen, canvas, fabric, warp, weft, per, centimetre, centimeter, how many, count, plain", (*reader).threads),
	on("weight-of-the-cloth", "cloth weight, weight cloth, linen weight, weight linen, canvas weight, fabric weight, gsm, mass per area, heavy cloth, heavy linen, heavy canvas, heavy fabric, cloth mass, weigh cloth, weigh linen, weigh canvas, weigh fabric, weight cotton, weight polyester",
		"cloth, linen, canvas, fabric, gram, square, metre, meter, per, m2", (*reader).clothMass),
	on("run-of-the-threads", "warp run, weft, warp direction, thread direction, direction cloth, along grain, selvedge, warp way, warp grain, warp weft, warp of cloth, warp linen, run of thread, thread run", "warp, cloth, linen, run, way, thread, direction, grain", (*reader).run),
	on("cloth", "cloth, linen, canvas, fabric, textile, fibre, fiber, cotton, polyester, hemp, jute, muslin, burlap, fibre cloth, fabric material, stretched canvas, stretched, lined, covering, marouflage", "wet, front, linen, cotton, polyester, fibre, fiber, material, glue, glued, board, lot, plywood, mdf, canvas, stretched, stretcher, bar, wrapped, covered", (*reader).cloth),
	on("formaldehyde", "formaldehyde, formaldehyde class, emission, off gas, offgas, off gassing, outgassing, e1, glue emission", "board, class, plywood, mdf", (*reader).formaldehyde),
	on("grain", "grain, grain direction, face grain", "board, run, way, direction, wood, plywood", (*reader).grain),
	on("thickness-of-the-board", "thickness, thick, board thickness, board thick, depth, deep, thin, mm board, mm plywood, mm mdf, mm thick, gauge, strong board", "board, plywood, support, wood, mdf, hardboard, honeycomb, sheet, millimetre", (*reader).thick),
	on("bracing", "brace, braced, bracing, cradle, cradled, batten, strainer, stiffener", "back, board", (*reader).braced),
	on("board", "board, support, substrate, plywood, wood, wooden, mdf, hardboard, masonite, fibreboard, ply, plies, species, timber, honeycomb, aluminium, aluminum, birch, sheet, rigid, metal, painted on, painting on, under paint, base, backing board, board under paint, material support, metal support, panel material, solid wood",
		"lot, material, wood, plywood, mdf, hardboard, honeycomb, aluminium, aluminum, birch, poplar, under, paint, oak, pine, solid, tempered, core, surface, backing", (*reader).board),
	on("size", "size", "", (*reader).size),
	on("dimensions", "dimension, measurement, measure, large, big, height, width, high, wide, tall, format, size dimension, size format, centimetre, size height, size width, size cm, size mm, size inch, long, length, area, how many cm, proportion, square, fit, small", "wall, frame, without, fit, size, format, centimetre, side, total, across, space", (*reader).dimensions),
	on("weight", "weight, weigh, heavy, kilo, kilogram, kg, mass, light weight, pound, lb", "whole, frame, without, much, hook, pound", (*reader).weight),
	on("bow", "bow, bowed, warp, warped, warping, warpage, flat, flatness, hollow, curve, curved, cupped, cupping, twist, twisted, bent, bend, bulge, straight, deform, deformed, deformation, buckle, convex, concave, curl, level", "measured, board, wood, side, way, plywood, mdf, slightly", (*reader).bow),
}
