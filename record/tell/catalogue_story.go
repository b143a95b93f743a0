package tell

import "backleaf/record"

// coating is said of everything that is laid on with a brush.
const coating = "{mix, if {, {mix}}}{thinned, if {, thinned {thinned}}}{thinned_with, if {, with {thinned_with}}}" +
	"{wet_total, select, none {} unknown {, amount not known} other {, {wet_total}{panels, plural, one {} other { for {panels} panels}}}}" +
	"{wet_each, select, none {} unknown {, amount not known} other {, {wet_each} each}}" +
	"{wet_film, if {, wet film {wet_film}}}{dry_film, if {, dry film {dry_film}}}{tool, if {, {tool}}}"

// englishEvents say what matters most of each kind of entry; the places are
// its fields, and {panels} is how many panels it names.
func englishEvents() map[record.Kind]Message {
	return map[record.Kind]Message{
		"studio":   "the studio: {maker}, mark {mark}{place, if {, {place}}}",
		"maker":    "maker {key}: {name}{place, if {, {place}}}",
		"material": "material {key}: {name}",
		"lot":      "lot {key} of {material}{producer_lot, if {, no. {producer_lot}}}{quantity, if {, {quantity}}}",
		"recipe":   "recipe {key}{name, if {: {name}}}",

		"cut": "cut, batch {batch}, {size}{board_lot, select, none {{board, select, none {} unknown {, board not known} other {, {board}}}} unknown {, {board}, lot not known} other {, {board_lot}}}",
		"coat": "{purpose, select, none {coat} unknown {coat for a purpose not known} other {{purpose}}}" + coating +
			"{faces, if { on {faces}}}{extra, if {, more on {extra}}}",
		"cloth": "cloth laid{again_of, if { again}}{cloth_lot, select, none {{cloth, select, none {} unknown {, which cloth not known} other {, {cloth}}}} unknown {, {cloth}, lot not known} other {, {cloth_lot}}}{mix, if { in {mix}}}" +
			"{wet_total, select, none {} unknown {, amount not known} other {, {wet_total}{panels, plural, one {} other { for {panels} panels}}}}" +
			"{wet_each, select, none {} unknown {, amount not known} other {, {wet_each} each}}{tool, if {, {tool}}}" +
			"{faces, if {, on {faces}}}{threads, select, none {} unknown {, run of the threads not known} other {, warp {threads}}}{wet_through, if {, wet through: {wet_through}}}",
		"trimmed": "trimmed{tool, if {, {tool}}}{edges_eased, if {, edges eased: {edges_eased}}}",
		"sanded":  "sanded{faces, if { {faces}}}{grit, if { with {scale} {grit}}}{sanded_through, if {, through to fibre: {sanded_through}}}",
		"paint": "{medium, select, none {paint, medium not recorded} unknown {paint, medium not known} other {{medium} paint}}{technique, if {, {technique}}}" +
			"{pigments, if {, {pigments}}}" + coating + "{faces, if { on {faces}}}{underdrawing, if {; underdrawing: {underdrawing}}}",
		"varnish":  "varnish{resin, select, none {} unknown {, resin not known} other {, {resin}}}" + coating + "{faces, if { on {faces}}}{removable, if {, removable: {removable}}}{removed_with, if {, with {removed_with}}}",
		"braced":   "braced{bracing, if {, {bracing}}}{fixing, if {, {fixing}}}",
		"warm-air": "warm air{for, if { for {for}}}{faces, if { on {faces}}}",

		"left-bare":  "{faces, number, plur {{faces} left bare} other {{faces} left bare}}",
		"intended":   "{cloth, select, no {meant to carry no cloth} yes {meant to carry cloth} other {what is intended}}",
		"removed":    "taken off{what, if {: {what}}}{extent, if {, {extent}}}{faces, if {, on {faces}}}{means, if {, by {means}}}{with, if {, with {with}}}{by, if {, by {by}}}{because, if {, because: {because}}}",
		"resized":    "{how, select, cut-down {cut down} enlarged {enlarged} other {size changed}}{size_before, if { from {size_before}}}{size, if { to {size}}}",
		"used-again": "used again{over_earlier_paint, if {, over earlier paint: {over_earlier_paint}}}{earlier_work, if {, earlier work: {earlier_work}}}",
		"feature":    "{what} on the {face}{from_left, if {, {from_left} from the left}}{from_top, if {, {from_top} from the top}}{note, if {: {note}}}",

		"inspection": "inspected{bow, if {, bow {bow} over {span}}}{hollow_to, select, none {} flat {, flat} unknown {, hollow at a side not known} other {, hollow at the {hollow_to}}}" +
			"{edges, if {, edges {edges}}}{adhesion, if {, adhesion {adhesion}}}{remarks, if {; {remarks}}}",
		"climate":   "climate{temperature, if { {temperature}}}{humidity, if { {humidity}}}{place, if {, {place}}}",
		"described": "described{title, if {, “{title}”}}{made, if {, made {made:on}}}{signed, if {, signed {signed}}}",
		"photograph": "photograph{role, select, none {} unknown {} other {, {role}}}, {width_px}\u00a0×\u00a0{height_px} pixels" +
			"{caption, if {: {caption}}}",
		"condition": "condition, by {by}: {text}",
		"treatment": "treatment, by {by}: {text}{with, if {; with {with}}}{because, if {; because: {because}}}",

		"label-printed":         "label printed{layout, if {, {layout}}}{reason, if {, {reason}}}",
		"certificate-issued":    "certificate issued{replaces, if {, replaces {replaces}}}{reason, if {, {reason}}}",
		"certificate-withdrawn": "certificate {certificate} taken back: {because}",
		"published":             "page of the panel {shown, select, yes {shown} no {not shown} other {shown: {shown}}}{photograph, if {, photograph: {photograph}}}",
		"handed-over":           "{how}{note, if {; {note}}}{private_sha256, select, none {} other {; name and price kept apart}}",
		"discarded":             "discarded: {because}",
		"note":                  "note: {text}",

		"private-erased": "name and price of {entry} erased: {because}",
		"amended":        "amends {entry}: {change} ({because})",
		"withdrawn":      "withdraws {entry} ({because})",
		"key-made":       "signing key made",
		"key-retired":    "signing key retired: {because}",
		"key-lost":       "signing key declared lost: {because}",
	}
}

