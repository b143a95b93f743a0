package main

import (
	"errors"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/tell"
)

// hints say what to do next, by the code of what was refused. A code without a
// line has no hint.
var hints = map[string]tell.Message{
	"bow-without-span":         `give the span it was measured over, like --span "60 cm"`,
	"coat-of-nothing":          "leave it out if it was not measured",
	"grit-without-scale":       "look at the back of the paper: a P before the number, or none (CAMI)",
	"later-today":              `for an evening before today say "yesterday {clock}"`,
	"lot-there":                `choose another key for another tin, or put this one right: backleaf amend {entry} --set … --because "…"`,
	"lot-without-material":     "describe it first: backleaf material add {material} …",
	"no-faces":                 "say --on front, --on back,edges or --on all",
	"no-moment":                `say 14:05 or "2026-05-03 09:00"`,
	"no-mark-picture":          "save it as PNG",
	"mark-too-large":           "save it smaller: it is printed a few centimetres wide",
	"mark-not-read":            `put the file back into the folder "photographs" beside the book, or keep another with "backleaf studio change --mark-picture"`,
	"no-picture":               "save it as one of these",
	"no-private-part":          `"backleaf handover show NUMBER" shows which entries have one`,
	"certificate-without-file": `write it again: backleaf certificate {panel} -o FILE --as-issued`,
	"clock-far-off":            "set the clock right; if it is right, say --clock-is-right",
	"file-there":               "choose another name; nothing was written",
	"key-file-missing":         `put it back, or "backleaf studio key recover" from the recovery sheet; only if it is gone for ever: "backleaf studio key lost"`,
	"key-file-used":            "move that file away",
	"key-not-in-place":         "move {from} to {to}",
	"key-not-recorded":         `the key file stays; run "backleaf studio key new" again`,
	"key-there":                `"backleaf studio key retire" changes it, "backleaf studio key lost" declares it lost`,
	"label-does-not-fit":       "a smaller --size, or another --sheet, may help; nothing was written",
	"label-of-discarded":       "leave it out with --except {panel}",
	"labels-without-file":      "print them again: the same command, with --because",
	"new-key-there":            "if this is left over from a change that failed, move it away",
	"no-certificate":           `"backleaf show {panel}" tells which were issued and taken back`,
	"no-dossier-there":         "name another file with -o",
	"no-key":                   `"backleaf studio key new" makes one`,
	"no-labels-there":          "name another file with -o",
	"no-passphrase":            "set " + passphraseVariable + " or give --passphrase-file",
	"no-place-on-sheet":        "--from is the first free place, counted from 1; nothing was written",
	"no-price":                 "leave --price out; a price is written down when the panel is handed over",
	"no-studio-sheet":          `"backleaf studio change --sheet-label …" keeps one`,
	"not-certifiable":          "if a certificate is meant all the same, say --anyway",
	"not-finished":             `"backleaf paint" and "backleaf panel describe" write them down; a blank panel has its label; if it is meant all the same, say --anyway`,
	"not-issued":               "nothing was issued; name a folder that is there and a file that is not",
	"no-cloth-in-plan":         "plan those without cloth by themselves, without --cloth",
	"no-plan":                  "nothing was written; see \"backleaf plan --help\"",
	"recipe-of-mix":            "name a batch whose coats are of one material each",
	"recipe-of-nothing":        "name a batch whose sealing, cloth and ground are on record",
	"panel-newer":              "use the newer program; \"backleaf show {panel}\" and \"backleaf verify\" still work, and nothing was changed",
	"not-kept":                 `look for it in a backup of the folder "papers"`,
	"other-key":                "the key on record is {key} …; put that file back",
	"studio-sheet":             `see "backleaf studio show", and put it right with "backleaf studio change"`,
	"book-empty":               `make it with "backleaf studio new"`,
	"deposit-there":            "name a folder that is not there yet; nothing is overwritten",
	"mapping":                  `"backleaf import --help" shows a mapping; nothing was written`,
	"no-backup":                `name a file that "backleaf backup" made`,
	"no-empty-book":            `"backleaf --book NEW studio new --empty" makes an empty one`,
	"no-evidence":              "a record folder holds {file} and the files that belong to it",
	"import-unasked":           "nothing was written; if they are meant, say --also {kinds}",
	"paper-does-not-hold":      `"backleaf verify FILE" tells what does not hold`,
	"not-imported":             "nothing was written; put the file right and import it again",
	"not-the-beginning":        "look for the copy of the book that still holds it",
	"highest-on-labels":        `say the highest number on any label with --highest, or --highest none where the copy knows them all{last, if {; the last it knows is {last}}}`,
	"not-whole":                "nothing was written; look for another copy of it",
	"restore-there":            "throw nothing away: name another place with --to BOOK",
	"rows-refused":             "nothing was written; put the rows right, or write the others with --rows-that-pass",
	"sheet-imported-before":    "nothing was written; if its rows are new panels all the same, say --again",
	"two-of-a-sort":            "check them one after the other",
	"find-what":                `see "backleaf find --help"; "backleaf list" shows all panels`,
	"no-such-recipe":           `"backleaf recipe list" shows them, "backleaf recipe from" keeps one`,
	"no-bolt-width":            `say it with --bolt "150 cm"`,
	"no-sheet-size":            `say it with --sheet "2440 x 1220 mm", or put a lot with its --sheet on the shelf`,
	"panels-not-read":          `say "14 of 30x40 cm, 6 of 8x10 in grain height"`,
	"too-many":                 "nothing was planned",
	"no-status":                "a status is the file of that name in the folder of a studio's pages",
	"no-site-there":            "name a folder that is not there yet, or that of an earlier site; nothing was written",
	"site-folder":              "make sure that you may read and write the folder, or name one that is not there yet",
	"no-such-rule":             "the rules are {rules}",
	"no-such-panel-to-list":    `"backleaf list" without words shows all`,
	"not-understood":           `nearest topics: "{first}" and "{second}"; "backleaf show {panel}" tells all that is recorded`,
	"no-entry-number":          `"backleaf journal" lists them`,
	"no-such-entry":            `"backleaf journal" lists the entries`,
	"no-such-field":            `"backleaf journal ENTRY" shows the fields of an entry`,
	"no-such-generic":          `{near, if {did you mean {near}? }}"backleaf material starter" lists them`,
	"no-such-lot":              `{near, if {did you mean {near}? }}"backleaf lot list" shows them`,
	"panel-discarded":          `if it was done all the same, say --also-away; "backleaf withdraw {entry}" takes back that it was discarded`,
	"no-such-word":             `{near, if {did you mean {near}?}}`,
	"some-panels":              `write NUMBER=TEXT, like "0005=a dent"`,
	"amount-twice":             "say one of the two; nothing was written",
	"half-of-day":              "write it with 24 hours, or with am or pm: 14:30, 2:30 pm",
	"nothing-seen":             `say --edges, --adhesion, --bow or --remarks, like --edges sound`,
	"no-reading":               `say --temp "21 °C", --rh 54% or both`,
	"lot-swapped":              `the key of the lot comes first: backleaf lot add {lot} {material}`,
	"offcut-of-what":           "name the sheet with --board LOT",
	"no-date":                  "write it like 2027-03 or 2027-03-31",
	"no-tins":                  "leave --but out",
	"tin-twice":                "name each panel once",
	"several-times":            "write them down one after the other",
	"amount-of-coats":          "write the coats down one after the other, or say --amount-each of each coat",
	"amount-of-tins":           "write the two down one after the other with their amounts, or say --amount-each",
	"not-a-coat":               "leave out what is said of a coat",
	"not-among":                "name it among the panels too; nothing was written",
	"not-repeatable":           "write it down by its own command",
	"nothing-to-repeat":        `write an act down first, like "backleaf coat"`,
	"withdrawn-entry":          `"backleaf journal" lists what stands`,
	"panel-away":               `if it was done all the same, say --also-away; "backleaf handover NUMBERS --how return" brings panels back`,
	"two-readings":             "write the one that is meant; nothing was written",
	"no-such-maker":            `"backleaf maker list" shows them; "backleaf maker add" describes one`,
	"no-such-layer":            "name it with --layer ENTRY, or say --not-on-record",
	"no-cloth-before":          "leave --again out: the cloth is laid for the first time, as far as recorded",
	"several-cloths":           "write them down one after the other",
	"removed-what":             "for example --what varnish --extent whole",
	"resized-to":               `say --to "28 x 40 cm"`,
	"resized-how":              "say --how cut-down or --how enlarged",
	"no-such-material":         `{near, if {did you mean {near}? }}"backleaf material list" shows the shelf`,
	"described-open":           "say which with --described-by ENTRY, or --described-by unknown",
	"describes-nothing":        `"backleaf journal" shows the entries that describe materials, makers and the studio`,
	"stands-otherwise":         "name those with --panel",
	"no-such-panel":            `"backleaf list" shows the panels; put words that belong together in quotes; a batch is batch:NAME`,
	"not-on-shelf":             `{near, if {did you mean {near}? }}"backleaf material list" and "backleaf lot list" show the shelf`,
	"not-written":              "nothing was written",
	"nothing-described":        `see "backleaf panel describe --help"`,
	"nothing-to-change":        `see "backleaf studio change --help"`,
	"photograph-not-read":      `put the file back into the folder "photographs" beside the book, or keep another with "backleaf panel photo"`,
	"room-temperature":         "was it measured in °F?",
	"several-lots":             "name the one you used: {lots}",
	"time-not-read":            `say 14:05, "yesterday 16:30", "2026-05-02 14:05", 2026-05-02, 1998~ (about 1998) or unknown`,
	"vague-time":               `say the hour, like 09:00 or "yesterday 21:00", or only the day: today, yesterday`,
	"year-or-hour":             `write {clock} for the hour, or "year {year}" for the year`,
}

// warn prints warnings.
func (a *app) warn(v *studio.View, ws []record.Said) {
	c := a.catalogue()
	if v != nil {
		c = c.At(v.Now, v.Zone)
	}
	for _, w := range ws {
		a.talk("%s", tell.Say(c, w))
	}
}

// exitCodes are the exit codes of refusals.
var exitCodes = map[refuse.Class]int{refuse.Failed: exitError, refuse.Unclear: exitUsage, refuse.Broken: exitIntegrity, refuse.NoBook: exitNoBook, refuse.Later: exitNewer}

// refused says a refusal in the words of the command line: an input is the
// flag of that name.
func refused(err error) (said, hint string, code int) {
	said = err.Error()
	r, ok := errors.AsType[*refuse.Error](err)
	if !ok {
		return said, "", exitError
	}
	if err == error(r) && r.Field != "" {
		said = "--" + said
	}
	return said, tell.English.Fill(hints[r.Said.Code], r.Said.Values...), exitCodes[r.Class]
}
