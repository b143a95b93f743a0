package tell

// PlanWords are said of a plan and printed on the sheets one saws from. The
// keys of the maps are the codes of package plan.
type PlanWords struct {
	Kind    Message // of paper
	Running Message // {title}
	Page    Message // {n} {all}
	Units   Message // in which lengths stand

	Titles PlanTitles

	Ask      Message // {n} {size}
	AskGrain map[string]Message
	Sheets   Message // {n} {sheet}
	From     Message // {sheet} {size}
	Grained  Message // {side}: how the grain of the sheets is taken to run
	Least    Message
	NotLeast Message
	Used     Message // {used} {percent}: the yield
	UsedBest Message // {used}: proven
	UsedNear Message // {used} {least} {percent}
	Third    Message // a third turn saved a sheet
	Earned   Message // {area}
	Effort   Message // {settings} {cuts} {kerf}
	Knife    Message // {settings} {cuts}

	Board      Message // {name} {thickness}
	Sheet      Message // {n} {all} {sheet}
	Steps      map[string]Message
	ClothSteps map[string]Message // where they differ
	Untrimmed  Message            // {size}
	FromStrip  Message            // {n} {strip}
	FromBlock  Message            // {n} {strip} {block}
	OneSize    Message            // {n} {size}
	Letter     Message            // {letter} {step}
	Kept       Message            // {letter} {size}
	KeepToo    Message            // {pieces}
	Write      Message            // on the backs
	Warnings   map[string]Message // {n} {size}
	Cautions   []Message

	Strip, Keep, Waste, Scale, Reference, Grain, Warp Message // in the drawing

	Cloth      Message // {bolt} {usable}
	ClothCut   Message // {length}
	ClothBest  Message
	ClothNear  Message // {least} {percent}
	ClothBuy   Message // {buy} {squaring} {warp} {weft}
	ClothWarp  Message
	ClothNotes []Message

	Work       map[string]Message // {purpose} {faces}
	WetCoat    Message            // {act} {laid} {area}
	WetAll     Message            // {product} {taken} {laid} {loss}
	WetFrom    Message            // {tin} {taken} {left}
	WetBuy     Message            // {buy}
	WetEnough  Message
	WetExpired Message            // {tin}
	WetMissing map[string]Message // {act}: by what is missing
	Spent      map[string]Message // {act} {planned} {used} {percent} {not}: a recipe beside what was used
	Cost       Message            // {what} {lot} {price}
	CostOpen   Message            // {what} {lot}
	CostSum    Message            // {sum}
	CostLeast  Message            // {sum}
	CostWhat   map[string]Message
	NoLot      Message
	Slot       Message // {from} {to} {act} {batch}
	SlotSafe   Message // {slot} {from} {safe}
	SlotUntil  Message // {slot} {until}
	SlotLate   Message // {slot} {until}
	Batch      Message // {n} {first} {last}
	Ready      Message // {batch} {at}
	Untimed    Message // {batch} {act}
	TimeNotes  []Message
}

// PlanTitles head the parts of a plan.
type PlanTitles struct{ Plan, Cloth, Steps, Warnings, Cautions, Wet, Cost, Timetable Message }

