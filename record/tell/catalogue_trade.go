package tell

// englishTrade are the words for the codes of record/trade, each a phrase that
// can stand in a list: what a layer is, what it takes for a pair to hold, what
// to heed, why, and what can still be done.
var englishTrade = table{
	// strata
	{"acrylic-ground", "acrylic ground"}, {"acrylic-medium", "clear acrylic"}, {"acrylic-paint", "acrylic paint"}, {"acrylic-varnish", "water-borne acrylic varnish"},
	{"vinyl", "PVA"}, {"oil-ground", "oil ground"}, {"oil-paint", "oil paint"}, {"alkyd", "alkyd"}, {"egg-tempera", "egg tempera"}, {"egg-oil", "an egg-oil or other oil emulsion"},
	{"casein", "casein"}, {"glue-size", "glue size"}, {"glue-gesso", "glue gesso"}, {"glue-distemper", "glue distemper"}, {"gum-colour", "watercolour or gouache"}, {"wax", "wax"},
	{"shellac", "shellac"}, {"natural-resin", "natural resin"}, {"acrylic-resin", "acrylic resin"}, {"hydrocarbon-resin", "hydrocarbon resin"}, {"ketone-resin", "ketone resin"},
	{"polyurethane", "polyurethane"}, {"epoxy", "epoxy resin"}, {"bare-wood", "bare wood"}, {"bare-mdf", "bare fibreboard"}, {"bare-hardboard", "bare hardboard"},
	{"bare-composite", "the bare coated face of aluminium composite"}, {"raw-linen", "raw linen"}, {"raw-cotton", "raw cotton"}, {"oil-primed-linen", "oil-primed linen"},
	{"acrylic-primed", "acrylic-primed linen"}, {"other", "something else"},

	// verdicts and needs
	{"sound", "sound"}, {"with-conditions", "with conditions"}, {"advised-against", "usually advised against"},

	// conditions
	{"tooth", "a lower layer that is matt or was dulled"}, {"thin-below", "a thin lower layer"}, {"thin-above", "a thin upper layer"}, {"lean-below", "a lean lower layer"},
	{"waited", "a lower layer that had dried long enough"}, {"keyed", "an abraded surface"}, {"degreased", "a degreased surface"}, {"untempered", "an untempered board"},
	{"sealed-first", "a size or sealer between"}, {"ground-between", "a ground between"}, {"isolated", "a thin isolating coat between"}, {"fat-over-lean", "an upper layer no leaner than the lower"},
	{"rigid", "a rigid board"},

	// the same, where the record leaves them open
	{"open-tooth", "the lower was matt or dulled"}, {"open-thin-below", "the lower is thin"}, {"open-thin-above", "the upper is thin"}, {"open-lean-below", "the lower is lean"},
	{"open-waited", "the lower had dried long enough"}, {"open-keyed", "the lower was abraded before"}, {"open-degreased", "the lower was degreased before"}, {"open-untempered", "the board is untempered"},
	{"open-sealed-first", "a size or sealer lies between"}, {"open-ground-between", "a ground lies between"}, {"open-isolated", "a thin isolating coat lies between"},
	{"open-fat-over-lean", "the upper is as fat as the lower, or fatter"}, {"open-rigid", "the board is rigid"},

	// cautions
	{"absorbent", "an absorbent layer below"}, {"as-isolation", "only as an isolating coat"}, {"behind-glass", "glass in front, with a spacer"}, {"binder-enough", "enough binder in thin washes"},
	{"both-faces", "both faces and the edges"}, {"clean", "a clean, dull surface"}, {"cloth-on-joints", "cloth over joints and plywood"}, {"cured", "a lower layer cured for weeks"},
	{"decoration-only", "for decoration only"}, {"degrease", "a degreased surface if tempered"}, {"dry-overnight", "a night between coats"}, {"dry-through", "a lower layer dry all through"},
	{"dull-not-soft", "no bloom and no soft feel"}, {"even-air", "even humidity for life"}, {"few-coats", "few coats"}, {"firm-through", "a lower layer firm all through"}, {"for-good", "never to be taken off"},
	{"fresh-solution", "fresh solution"}, {"fuse-each-layer", "each layer fused"}, {"glue-in-balance", "glue neither slick nor powdery"}, {"ground-preferred", "a ground is better"},
	{"isolation-coat", "an isolation coat if it is to be cleaned later"}, {"key-lightly", "a light key"}, {"keyed-well", "a good key"}, {"lean-first", "a lean first layer"}, {"left-visible", "only where it is to stay the surface"},
	{"like-proportion", "a like share of oil"}, {"look-for-checks", "checks of the veneer, which may show"}, {"lower-stands-water", "a lower layer that stands water"}, {"neutral-grade", "a neutral grade"},
	{"no-glue-below", "no glue size below"}, {"no-moisture-seal", "it is no seal against damp"}, {"no-overheating", "no overheating"}, {"no-varnish", "no varnish"}, {"not-on-finished-paint", "not on finished paint"},
	{"not-to-metal", "not through to the metal"}, {"oil-rich", "a mix rich in oil"}, {"one-side-breathes", "one side that lets the water out"}, {"prefer-acrylic-or-pva", "acrylic or PVA is better"},
	{"raw-side-only", "on the raw side only"}, {"record-it", "a note in the record"}, {"rigid-support", "a rigid support"}, {"same-resin", "the same resin as below"}, {"sand-before-grounds", "sanding before grounds"},
	{"sand-raised-grain", "raised grain sanded down"}, {"seal-if-it-drinks", "a seal if it drinks"}, {"sealed-below", "a seal below"}, {"size-advised", "a size is advised"}, {"slow-over-fast", "slow over fast"},
	{"spots-only", "only in spots"}, {"spray", "sprayed, or in one stroke"}, {"stain-block", "a stain block"}, {"stain-block-only", "only as a stain block"}, {"strong-below", "glue no weaker below than above"},
	{"test-adhesion", "a cross-cut test"}, {"test-damp", "a test with damp cotton"}, {"test-first", "a test first"}, {"thick-over-thin", "thick over thin"}, {"thin-coats", "thin coats"}, {"wait", "a longer wait"},
	{"wash-first", "a wash with water"}, {"wax-free", "wax-free shellac"}, {"wet-into-damp", "each coat on the last while it is damp"},

	// reasons
	{"absorbs", "the lower layer takes it up"}, {"alkali-harms-oil", "what takes it off harms oil"}, {"amine-film", "a waxy film lies on epoxy"}, {"brittle-above", "the upper layer is brittle"},
	{"brittle-below", "the lower layer is brittle"}, {"closed-film", "a closed film has neither pores nor tooth"}, {"darkens", "it darkens"}, {"dissolves-lower", "it melts or dissolves the lower layer"},
	{"drinks-glue", "the board drinks glue out of the gesso"}, {"evens-absorbency", "it evens the absorbency"}, {"fast-above", "a fast film over a slow one cracks"}, {"faster-below", "the lower layer dries faster"},
	{"gives-off", "the lower layer gives off vapours"}, {"glue-shrinks", "glue lets go of closed and oily surfaces as it shrinks"}, {"glue-swells", "glue below swells and shrinks with the air"},
	{"grain-moves", "grain and fibres move and print through"}, {"heat-softens", "heat softens the lower layer"}, {"leaves-with-varnish", "it goes when the varnish goes"}, {"lower-moves", "the lower layer goes on moving"},
	{"metal-takes-no-water", "metal takes up no water"}, {"never-parted", "the two can never be parted"}, {"oil-attacks-fibre", "oil makes fibres brittle"}, {"oil-sinks", "the oil sinks and leaves weak paint"},
	{"oily", "nothing water-borne or stiff bonds to an oily layer for certain"}, {"oily-skin", "a tempered skin may hold oil or wax"}, {"one-binder-sounder", "one binder throughout is sounder"},
	{"porous", "the lower layer drinks"}, {"raises-grain", "water raises the grain"}, {"rewets", "its water softens the lower layer"}, {"same-binder", "the binder is the same"}, {"same-family", "the binders are of one family"},
	{"seals-dry", "it seals without raising the grain"}, {"seals-fibres", "it keeps oil from the fibres"}, {"slick", "the lower film is slick"}, {"slows-vapour", "it slows vapour"}, {"soaks-in-for-good", "it soaks in, darkens and never comes out"},
	{"soft-below", "a soft film lies under a harder one"}, {"soft-paint-takes-varnish", "soft paint takes varnish up"}, {"soluble-inside", "a soluble layer stays inside"}, {"solvent-bites-wax", "solvent bites wax"},
	{"solvent-swells", "its solvent swells the paint"}, {"stains", "the support stains it"}, {"stiff-above", "the upper layer is the stiffer"}, {"stops-stains", "it stops stains"}, {"strikes-through", "oil strikes through"},
	{"strong-bond", "the bond is strong"}, {"swells-fibres", "fibres and edges swell"}, {"traditional", "it is an old practice"}, {"unproven", "nobody has watched it for long"}, {"water-leaves", "water goes on leaving the ground for weeks"},
	{"wax-repels", "nothing keys into wax or varnish"}, {"weak-between", "a weak layer lies between"}, {"yellows", "it yellows"}, {"yellows-for-good", "it yellows and cannot be taken off"},

	// cures
	{"abrade-and-test", "abrading again and a test"}, {"abrade-size-cloth", "abrading, size and cloth"}, {"absorbent-ground", "an absorbent ground"}, {"alkyd-in-the-upper-oil", "alkyd medium in the upper oil only"},
	{"buff", "buffing instead"}, {"clear-acrylic-between", "clear acrylic between"}, {"cloth-and-gesso", "cloth, then gesso"}, {"cloth-bridge", "cloth as a bridge"}, {"dull-it", "dulling with fine abrasive"},
	{"fatter-above", "more oil in the upper layer"}, {"further-coats", "further coats"}, {"gesso-both-faces", "size and gesso on both faces"}, {"glue-gesso-next-time", "glue gesso on a new panel"},
	{"ground-next-time", "acrylic ground on the next panel"}, {"isolate", "an isolating coat"}, {"knock-test", "a knock test on a frozen scrap"}, {"leave-and-record", "leaving it, with a note in the record"}, {"leave-bare", "leaving it bare"},
	{"matt-medium", "matt medium"}, {"mount", "a rigid mount"}, {"new-board", "a new board"}, {"no-wet-cleaning", "no wet cleaning"}, {"oil-instead", "alkyd or oil instead"}, {"oil-out", "oiling out, sparingly"},
	{"paint-on-the-gesso", "painting on the gesso itself"}, {"paper-or-cloth-between", "paper or raw cloth between"}, {"primer-between", "a primer between"}, {"re-fuse", "fusing again"}, {"re-ground", "scraping and a new ground"},
	{"removable-varnish", "a removable varnish instead"}, {"remove-varnish", "taking the varnish off first (a conservator, if it is old)"}, {"remove-while-fresh", "taking it off while fresh"}, {"sand-and-test", "sanding and a test"},
	{"sand-lightly", "a light sanding"}, {"sand-when-dry", "sanding when dry"}, {"scrape-wax", "scraping the wax off"}, {"seal-edges", "sealer on the edges"}, {"seal-first", "a seal first"}, {"seal-thinly", "a thin seal"},
	{"second-thin-coat", "a second thin coat"}, {"shellac-bridge", "a shellac primer as a bridge"}, {"size-next-time", "size the next time"}, {"start-over", "starting over"}, {"tape-test", "a tape test after four weeks"},
	{"temporary-varnish", "a thin temporary coat of removable varnish"}, {"warm-damp-cloth", "a warm damp cloth to take it off"}, {"wash-and-sand", "washing and a light sanding"}, {"wash-sand-test", "washing, sanding, a test"},
	{"wipe-at-once", "wiping it off at once"}, {"wipe-off-surplus", "wiping off the surplus"},

	// hazards and other risks
	{"lead", "lead"}, {"cadmium", "cadmium"}, {"mercury", "mercury"}, {"arsenic", "arsenic"}, {"chromium-vi", "chromate (chromium VI)"}, {"barium", "barium that acid dissolves"}, {"antimony", "antimony"}, {"cobalt", "cobalt"},
	{"nickel", "nickel"}, {"manganese", "manganese"}, {"stated", "recorded as harmful when sanded or cleaned"}, {"oily-rags", "oily rags, which catch fire by themselves"}, {"solvents", "solvents"}, {"wood-dust", "wood dust"}, {"formaldehyde", "formaldehyde"},
}

