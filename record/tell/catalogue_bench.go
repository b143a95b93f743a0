package tell

// englishWarnings are what an act gives to think about.
var englishWarnings = map[string]Message{
	"backup-old":              `reminder: the last backup is of {last}; "backleaf backup FILE" makes one`,
	"back-not-sealed":         "note: no seal is recorded on the back of {panels}; a label keeps best on a sealed back",
	"no-room":                 "{panel}: no room on the {size} label for: {fields}",
	"printed-before":          "{panel}: printed before, {when:near}",
	"key-file-open":           "note: others than you may read {file}: \"chmod 600 {file}\" closes it",
	"backup-remark":           "note: {why}",
	"head-not-kept":           "note: the deposit is made, but the book cannot keep its head: {why}",
	"photograph-bad":          "photograph {file}: {why}",
	"paper-bad":               "paper that left the studio, {file}: {why}",
	"photograph-not-imported": "{why}",
	"sheet-not-remembered":    "note: the panels are written, but the book will not know this sheet again: {why}",
	"clock-behind":            "note: this computer's clock ({clock:moment}) is behind the last entry in the book ({last:moment}): set it right",
	"coarse-grit":             "note: {scale} {grit} is coarser than 150: it may cut through to fibre or board",
	"is-away":                 `note: {panel} is away already: {how} ({entry}); "backleaf withdraw" takes back what was written twice`,
	"never-backed-up":         `reminder: this book of {entries} entries was never backed up; "backleaf backup FILE" does it`,
	"no-cloth-to-trim":        "note: no cloth is recorded on {panels}",
	"not-printable":           "note: written down as it is, but it cannot be printed on a label or certificate: {why}",
	"oz-as-weight":            `note: oz is taken as weight; for fluid ounces write "{number} fl oz"`,
	"private-parts-missing":   "note: of {panels, plural, one {one panel} other {{panels} panels}} the private part was erased or is not in this copy",
	"purpose-not-recorded":    "note: what this coat was for is not recorded; say it with --as sealer or the like, or amend the entry with --set purpose=sealer",
	"was-discarded":           "note: {panel} was discarded",
	"was-here":                "note: {panel} was in the studio, as far as recorded",
}

// englishBench is what the bench says of what it wrote and of what there is.
var englishBench = map[string]Message{
	"entries":          "{first}{last, if { to {last}}}",
	"written":          "{entries}  {at, if {{at:near}, }}{panels, if {{panels}: }}{what}",
	"take-back":        `to take it back: backleaf withdraw {number} --because "…"`,
	"take-back-panels": `to take it back: backleaf panel discard {panels} --because "…"`,

	"panel":         "{panel}  {title, select, none {no title} unknown {title not known} other {“{title}”}}",
	"panel-checked": "{panel}{title, select, none {} unknown {} other {  “{title}”}}",
	"title":         "{title, select, none {} unknown {} other {“{title}”}}",
	"with-title":    "{title, select, none {} unknown {} other {, “{title}”}}",
	"build-up-of":   "{face}, from the board outwards",
	"what-happened": "what happened",
	"corrections":   "corrections",
	"gaps":          "not recorded",
	"entry":         "{entry}  {kind}{panels, if {  {panels}}}",

	"name-made-by":      "made by",
	"name-size":         "size (height × width × depth)",
	"name-board":        "board",
	"name-batch":        "batch",
	"name-stage":        "stage",
	"name-date-of-work": "date of the work",
	"made-by":           "{maker}{place, if {, {place}}}",
	"board-of":          "{product}{lot, if {, lot {lot}}}{grain, select, none {} unknown {, run of the grain not known} other {, grain {grain}}}",
	"stage-and-where":   "{stage}, {where}",

	"sheet-written":       "{entries}  from {file}: {panels}",
	"take-back-one":       `to take one back: backleaf panel discard {panel} --because "…"`,
	"sheet-private":       "private, outside the journal: to whom and for how much, of {n, plural, one {one handover} other {{n} handovers}}",
	"sheet-line":          "line {line}  {panel}{reference, if {  {reference}}}",
	"sheet-entry":         "  {what}, {at:near}",
	"sheet-entry-private": "  {what}, {at:near}, with a private part",
	"sheet-dry-run": "dry run: {panels, plural, one {one panel} other {{panels} panels}} in {entries, plural, one {one entry} other {{entries} entries}} would be written, " +
		"{refused, plural, one {one row} other {{refused} rows}} refused; nothing was written",

	"resting-on": "{what} ({entries})",

	"no-lots":      `there are no lots yet; "backleaf lot add" puts one on the shelf`,
	"lot-not-used": "not used on any panel, as far as recorded",
	"lot-expires":  "{expires, if {expires {expires}}}",
	"of-lot":       "{lot, if {lot {lot}}}",
	"due-panels":   "          batch {batch}, {panels}",
}
