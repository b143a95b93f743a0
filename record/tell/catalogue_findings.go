package tell

// englishFindings is what rules find, by code. A text for something not
// recorded is an indirect question: "how thick the board is".
var englishFindings = table{
	{"nothing-to-judge", "nothing to judge"},
	{"no-coat", "no coat on it, as far as recorded"}, {"no-cloth", "no cloth on it, as far as recorded"}, {"no-layer", "no coat, paint or varnish on it, as far as recorded"}, {"nothing-on-faces", "no coat or cloth on front or back, as far as recorded"}, {"no-film-on-faces", "no coat on front or back, as far as recorded"}, {"no-sealing-coat", "no sealing coat on any face, as far as recorded"}, {"nothing-wet", "no coat, paint or varnish on it, as far as recorded"}, {"no-ground", "no ground under the work, as far as recorded"},
	{"no-varnish", "no varnish on it, as far as recorded"}, {"no-work", "no face carries cloth or paint yet"}, {"board-kind-open", "what kind of board it is"},

	// the board
	{"board-takes-no-moisture", "the board takes up no moisture"}, {"board-not-of-wood", "the board is not of wood or fibre"},
	{"settled", "the board stood in the workroom for {time}"}, {"settled-not", "the board stood in the workroom for {time} only"},
	{"settled-open", "how long the board stood in the workroom"},
	{"thick-enough", "{thickness} thick for {size}"}, {"thickness-of-small", "no estimate speaks of panels as small as {size}"},
	{"thickness-open", "how large and how thick the board is"}, {"bracing-open", "whether the panel is braced, at {thickness} for {size}"},
	{"thin", "{thickness} for {size}, unbraced"}, {"thin-plywood", "{thickness} plywood for {size}, unbraced: thin by one estimate, within another’s limit of 16 × 20 in"},
	{"braced", "the panel is braced"}, {"not-braced", "the panel is not braced"},
	{"bracing-moves", "the bracing lets the board move"}, {"bracing-moves-not", "the bracing is rigid across the grain"},
	{"bracing-moves-open", "how the bracing is fixed and which way it runs"},
	{"formaldehyde-elsewhere", "no limit is set for this board"}, {"formaldehyde-open", "the formaldehyde class printed on the sheet"},
	{"formaldehyde-class-open", "what the class “{class}” stands for"},
	{"formaldehyde-low", "{class}"}, {"formaldehyde-high", "{class}"},
	{"formaldehyde-low-limit", "{class}: at most {limit}"}, {"formaldehyde-high-limit", "{class}: at most {limit}"},
	{"formaldehyde-new-limit", "{class}: at most {limit}; in the EU {lower} from {from} (from memory), which the class alone does not show"},
	{"formaldehyde-cut-open", "whether the board was cut before {from}, when a lower limit came into force in the EU (from memory)"},
	{"tempered", "degreased and keyed"}, {"tempered-open", "whether the board was degreased and keyed"}, {"tempered-elsewhere", "the board is not tempered hardboard"},
	{"tempered-not", "degreased: {degreased}; keyed: {keyed}"},

	// sealing
	{"sealing-to-come", "no cloth, ground or paint is laid yet"}, {"purpose-open", "what the coats were for"},
	{"sealed", "{face} sealed"}, {"sealed-not", "{face} not sealed"}, {"sealed-open", "whether the {face} {face, number, sing {is} other {are}} sealed"},
	{"sealed-by-open", "what the first coats on the {face} were for"},
	{"left-bare", "{face} left bare"}, {"sealed-by-ground-only", "{face} coated with ground only"},
	{"edges-extra", "the edges were given extra"}, {"edges-more-coats", "{edges, plural, one {one coat} other {{edges} coats}} on the edges, {faces} on the faces"},
	{"edges-extra-open", "whether the edges were given more than the faces"}, {"edges-bare", "no coat reached the edges"},
	{"edges-extra-not", "the edges were given no more than the faces"},

	{"glue-alone-not", "{face}: not sealed by glue alone"}, {"glue-alone", "{face}: glue is all that seals {face, number, sing {it} other {them}}"}, {"glue-alone-open", "what the coats on the {face} are made of"},

	// cloth
	{"wet-through", "the cloth was wetted through"}, {"wet-through-not", "the cloth was not wetted through"}, {"wet-through-open", "whether the cloth was wetted through"},
	{"water-trapped", "the cloth came sized or primed and the board takes no water: neither lets the water of the glue out"}, {"wet-through-elsewhere", "the cloth came sized or primed"},
	{"edges-pressed", "the cloth was pressed down at the edges"}, {"edges-pressed-not", "the cloth was not pressed down at the edges"},
	{"edges-pressed-open", "whether the cloth was pressed down at the edges"},
	{"cloth-weighted", "the panel lay under weights for a day"}, {"cloth-weighted-not", "the panel lay under weights for less than a day"},
	{"cloth-weighted-open", "how long the panel lay under weights"},
	{"trimmed", "trimmed {time} after laying"}, {"trimmed-early", "trimmed {time} after laying, while the cloth could still shift"},
	{"trimmed-late", "trimmed {time} after laying, when the film was hard"}, {"trimmed-open", "whether the cloth was trimmed"},
	{"trimmed-when-open", "when the cloth was laid and trimmed (the dates do not tell)"}, {"trimming-to-come", "the cloth is still to be trimmed"},

	// air, tins, sanding
	{"no-waterborne-coat", "no water-borne coat on it, as far as recorded"}, {"waterborne-open", "whether the {layer} is water-borne"},
	{"temperature-open", "at what temperature the {layer} was laid"},
	{"film-limit-open", "below what temperature the film of the {layer} does not form (laid at {temperature}; commonly 4 to 10 °C)"},
	{"film-forms", "the {layer} was laid at {temperature}, its film forms from {limit}"}, {"film-forms-not", "the {layer} was laid at {temperature}; its film forms from {limit}"},
	{"lot-open", "from which lot the {layer} came"}, {"lot-expires-open", "until when lot {lot} keeps"}, {"lot-used-open", "when lot {lot} was used (the dates do not tell)"},
	{"lot-in-date", "lot {lot} was in date"}, {"lot-expired", "lot {lot} was used after {expires}"},
	{"nothing-sanded", "no sanding is on record"}, {"nothing-sanded-over", "no sanding of a coat is on record"}, {"sanded-cured", "the {layer} was sanded after it had cured"},
	{"sanded-early", "the {layer} was sanded {time} before it could be cured"}, {"sanded-when-open", "when the {layer} was sanded (the dates do not tell)"},
	{"sanded-in-window", "whether the {layer} was hard when it was sanded (inside the window in which it cures)"},
	{"material-open", "what the {layer} was made of"}, {"laid-when-open", "on what day the {layer} was laid"},
	{"times-of-material-open", "how long {material} takes to dry and to cure"}, {"times-unlikely", "how the {layer} dried (the stated times cannot be)"},
	{"no-cloth-sanded", "no sanding of cloth is on record"}, {"grit-fine", "sanded with {scale} {grit}"}, {"grit-fine-not", "sanded with {scale} {grit}"}, {"grit-fine-open", "with what the cloth was sanded"},
	{"sanded-through-not", "not sanded through"}, {"sanded-through-mended", "sanded through and sealed again"}, {"sanded-through", "sanded through to fibre or board, and not sealed since"},
	{"sanded-through-open", "whether it was sanded through to fibre or board"},

	// ground and paint
	{"veneer-covered", "cloth lies under the ground"}, {"veneer-covered-not", "the ground lies on bare veneer"}, {"veneer-covered-open", "whether cloth lies between plywood and ground"},
	{"veneer-meant-bare", "the ground lies on bare veneer, and no cloth is intended"}, {"veneer-covered-elsewhere", "the board is not plywood"},
	{"no-acrylic-paint", "no acrylic paint on it, as far as recorded"}, {"stain-blocked", "{coats} coats of stain block under the {layer}"},
	{"stain-blocked-not", "{coats, plural, =0 {no stain block} one {one coat of stain block} other {{coats} coats of stain block}} under the {layer}"},
	{"stain-blocked-open", "whether two coats of stain block lie under the {layer}"}, {"stain-blocked-elsewhere", "nothing below can stain"},
	{"no-oil-layer", "no oil layer on it, as far as recorded"}, {"no-zinc", "no zinc white in the {layer}"}, {"no-zinc-not", "the {layer} is oil with zinc white"},
	{"no-zinc-open", "all pigments of the {layer}, by Colour Index name"},

	{"harmless", "nothing harmful in the {layer}"}, {"harmless-not", "the {layer} is harmful when sanded or cleaned"}, {"harmless-open", "whether the {layer} is harmful when dry"},
	{"zinc-form-open", "in what form the {layer} holds zinc"}, {"hazard-open", "what {pigment} in the {layer} is, by Colour Index name: it may hold {hazard}"},
	{"holds-hazard", "the {layer} holds {hazard} ({pigment})"},

	// what lies on what
	{"nothing-to-hold", "nothing is laid of which the tables speak"}, {"order-open", "in what order the layers were laid (the dates do not tell)"},
	{"pair-sound", "{layer} over {below}"}, {"made-of-open", "what the {layer} is made of"}, {"cloth-sized-open", "whether the cloth came sized or primed"},
	{"pair-against", "{layer} over {below} is usually advised against: {reasons}"}, {"pair-unmet", "{layer} over {below} asks for {lacks}"},
	{"pair-open", "{layer} over {below}: whether {open}"},
	{"pair-early", "{layer} over {below} after {time}; {wait} is the least"}, {"pair-soon", "{layer} over {below} after {time}; {wait} is usual"}, {"pair-wait-open", "how long the {below} dried before the {layer} ({wait} is usual; the dates do not tell)"},
	{"pair-wait-open-until", "how long the {below} dried before the {layer} (the dates do not tell; safe from {safe})"},
	{"pair-thick-open", "how thick the {below} is under the {layer} (thick layers take {wait})"},

	// balance
	{"face-open", "whether anything was laid on the {face}"}, {"measured-when-open", "whether anything was laid after the bow was measured (the dates do not tell)"},
	{"pull-holds", "coats and cloth bow the panel by at most {most} {over} of {span}, {direction}"},
	{"pull-strong", "coats and cloth bow the panel by {bow:range} {over} of {span}, {direction}{toward, select, front {, hollow at the front} back {, hollow at the back} other {}}"},
	{"pull-open", "whether the panel is flat: coats and cloth could bow it {bow:range} {over} of {span}, {direction}{toward, select, front {, hollow at the front} back {, hollow at the back} other {}}. Lay a straightedge {over}"},
	{"pull-amounts-open", "how thick each coat is ({why}){would, select, holds {; with usual coats it would hold} falls-short {; with usual coats it would fall short} open {; with usual coats a straightedge would have to tell} other {}}"},
	{"pull-binders-open", "what each coat is made of{would, select, holds {; whatever it is, with usual coats it would hold} other {}}"},
	{"cannot-no-size", "how large the panel is"}, {"cannot-no-thickness", "how thick the board is"}, {"cannot-no-board", "what kind of board it is"},
	{"cannot-no-figure", "no figures are known for such a board"}, {"cannot-no-binder", "what each coat is made of"},
	{"cannot-out-of-range", "how large and how thick board and coats are (the figures are none that a panel has)"}, {"cannot-coats-too-thick", "how board and coats of a fifth of its thickness act together (beyond what can be reckoned)"},
	{"moisture-even", "both faces let moisture through alike"}, {"moisture-slight", "the {leads} takes up moisture sooner: a change of 10 % RH bows the panel by at most {most} {over} of {span}, most after {peak:range}; it comes back"},
	{"moisture-uneven", "the {leads} takes up moisture sooner: a change of 10 % RH bows the panel by {bow:range} {over} of {span}, most after {peak:range}; it comes back"},
	{"moisture-amounts-open", "how thick each layer is, for its resistance to vapour ({why}){would, select, holds {; with usual layers it would hold} falls-short {; with usual layers it would fall short} other {}}"},
	{"no-bow-since", "no bow was measured since the last layer"}, {"bow-compared-open", "of what the measured bow comes: amounts, binders or the line it was measured along are not recorded"},
	{"bow-slight", "{bow}: too slight to ask"}, {"bow-explained", "{bow} {over}: within what pull and moisture can do{cut, if {; the board had {cut} as cut}}"},
	{"bow-beyond", "{bow} {over}: pull explains at most {pull}, a change of 10 % RH {moisture} more{cut, if {, the board as cut {cut}}}. The rest is the board as bought, water on one side, or another line{rest, if {: moisture alone would take {rest:range} RH between the faces}}"},
	{"barrier", "a wall 10 % RH damper would bow the panel by {bow} {over} of {span}"}, {"barrier-not", "meant for {meant} RH: a wall 10 % RH damper would bow the panel by {bow} {over} of {span}, as long as it is damper"},

	// varnish and the finished panel
	{"varnish-removable", "the varnish is named and can be removed"}, {"varnish-removable-not", "the varnish cannot be removed"}, {"varnish-removable-open", "whether the varnish can be removed"},
	{"varnish-name-open", "what the varnish is"},
	{"not-inspected", "whether the {what} {what, select, edges {are} other {is}} sound (nobody looked)"}, {"sound", "{what} sound"}, {"sound-not", "{what} {found}"}, {"sound-open", "how the {what} {what, select, edges {were} other {was}} at the last look"},
	{"measured-flat", "flat when looked at"}, {"measured-bow", "a bow of {bow} over {span}{toward, select, none {} unknown {} other {, hollow at the {toward}}}"},
	{"bow-open", "how far the panel bows"}, {"bow-span-open", "over what span the bow of {bow} was measured"},
	{"meant-for-open", "the humidity of the room the panel is meant for"}, {"meant-for-dry-air", "the panel is meant for {meant} RH"},
	{"humidity-open", "the humidity at the {layer}"}, {"climate-near", "laid at {humidity} RH, meant for {meant}"},
	{"climate-near-open", "whether the air at the {layer} was near that of the room"}, {"climate-near-not", "the {layer} was laid at {humidity} RH, the panel is meant for {meant}"},
	{"climate-near-not-grows", "the {layer} was laid at {humidity} RH, the panel is meant for {meant}: the longer side will grow by {change:range}"},
	{"climate-near-not-shrinks", "the {layer} was laid at {humidity} RH, the panel is meant for {meant}: the longer side will shrink by {change:range}"},
	{"no-gap", "nothing that a reader would miss"},

	// amounts and costs
	{"cloth-is-no-film", "a cloth is no film"}, {"layer-reduced", "some of it was taken off"}, {"solids-open", "the solids of {material} are not recorded"}, {"film-out-of-range", "the amount cannot be"},
	{"mix-open", "the material is not recorded"}, {"thinned-open", "how far it was thinned is recorded as unknown"}, {"size-open", "the size of the panel is not recorded"},
	{"density-open", "the density of {material} is not recorded"}, {"amount-open", "no amount is recorded"},
	{"amount-shared-with-absent", "the amount was for several panels, of which {panel} is not at hand"},
	{"amount-shared-without-size", "the amount is shared out by area, and the size of {panel} is not recorded"},
	{"cost-lot-open", "lot not recorded"}, {"cost-price-open", "price not recorded"}, {"cost-quantity-open", "quantity of the lot not recorded"},
	{"cost-quantity-other", "the lot holds {quantity} of {material}, no measure of {layer}"},
	{"cost-more-than-lot", "more was used than the lot held"}, {"cost-sheet-open", "size of the sheet not recorded"}, {"cost-sheets-open", "number of sheets in the lot not recorded"},
	{"cost-bolt-open", "width of the bolt not recorded"}, {"cost-density-open", "density not recorded"},
}