var englishPlan = PlanWords{
	Kind: "Cutting plan", Running: "Cutting plan: {title}", Page: "Page {n} of {all}",
	Units:  "Panels are height × width; lengths in {unit}",
	Titles: PlanTitles{Plan: "What is cut from what", Cloth: "Cloth", Steps: "How to saw it", Warnings: "Mind", Cautions: "Before the first cut", Wet: "Wet materials", Cost: "Cost", Timetable: "When"},

	Ask: "{n} of {size}", AskGrain: map[string]Message{"free": "{n} of {size}, turned as it fits", "height": "{n} of {size}, grain along the height", "width": "{n} of {size}, grain along the width"},
	Sheets: "{n, plural, one {1 sheet} other {{n} sheets}} {sheet}", From: "{sheet}, {size}",
	Grained:  "The grain of the board is taken to run along the side of {side}. If it does not, plan again.",
	Least:    "No cheaper set of sheets will do: that is proven.",
	NotLeast: "No proof was found that fewer sheets will not do.",
	Used:     "Board used up {used}; {percent} of it becomes panels.",
	UsedBest: "No edge-to-edge plan with these sheets, however many turns, uses less than {used}, if its rest is one strip of full breadth.",
	UsedNear: "No edge-to-edge plan with these sheets, however many turns, uses less than {least}, if its rest is one strip of full breadth: this one is within {percent}.",
	Third:    "Cut with three turns: with two no plan was found on these sheets.",
	Earned:   "Cut with three turns: the third saves {area} of board.",
	Effort:   "{settings, plural, one {1 setting} other {{settings} settings}} of fence or stop, {cuts, plural, one {1 cut} other {{cuts} cuts}}, kerf {kerf}.",
	Knife:    "{settings, plural, one {1 setting} other {{settings} settings}} of the rule, {cuts, plural, one {1 cut} other {{cuts} cuts}} with a knife.",

	Board: "{name}, {thickness}",
	Sheet: "Sheet {n} of {all}: {sheet}",
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
	Untrimmed: "No trim: see that two edges that meet are straight and square, and measure from those. Working sheet {size}.",
	FromStrip: "{n} from strip {strip}", FromBlock: "{n} from strip {strip}, part {block}", OneSize: "{n} × {size}", Letter: "{letter}  {step}",
	Kept: "{letter} ({size})", KeepToo: "Keep {pieces} as well, marked like the rest.",
	Write: "number, height × width, an arrow up the grain, and where it came from: 2/3 is strip 3 of sheet 2",
	Warnings: map[string]Message{
		"sliver":       "{n, plural, one {A sliver} other {{n} slivers}} of {size} beside a cut: the blade wanders and the piece flies. Leave that edge of the sheet untrimmed until then, so that sliver and trim come off in one, or plane it off.",
		"short-piece":  "{n, plural, one {One cut is} other {{n} cuts are}} along less than 300 mm or 12 in ({size} at the least): cut from the long strip against a stop, on a sled, or by hand; never freehand.",
		"narrow-strip": "{n, plural, one {One strip is} other {{n} strips are}} narrower than 100 mm or 4 in ({size} at the least): push stick all the way, the off-cut side free.",
		"free-offcut":  "Cross-cuts: clamp a stop block short of the blade; the fence alone would trap the off-cut.",
	},
	Cautions: []Message{
		"The manual of the machine, local rules and training come first; this list replaces none of them.",
		"Measure the sheet and the kerf (cut a scrap in two: kerf = scrap less both parts). If either differs, however little, plan again: that takes a minute.",
		"Draw the arrow of the grain on every sheet before the first cut. One setting, all its cuts, then the next. Never mark a row of pieces edge to edge: each cut takes a kerf.",
		"Lines stand where a piece ends: the blade goes beyond them. Good face down under a hand-held saw, up on a table saw.",
		"Guard and riving knife on and set, the knife within 8 mm of the blade. Push stick of 450 mm at least for the last 300 mm; hands never nearer than 300 mm to the front of the blade.¹",
		"Unplug before changing blade or setting; let the blade stop before clearing. No gloves, no loose sleeves; eyes and ears protected.²",
		"Thin board jumps: support both sides close to the cut, clamp, catch nothing that falls; two people for a full sheet.²",
		"Dust: extraction at the tool first, then a fitted mask (protection factor 20, FFP3). Wood dust can cause asthma, hardwood dust cancer of the nose; treat MDF and birch plywood as hardwood. A vacuum of class M, no broom.³",
		"¹ Health and Safety Executive (Great Britain), circular saw benches; the 300 mm for hands from a site standard that cites it. ² Common practice. ³ Health and Safety Executive, wood dust; FFP3 and MDF as hardwood: common practice.",
	},
	Strip: "strip {n}", Keep: "keep {letter}", Waste: "waste", Scale: "1 : {n}", Reference: "reference edges", Grain: "grain", Warp: "warp",

	Cloth:     "{bolt}, of use {usable} between the selvedges.",
	ClothCut:  "Length cut up {length}.",
	ClothBest: "No way of cutting, however many turns, needs less.",
	ClothNear: "No way of cutting, however many turns, needs less than {least}: this one is within {percent}.",
	ClothBuy:  "To buy {buy}: the length cut up and {squaring} to square the ends; allowed for shrinkage: {warp} along, {weft} across.",
	ClothWarp: "All pieces with the warp as drawn, every panel of the batch alike.",
	ClothNotes: []Message{
		"If the cloth is washed first, test the shrinkage on a marked square of 500 mm, both ways.",
		"The numbers count the pieces of cloth; they are not those of the panels: any piece of its size will do.",
		"Cut, do not tear: tearing can spoil an inch or two along the edge.",
	},

	Work:    map[string]Message{"coat": "{purpose} on {faces}", "cloth": "lay the cloth, {faces}", "trim": "trim the cloth", "sand": "sand, 150 or finer"},
	WetCoat: "{act}: {laid} on {area}",
	WetAll:  "{product}: take {taken}. {laid} go on the panels, {loss} of what is mixed stays in tray, roller and brush.",
	WetFrom: "{taken} from {tin}; {left} will be left",
	WetBuy:  "To buy: {buy}.",
	Spent: map[string]Message{
		"even":       "{act}: planned {planned}, used {used}, as planned",
		"more":       "{act}: planned {planned}, used {used}, {percent} more",
		"less":       "{act}: planned {planned}, used {used}, {percent} less",
		"not-stated": "{act}: planned {planned}, used {used}; not every amount is recorded",
		"part-done":  "{act}: planned {planned}, used so far {used}; {not, plural, one {one panel lacks it} other {{not} panels lack it}}",
		"not-done":   "{act}: planned {planned}, not done yet",
		"beyond":     "{act}: not in the recipe, used {used}",
	},
	WetEnough:  "Nothing to buy.",
	WetExpired: "{tin} is past its date and is left out",
	WetMissing: map[string]Message{
		"no-amount":    "{act}: no usual amount is recorded",
		"no-thickness": "{act}: the thickness of the board is not recorded",
		"no-density":   "{act}: the amount is a mass and a density is not recorded",
		"no-mix":       "{act}: the material is not recorded",
	},
	Cost: "{what}, {lot}: {price}", CostOpen: "{what}, {lot}: no price, or no content of the lot, is recorded", CostSum: "Together {sum}.", CostLeast: "Together at least {sum}: not everything has a price.",
	CostWhat: map[string]Message{"board": "board", "cloth": "cloth", "wet": "wet"}, NoLot: "still to buy",
	Slot: "{from} to {to}: {act}, {batch}", SlotSafe: "{slot} (not before {from}, surely from {safe})", SlotUntil: "{slot} (at the latest {until})",
	SlotLate: "{slot} (too late: it should be by {until}; make the batches smaller or the day longer)",
	Batch:    "{n, plural, one {panel {first}} other {panels {first} to {last}}}", Ready: "{batch}: the last coat is surely cured {at}.",
	Untimed: "{batch}: nothing is timed from “{act}” on, for how fast the coat below dries is not recorded.",
	TimeNotes: []Message{
		"Reckoned with 2 minutes for a face, 1 for the edges, 6 to lay a cloth, 2 to trim and 2 to sand, for one panel (from memory); sawing and cutting the cloth come before. Touch before you go on: times are estimates.",
	},
}

// englishRecipes are said of the recipes on the shelf.
var englishRecipes = map[string]Message{
	"no-recipes":             `there are no recipes yet; "backleaf recipe from" keeps how panels were made`,
	"recipe-step":            "  {act}{material, if {, {material}}}{cloth, if {, {cloth}}}{spread, if {, {spread}}}",
	"recipe-without-thinner": "note: a recipe keeps no thinner, and here {thinned} was added: the amounts are those with it",
}