// englishCare is advice to whoever keeps a panel, by code.
var englishCare = table{
	{"care-room-of-comfort", "Where people are comfortable, at about {humidity:range} relative humidity, without quick swings."},
	{"care-never-beyond", "Never long below {dry} or above {damp}: boards may split, or mould grow."},
	{"care-climate-of-museums", "In a museum: {cold} to {warm} and {dry} to {damp} relative humidity, within a day no more than {temperature-change} °C and {humidity-change} % of change."},
	{"care-climate-of-loans", "On loan: {cold} to {warm} and {dry} to {damp} relative humidity, within a day no more than {humidity-change} % of change."},
	{"care-light", "On display at most {lux} lux, ultraviolet at most {uv} µW a lumen."},
	{"care-light-of-dyes", "It holds colours that fade: on display at most {lux} lux, ultraviolet at most {uv} µW a lumen."},
	{"care-light-less-if-dyes", "On display at most {lux} lux, ultraviolet at most {uv} µW a lumen; 50 lux if it holds lakes or dyes, which the record does not tell."},
	{"care-no-sun", "Keep it out of the sun at any hour of the year, and away from lamps that warm it."},
	{"care-less-light-not-glass", "Dim light protects more than glass against ultraviolet."},
	{"care-inner-wall", "An inner wall, with air behind the panel; not above a fire, heater or vent, nor in bath, kitchen, cellar or attic."},
	{"care-no-water", "No water, no cleaner, no solvent: leave anything but dust to a conservator."},
	{"care-damage", "Photograph it, keep every flake, leave it flat, press and glue nothing; ask a conservator."},
	{"care-frame-lets-move", "Held by springs or plates that let it move {gap}, never glued or nailed in; the backing board fixed to the frame, not to the panel."},
	{"care-dust-with-brush", "Dust with a soft, dry, wide brush, if nothing is loose."},
	{"care-oil-dries-on", "Oil dries for months and may yellow in the dark; the daylight of a room clears it."},
	{"care-oil-cold", "Oil and alkyd are brittle in frost: not in an unheated car."},
	{"care-cold-two-layers", "Oil over acrylic is brittle in the cold: no knocks, no bending."},
	{"care-acrylic-cold", "Acrylic layers are brittle in the cold: do not ship, flex or knock the panel below {cold}."},
	{"care-acrylic-heat", "Acrylic paint is soft from about {warm} and tacky well before: no car boot, no sunny window."},
	{"care-acrylic-holds-dust", "Acrylic without varnish is soft: it holds dust, marks under a nail and sticks to wrapping."},
	{"care-glass-against-dust", "Glass or acrylic sheet with a spacer keeps the dust off; silicone paper for transport."},
	{"care-varnish-renewable", "The varnish lies on acrylic paint: it can be renewed, with solvents that spare the paint."},
	{"care-tempera-scratches", "Egg tempera scratches easily in its first year."},
	{"care-tempera-bloom", "A white bloom on egg tempera may come from its fats: do not wipe it, ask."},
	{"care-gesso-even-air", "Gesso breaks when the board moves: even humidity."},
	{"care-glass-with-spacer", "Without varnish: glass with a spacer."},
	{"care-wax-heat", "Wax: from {cold} to {warm}, never in a parked car or in the sun."},
	{"care-wax-bloom", "Wax blooms in its first year: a soft, lint-free cloth, lightly, on the cool surface."},
	{"care-wax-edges", "A deep frame guards the edges of the wax."},
	{"care-touch-marks", "The paint is matt and bare: every touch leaves a mark."},
	{"care-never-varnish", "Do not varnish it: varnish soaks in, darkens it and never comes out."},
	{"care-mould", "Above {damp} relative humidity mould grows on it."},
	{"care-air-only", "Nothing but air against dust, not even a brush if it powders."},
	{"care-glass-always", "Always behind glass, {gap} from the paint."},
	{"care-varnish-is-no-shield", "A varnish is no shield for colours that fade."},
	{"care-curve-is-normal", "A slight curve of plywood comes and goes with the seasons."},
	{"care-look-for-checks", "Look once a year for fine parallel cracks in the veneer."},
	{"care-never-wet", "Never wet: the edges of fibreboard swell and stay swollen."},
	{"care-gives-off-acids", "Fibreboard gives off acids and formaldehyde: line the rebate, leave air, no tight case with lead white or metals."},
	{"care-carry-flat", "Thin hardboard flexes: carry it flat, with both hands."},
	{"care-must-move", "Solid wood must be free to move by millimetres across the grain: never glued, screwed or wedged."},
	{"care-dents", "Aluminium composite dents, shows scratches, and bends for good if forced."},
	{"care-sun-bows-it", "Sun on one face bows aluminium composite for the time."},
	{"care-never-press-blisters", "Do not press or iron a blister or a lifting edge of the cloth."},
	{"care-cloth-from-damp", "Damp softens the glue that holds the cloth."},
	{"care-cloth-from-heat", "The film that holds the cloth softens from about {warm}."},
}

// englishCareInShort is the advice that a label has, with the codes of the above.
var englishCareInShort = table{
	{"label-care-room-of-comfort", "{humidity:range} relative humidity, no quick swings"},
	{"label-care-no-sun", "no sun, no heat"},
	{"label-care-no-water", "no water"},
	{"label-care-oil-cold", "no frost"},
	{"label-care-acrylic-cold", "brittle below {cold}: do not flex"},
	{"label-care-tempera-scratches", "scratches easily"},
	{"label-care-wax-heat", "wax: {cold} to {warm}, never warmer"},
	{"label-care-touch-marks", "do not touch the paint"},
	{"label-care-never-varnish", "do not varnish it"},
	{"label-care-air-only", "do not brush it"},
	{"label-care-never-wet", "never wet: the edges swell"},
	{"label-care-carry-flat", "carry it flat"},
	{"label-care-must-move", "leave it free to move in the frame"},
	{"label-care-dents", "dents easily"},
	{"label-care-cloth-from-damp", "damp loosens the cloth"},
	{"label-care-cloth-from-heat", "from {warm} the cloth may loosen"},
}
