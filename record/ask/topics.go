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

// phrasesOf reads phrases parted by commas, in which words parted by strokes
// stand for one another.
func phrasesOf(s string) [][]string {
	var out [][]string
	for p := range strings.SplitSeq(s, ",") {
		all := [][]string{nil}
		for alternatives := range strings.FieldsSeq(p) {
			var longer [][]string
			for _, begun := range all {
				for w := range strings.SplitSeq(alternatives, "/") {
					if empty()[stem(w)] { // the phrase would be shorter than it looks
						panic("ask: a phrase holds a word that is passed over: " + p)
					}
					longer = append(longer, append(slices.Clone(begun), meant(stem(w))))
				}
			}
			all = longer
		}
		for _, ws := range all {
			if slices.Sort(ws); ws != nil && !slices.ContainsFunc(out, func(o []string) bool { return slices.Equal(o, ws) }) {
				out = append(out, slices.Compact(ws))
			}
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
	{"lead-and-toxic-pigments", "lead/toxic/poison/poisonous/cadmium/mercury/arsenic/vermilion/chromium/chrome/cobalt/nickel/barium/antimony, lead/flake white, metal weight, naples yellow, lead based/ground/paint",
		"pigment, paint, ground, colour, red, yellow, white, green, layer, stuff, substance, free, material, component, metal, based", (*reader).metals},
	{"zinc", "zinc, zinc white/oxide", "pigment, paint, ground, white, oil", (*reader).zinc},
	{"hazards", "hazard, danger, dangerous, harmful, harm, health, safety, safe, safe sand/clean, hazardous, glove, mask, risk, health risk, child, children, allergic, warning, caution, precaution",
		"sand, clean, conservator, handle, touch, material, stuff, substance, layer, open, crate, unpack, restorer, work, paint, ground, wear, working, around, home, house", (*reader).hazards},
}

// bodyTopics: board and cloth, their sizes and how they stand.
var bodyTopics = []listed{
	{"thread-count", "thread, thread count/cm/inch/centimetre, sett, weave, woven, weave count, twill, plain weave, how fine, fine/coarse cloth, fine/coarse weave, coarse, warp weft count, open/tight/loose weave",
		"cloth, warp, weft, per, centimetre, how many, count, plain, fine", (*reader).threads},
	{"weight-of-the-cloth", "cloth weight, gsm, weight area, gram square, cloth gram, weight cotton/polyester", "cloth, gram, square, metre, meter, per, m2, area", (*reader).clothMass},
	{"run-of-the-threads", "warp run/direction/way/weft/cloth/grain, lay direction/way cloth, weft, direction thread/cloth, thread run/way, run cloth, along grain, selvedge", "warp, cloth, run, way, thread, direction, grain", (*reader).run},
	{"cloth", "cloth, fibre, fiber, cotton, polyester, hemp, jute, muslin, burlap, cloth material/fibre/fiber, stretched, stretched cloth, lined, covering, covered, marouflage, flax",
		"wet, front, cotton, polyester, fibre, fiber, material, lot, board, stretched, stretcher, bar, wrapped, covered, glue", (*reader).cloth},
	{"formaldehyde", "formaldehyde, formaldehyde class, emission, off gas, offgas, off gassing, outgassing, e1, glue emission", "board, class", (*reader).formaldehyde},
	{"grain", "grain, grain direction/run/way, face grain", "board, run, way, direction, wood, face", (*reader).grain},
	{"thickness-of-the-board", "thick, thick board/wood/panel, depth, deep, mm board, mm thick, strong board, how mm thick", "board, wood, honeycomb, sheet, millimetre, aluminium", (*reader).thick},
	{"bracing", "brace, braced, bracing, cradle, cradled, cradling, batten, strainer, stiffener, crossbar, reinforced, reinforcement", "back, board", (*reader).braced},
	{"board", "board, support, wood, species, honeycomb, aluminium, aluminum, birch, poplar, oak, pine, sheet, rigid, painted on, painting on, under paint, base, backing, backing board/material, under cloth, board under paint, material support, metal support, panel material, solid wood, material board, core",
		"lot, material, wood, honeycomb, aluminium, aluminum, birch, poplar, under, paint, oak, pine, solid, tempered, core, surface, backing, tree", (*reader).board},
	{"size", "size", "", (*reader).size},
	{"dimensions", "dimension, measurement, measure, large, height, width, high, wide, format, size dimension/format/height/width/cm/mm/inch/centimetre/painting/panel, centimetre, long, area, how many cm, how cm/inch, cm, proportion, square, fit, will fit, small, diagonal, orientation, portrait landscape",
		"wall, frame, without, fit, size, format, centimetre, side, total, across, space, high, wide, deep", (*reader).dimensions},
	{"weight", "weight, kilo, kilogram, kg, scale, light weight, pound, lb", "whole, frame, without, much, hook, pound, gram", (*reader).weight},
	{"bow", "bow, warp, warped, flat, flatness, hollow, curve, cupped, cupping, twist, bend, bulge, bulging, straight, deform, deformed, deformation, buckle, buckled, convex, concave, curl, curled, level, planar, plane", "measured, board, wood, side, way, slightly", (*reader).bow},
}
