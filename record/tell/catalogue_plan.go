package tell

// PlanWords are said of a plan and printed on the sheets one saws from. The
// keys of the maps are the codes of package plan.
type PlanWords struct {
	Texts      `json:"texts"`
	AskGrain   map[string]Message
	Steps      map[string]Message
	ClothSteps map[string]Message // where they differ
	Warnings   map[string]Message // {n} {size}
	Cautions   []Message
	ClothNotes []Message
	Work       map[string]Message // {purpose} {faces}
	WetMissing map[string]Message // {act}: by what is missing
	Spent      map[string]Message // {act} {planned} {used} {percent} {not}: a recipe beside what was used
	CostWhat   map[string]Message
	TimeNotes  []Message
}

func englishPlan() PlanWords {
	return PlanWords{Texts: Texts{
		"kind": "Cutting plan", "running": "Cutting plan: {title}", "page": "Page {n} of {all}",
		"units":       "Panels are height × width; lengths in {unit, select, in {inches} other {{unit}}}",
		"titles-plan": "What is cut from what", "titles-cloth": "Cloth", "titles-cautions": "Before the first cut", "titles-wet": "Wet materials", "titles-cost": "Cost", "titles-timetable": "When",

		"ask":    "{n} of {size}",
		"sheets": "{n, plural, one {1 sheet} other {{n} sheets}} {sheet}", "from": "{sheet}, {size}",
		"grained":    "The grain of the board is taken to run along the side of {side}, and so not recorded: say --sheet-grain height if it does, --sheet-grain width if it runs across.",
		"grain-side": "Grain along the side of {side}.",
		"least":      "No cheaper set of sheets will do: that is proven.",
		"not-least":  "No proof was found that fewer sheets will not do.",
		"sheets-buy": "Of {sheet} {whole, plural, =0 {no whole sheet} one {at most 1 whole sheet} other {at most {whole} whole sheets}} should be left: to buy {buy}.",
		"used":       "Board used up {used}; {percent} of it becomes panels.",
		"used-best":  "No better cutting is possible: that is proven, of cuts edge to edge that leave the rest in one strip.",
		"used-near":  "At least {least} is needed: that is proven, of cuts edge to edge that leave the rest in one strip. This plan is within {percent}.",
		"third":      "Cut with three turns: with two no plan was found on these sheets.",
		"earned":     "Cut with three turns: the third saves {area} of board.",
		"effort":     "Fence or stop is set {settings, plural, one {once} other {{settings} times}}; {cuts, plural, one {1 cut} other {{cuts} cuts}}, kerf {kerf}.",
		"knife":      "The rule is set {settings, plural, one {once} other {{settings} times}}; {cuts, plural, one {1 cut} other {{cuts} cuts}} with a knife.",

		"board":      "{name}, {thickness}",
		"sheet":      "{alike, plural, one {Sheet {n}} other {Sheets {n} to {last}}} of {all}{alike, plural, one {} other {, all alike}}: {sheet}",
		"untrimmed":  "No trim: see that two edges that meet are straight and square, and measure from those. Working sheet {size}.",
		"from-strip": "{n} from strip {strip}", "from-block": "{n} from strip {strip}, part {block}", "one-size": "{n} × {size}", "letter": "{letter}  {step}",
		"kept": "{letter} ({size})", "keep-too": "Keep {pieces} as well, marked like the rest.",
		"write": "number, height × width, an arrow up the grain, and where it came from: 2/3 is strip 3 of sheet 2",
		"strip": "strip {n}", "keep": "keep {letter}", "scale": "1 : {n}", "reference": "reference edges", "grain": "grain", "warp": "warp",

		"cloth":       "{bolt}, of use {usable} between the selvedges.",
		"cloth-cut":   "Length cut up {length}.",
		"cloth-best":  "No way of cutting needs less: that is proven.",
		"cloth-near":  "At least {least} is needed: that is proven. This plan is within {percent}.",
		"cloth-need":  "Needed {need}: the length cut up and {squaring} to square the ends{shrunk, if {; allowed for shrinkage: {warp} along, {weft} across}}.",
		"cloth-buy":   "To buy {buy}: it is sold in steps of {step}.",
		"cloth-warp":  "All pieces with the warp as drawn, every panel of the batch alike.",
		"wet-coat":    "{act}: {laid} on {area}",
		"wet-all":     "{product}: take {open, if {at least }}{taken}. {laid} go on the panels, {loss} of what is mixed stays in tray, roller and brush.",
		"wet-from":    "{taken} from {tin}; {left} will be left",
		"wet-buy":     "To buy: {buy}.",
		"wet-enough":  "Nothing to buy.",
		"wet-expired": "{tin} is past its date and is left out",
		"cost":        "{what}, {lot}: {price}", "cost-open": "{what}, {lot}: no price, or no content of the lot, is recorded", "cost-sum": "Together {sum}.", "cost-least": "Together at least {sum}, incomplete: not everything has an amount and a price.", "cost-bare": "Counted is what the panels take: no offcuts, no waste, nothing that stays in tray, roller and brush.", "no-lot": "still to buy",
		"slot": "{from} to {to}  {act}{batch, if {, {batch}}}", "slot-safe": "{slot} (not before {from}, surely from {safe})", "slot-until": "{slot} (at the latest {until})",
		"slot-late": "{slot} (too late: it should be by {until}; make the batches smaller or the day longer)",
		"batch":     "{n, plural, one {panel {first}} other {panels {first} to {last}}}", "ready": "{batch}: the last coat is surely cured {at}.",
		"untimed": "{batch}: nothing is timed from “{act}” on, for how fast the coat below dries is not recorded.",
	},
		AskGrain: map[string]Message{"free": "{n} of {size}, turned as it fits", "height": "{n} of {size}, grain along the height", "width": "{n} of {size}, grain along the width"},
		Steps: map[string]Message{
			"true-edges":  "True two edges that meet, {set} off each: the reference edges. Take the same off the other two, or leave it there. Working sheet {size}.",
			"first-cuts":  "First cuts, fence or rule at {set}: {n, plural, one {1 strip} other {{n} strips}} {size}, each from the edge just sawn; check: {lines} from the reference edge.",
			"keep-rest":   "Keep the rest {letter}, {size}: write size, thickness, grain, lot and date on it at once.",
			"waste-rest":  "The rest, {size}, is waste.",
			"second-cuts": "Second cuts, stop or rule at {set}: {from}.",
			"third-cuts":  "Third cuts, stop or rule at {set}: {from}.",
			"trim-cuts":   "Trim to {set}: {from}.",
			"label":       "Count: {pieces}. Write on the back of each at once: {write}.",
		},
		ClothSteps: map[string]Message{
			"true-edges":  "Square the end: draw one weft thread and cut along it. Leave out {selvedge} of selvedge on each side. Of use: {size}.",
			"first-cuts":  "Across the bolt, at {set}: {n, plural, one {1 length} other {{n} lengths}} {size}; cut at {lines} from the squared end.",
			"second-cuts": "Along the warp thread, at {set}: {from}.",
			"third-cuts":  "Across again, at {set}: {from}.",
			"trim-cuts":   "Trim to {set}: {from}.",
			"label":       "Count: {pieces}. Mark the warp with a pencil stroke on each.",
		},
		Warnings: map[string]Message{
			"sliver":       "{n, plural, one {A sliver} other {{n} slivers}} of {size} beside a cut: the blade wanders and the piece flies. Leave that edge of the sheet untrimmed until then, so that sliver and trim come off in one, or plane it off.",
			"short-piece":  "{n, plural, one {One cut is} other {{n} cuts are}} along less than {unit, select, in {12 in} other {300 mm}} ({size} at the least): cut from the long strip against a stop, on a sled, or by hand; never freehand.",
			"narrow-strip": "{n, plural, one {One strip is} other {{n} strips are}} narrower than {unit, select, in {4 in} other {100 mm}} ({size} at the least): push stick all the way, the off-cut side free.",
			"free-offcut":  "Cross-cuts: clamp a stop block short of the blade; the fence alone would trap the off-cut.",
		},
		Cautions: []Message{
			"The manual of the machine, local rules and training come first; this list replaces none of them.",
			"Measure the sheet and the kerf (cut a scrap in two: kerf = scrap less both parts). If either differs, however little, plan again: that takes a minute.",
			"Draw the arrow of the grain on every sheet before the first cut. One setting, all its cuts, then the next. Never mark a row of pieces edge to edge: each cut takes a kerf.",
			"Lines stand where a piece ends: the blade goes beyond them. Good face down under a hand-held saw, up on a table saw.",
			"Guard and riving knife on and set, the knife within {unit, select, in {5/16 in} other {8 mm}} of the blade. Push stick of {unit, select, in {18 in} other {450 mm}} at least for the last {unit, select, in {12 in} other {300 mm}}; hands never nearer than {unit, select, in {12 in} other {300 mm}} to the front of the blade.¹",
			"Unplug before changing blade or setting; let the blade stop before clearing. No gloves, no loose sleeves; eyes and ears protected.²",
			"Thin board jumps: support both sides close to the cut, clamp, catch nothing that falls; two people for a full sheet.²",
			"Dust: extraction at the tool first, then a fitted mask (protection factor 20, FFP3). Wood dust can cause asthma, hardwood dust cancer of the nose; treat MDF and birch plywood as hardwood. A vacuum of class M, no broom.³",
			"¹ Health and Safety Executive (Great Britain), circular saw benches; how far hands stay away: a site standard that cites it. ² Common practice. ³ Health and Safety Executive, wood dust; FFP3 and MDF as hardwood: common practice.",
		},
		ClothNotes: []Message{
			"If the cloth is washed first, test the shrinkage on a marked square of {unit, select, in {20 in} other {500 mm}}, both ways.",
			"The numbers count the pieces of cloth; they are not those of the panels: any piece of its size will do.",
			"Cut, do not tear: tearing can spoil an inch or two along the edge.",
		},
		Work: map[string]Message{"coat": "{purpose} on {faces}", "cloth": "lay the cloth, {faces}", "trim": "trim the cloth", "sand": "sand, 150 or finer"},
		Spent: map[string]Message{
			"even":       "{act}: planned {planned}, used {used}, as planned",
			"more":       "{act}: planned {planned}, used {used}, {percent} more",
			"less":       "{act}: planned {planned}, used {used}, {percent} less",
			"not-stated": "{act}: planned {planned}, used {used}; not every amount is recorded",
			"part-done":  "{act}: planned {planned}, used so far {used}; {not, plural, one {one panel lacks it} other {{not} panels lack it}}",
			"not-done":   "{act}: planned {planned}, not done yet",
			"beyond":     "{act}: not in the recipe, used {used}",
		},
		WetMissing: map[string]Message{
			"no-amount":    "{act}: no usual amount is recorded",
			"no-thickness": "{act}: the thickness of the board is not recorded",
			"no-density":   "{act}: the amount is a mass and a density is not recorded",
			"no-mix":       "{act}: the material is not recorded",
		},
		CostWhat: map[string]Message{"board": "board", "cloth": "cloth", "wet": "wet"},
		TimeNotes: []Message{
			"Reckoned with 2 minutes for a face, 1 for the edges, 6 to lay a cloth, 2 to trim and 2 to sand, for one panel (from memory); sawing and cutting the cloth come before. Touch before you go on: times are estimates.",
		},
	}
}

// englishRecipes are said of the recipes on the shelf.
var englishRecipes = table{
	{"no-recipes", `there are no recipes yet; "backleaf recipe from" keeps how panels were made`},
	{"recipe-step", "  {act}{material, if {, {material}}}{cloth, if {, {cloth}}}{spread, if {, {spread}}}"},
	{"recipe-replaced", "note: {recipe} was another recipe until now; to keep both, make each anew under a name of its own"},
	{"recipe-without-thinner", "note: a recipe keeps no thinner, and to the {purpose} on {faces} {thinned} was added: its amount is the one without it"},
}