const material = "{material, select, unknown {a material not known} other {{material}}}"

// englishObjects say the objects within a field by their Go type; {of} is how
// many stand in the field.
var englishObjects = table{
	// A lot says its material; of one thing there are no parts.
	{"Part", "{of, plural, one {{parts, select, other {}}} other {{parts, plural, one {1 part of } other {{parts} parts of }}}}{lot, select, none {" + material + "} unknown {" + material + "} other {{lot}}}{material, select, other {}}"},
	{"Pigment", "{name}{colour_index, if { ({colour_index})}}"},
}

// englishKinds name the kinds of entry.
var englishKinds = table{{"studio", "studio"}, {"maker", "maker"}, {"material", "material"}, {"lot", "lot"}, {"recipe", "recipe"}, {"cut", "cut"}, {"coat", "coat"}, {"cloth", "cloth"},
	{"trimmed", "trimming"}, {"sanded", "sanding"}, {"paint", "paint"}, {"varnish", "varnish"}, {"braced", "bracing"}, {"warm-air", "warm air"}, {"left-bare", "face left bare"},
	{"intended", "intention"}, {"removed", "removal"}, {"resized", "change of size"}, {"used-again", "used again"}, {"feature", "feature"}, {"inspection", "inspection"},
	{"climate", "climate"}, {"described", "description"}, {"photograph", "photograph"}, {"condition", "condition report"}, {"treatment", "treatment"}, {"label-printed", "label"},
	{"certificate-issued", "certificate"}, {"certificate-withdrawn", "withdrawal of a certificate"}, {"published", "page"}, {"handed-over", "hand-over"}, {"discarded", "given up"},
	{"note", "note"}, {"private-erased", "erasure"}, {"amended", "amendment"}, {"withdrawn", "withdrawal"}, {"key-made", "key"}, {"key-retired", "key retired"}, {"key-lost", "key lost"}}

// englishWhere say where a panel is, as far as recorded.
var englishWhere = table{
	{"layer-lost", "{extent, select, whole {taken off} reduced {reduced} in-part {taken off in part} other {perhaps taken off}}, {date}"},
	{"where-here", "in the studio"},
	{"where-away", "{how, select, unknown {no longer here} other {{how}}}"},
	{"where-discarded", "discarded"},
}
