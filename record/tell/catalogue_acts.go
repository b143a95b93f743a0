package tell

// englishActs is what an act at the bench gives to think about, and what it
// comes to.
var englishActs = table{
	{"more-than-there-was", "note: more was taken out of {lot} than was in it ({quantity}){most, if {, the most by {most}}}: was an amount or a lot mistyped?"},
	{"other-thickness", "note: {is} thick, while {material} is recorded as {of}"},
	{"cut-twice", "note: {panels} of batch {batch}: numbered within the hour ({entry}); if these are the same panels, discard the new numbers"},
	{"batch-old", "note: batch {batch} is of {at} and has {panels} already; was a new batch meant?"},
	{"unlikely-value", "note: {what, select, side {a side of {value}} thickness {a board {value} thick} bow {a bow of {value}} saw {a saw cut of {value}} span {a span of {value}}" +
		" oversize {an allowance of {value}} width {a bolt {value} wide} sheet {a sheet of {value}} density {a density of {value}} quantity {a lot of {value}} weight {a cloth of {value}} wet-film {a wet film of {value}}" +
		" dry-film {a dry film of {value}} thinned {{value} of thinner} temperature {{value} in the room} humidity {{value} humidity} other {{value}}} is unusual: was a figure or a unit mistyped?"},
	{"left-without-cloth", "note: meant to carry no cloth, so left out: {panels}"},
	{"meant-without-cloth", "note: {panels}: meant to carry no cloth, as far as recorded"},
	{"of-batch-not", `note: not among them, though of batch {batch}: {panels}; if it was done there too, "backleaf repeat" adds it`},
	{"repeats", "repeats {entry}"},
	{"not-taken-over", "note: what was measured or remarked then is not taken over:{amount, if { amount {amount}{panels, plural, one {} other { for {panels} panels}};}}{each, if { amount {each} each;}}{bow, if { bow {bow} (measured anew: \"backleaf inspect\");}}{span, if { span {span};}}{wet, if { wet film {wet};}}{dry, if { dry film {dry};}}" +
		"{temperature, if { temperature {temperature};}}{humidity, if { humidity {humidity};}}{note, if { “{note}”;}} say what holds of this one"},
	{"of-other-product", "note: resin, sheen and what takes it off were said of the other product, so they are not taken over; of this one, amend the entry with --set gloss=… and --set removed_with=…"},

	{"studio-changed", "changed: {change}"},
	{"studio-holds-on", "what the studio says of today holds on, so it was written again"},
	{"on-shelf-already", "note: on the shelf already, so not written again: {materials}"},

	{"sheet-lacks", "note: the label sheet still lacks {lacks}: before that no labels are printed on it (--sheet-page, --sheet-label, --sheet-rows, --sheet-columns)"},

	{"at-line", "line {line}: {text}"},

	{"other-quantity", "note: {quantity} of {material}: cloth is counted in m or m2, boards in sheets, all else is weighed or filled in L; was another unit or material meant?"},
	{"material-not-recorded", `note: with which material is not recorded{entry, if {; do not type it again: backleaf amend {entry} --set with=… --because "…"}} (next time: --with)`},
	{"cloth-not-recorded", `note: which cloth is not recorded{entry, if {; do not type it again: backleaf amend {entry} --set cloth=… --because "…"}} (next time: --cloth)`},

	{"lot-left-open", "{lot}: what is left is not known: {why}"},
	{"lot-left", "{lot}: about {left} left"},
	{"lot-left-most", "{lot}: at most {left} left{open, if {; {open, plural, one {of one use} other {of {open} uses}} no amount is recorded}}"},
	{"size-comes-to", "{size:both}"},
}
