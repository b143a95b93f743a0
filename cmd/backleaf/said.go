package main

import (
	"errors"
	"strings"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/tell"
)

// warnings are the words for what an act gives to think about.
var warnings = map[string]tell.Message{
	"backup-old":              `reminder: the last backup is of {last}; "backleaf backup FILE" makes one`,
	"back-not-sealed":         "note: no seal is recorded on the back of {panels}; a label keeps best on a sealed back",
	"no-room":                 "{panel}: no room on the {size} label for: {fields}",
	"printed-before":          "{panel}: printed before, {when}",
	"key-file-open":           "note: others than you may read {file}: \"chmod 600 {file}\" closes it",
	"backup-remark":           "note: {why}",
	"head-not-kept":           "note: the deposit is made, but the book cannot keep its head: {why}",
	"photograph-bad":          "photograph {file}: {why}",
	"photograph-not-imported": "{why}",
	"sheet-not-remembered":    "note: the panels are written, but the book will not know this sheet again: {why}",
	"clock-behind":            "note: this computer's clock ({clock}) is behind the last entry in the book ({last}): set it right",
	"coarse-grit":             "note: {scale} {grit} is coarser than 150: it may cut through to fibre or board",
	"is-away":                 `note: {panel} is away already: {how} ({entry}); "backleaf withdraw" takes back what was written twice`,
	"never-backed-up":         `reminder: this book of {entries} entries was never backed up; "backleaf backup FILE" does it`,
	"no-cloth-to-trim":        "note: no cloth is recorded on {panels}",
	"not-printable":           "note: written down as it is, but it cannot be printed on a label or certificate: {why}",
	"oz-as-weight":            `note: oz is taken as weight; for fluid ounces write "{number} fl oz"`,
	"private-parts-missing":   "note: of {panels} panels the private part was erased or is not in this copy",
	"purpose-not-recorded":    "note: what this coat was for is not recorded; say it with --as sealer or the like, or amend the entry with --set purpose=sealer",
	"was-discarded":           "note: {panel} was discarded",
	"was-here":                "note: {panel} was in the studio, as far as recorded",
}

// hints say what to do next, by the code of what was refused. A code without a
// line has no hint.
var hints = map[string]tell.Message{
	"bow-without-span":         `give the span it was measured over, like --span "60 cm"`,
	"coat-of-nothing":          "leave it out if it was not measured",
	"grit-without-scale":       "look at the back of the paper: a P before the number, or none (CAMI)",
	"later-today":              `for an evening before today say "yesterday {clock}"`,
	"lot-there":                `choose another key for another tin, or put this one right: backleaf amend {number} --set … --because "…"`,
	"lot-without-material":     "describe it first: backleaf material add {material} …",
	"no-faces":                 "say --on front, --on back,edges or --on all",
	"no-moment":                `say 14:05 or "2026-05-03 09:00"`,
	"no-picture":               "save it as one of these",
	"no-private-part":          `"backleaf handover show NUMBER" shows which entries have one`,
	"certificate-without-file": `issue it again: backleaf certificate {panel} -o FILE --because "{entry} was not written"`,
	"file-there":               "choose another name; nothing was written",
	"key-file-missing":         `put it back, or "backleaf studio key recover" from the recovery sheet; if it is gone: "backleaf studio key lost"`,
	"key-file-used":            "move that file away",
	"key-not-in-place":         "move {from} to {to}",
	"key-not-recorded":         `the key file stays; run "backleaf studio key new" again`,
	"key-there":                `"backleaf studio key retire" changes it, "backleaf studio key lost" declares it lost`,
	"label-does-not-fit":       "a smaller --size, or another --sheet, may help; nothing was written",
	"label-of-discarded":       "leave it out with --except {panel}",
	"labels-not-recorded":      "run the command again before you use the labels",
	"new-key-there":            "if this is left over from a change that failed, move it away",
	"no-certificate":           `"backleaf show {panel}" tells which were issued and taken back`,
	"no-dossier-there":         "name another file with -o",
	"no-key":                   `"backleaf studio key new" makes one`,
	"no-labels-there":          "name another file with -o",
	"no-passphrase":            "set " + passphraseVariable + " or give --passphrase-file",
	"no-place-on-sheet":        "--from is the first free place, counted from 1; nothing was written",
	"no-price":                 `"backleaf handover" writes one down`,
	"no-studio-sheet":          `"backleaf studio change --sheet-label …" keeps one`,
	"not-finished":             `"backleaf paint" and "backleaf panel describe" write them down; a blank panel has its label`,
	"not-issued":               "nothing was issued; try again",
	"other-key":                "the key on record is {key} …; put that file back",
	"studio-sheet":             `see "backleaf studio show", and put it right with "backleaf studio change"`,
	"book-empty":               `make it with "backleaf studio new"`,
	"deposit-there":            "name a folder that is not there yet; nothing is overwritten",
	"mapping":                  `"backleaf import --help" shows a mapping; nothing was written`,
	"no-backup":                `name a file that "backleaf backup" made`,
	"no-empty-book":            `"backleaf --book NEW studio new --empty" makes an empty one`,
	"no-evidence":              "a record folder holds {file} and the files that belong to it",
	"not-imported":             "nothing was written; put the file right and import it again",
	"not-the-beginning":        "look for the copy of the book that still holds it",
	"not-whole":                "nothing was written; look for another copy of it",
	"restore-there":            "move it away, or name another place with --to BOOK",
	"rows-refused":             "nothing was written; put the rows right, or write the others with --rows-that-pass",
	"sheet-imported-before":    "nothing was written; if its rows are new panels all the same, say --again",
	"two-of-a-sort":            "check them one after the other",
	"find-what":                `see "backleaf find --help"; "backleaf list" shows all panels`,
	"no-such-rule":             "the rules are {rules}",
	"no-such-panel-to-list":    `"backleaf list" without words shows all`,
	"not-understood":           `"backleaf ask --help" lists what can be asked about`,
	"no-entry-number":          `"backleaf journal" lists them`,
	"no-such-entry":            `"backleaf journal" lists the entries`,
	"no-such-field":            `"backleaf journal ENTRY" shows the fields of an entry`,
	"no-such-generic":          `"backleaf material starter" lists them`,
	"no-such-lot":              `"backleaf lot list" shows them`,
	"no-such-material":         `"backleaf material list" shows the shelf`,
	"no-such-panel":            `"backleaf list" shows the panels of this book`,
	"not-on-shelf":             `"backleaf material list" and "backleaf lot list" show the shelf`,
	"not-written":              "nothing was written",
	"nothing-described":        `see "backleaf panel describe --help"`,
	"nothing-to-change":        `see "backleaf studio change --help"`,
	"photograph-not-read":      `put the file back into the folder "photographs" beside the book, or keep another with "backleaf panel photo"`,
	"room-temperature":         "was it measured in °F?",
	"several-lots":             "name the one you used: {lots}",
	"time-not-read":            `say 14:05, "yesterday 16:30", "2026-05-02 14:05", 2026-05-02, 1998~ (about 1998) or unknown`,
}

// warn prints warnings.
func (a *app) warn(v *studio.View, ws []record.Said) {
	for _, w := range ws {
		a.talk("%s", inWords(warnings[w.Code], w, v))
	}
}

// inWords puts the values of something said into a message.
func inWords(m tell.Message, s record.Said, v *studio.View) string {
	var pairs []string
	for _, x := range s.Values {
		text := strings.Join(x.Texts, ", ")
		switch x.Type {
		case "entry":
			pairs = append(pairs, "number", text)
			text = "E" + text
		case "Number":
			var ns []record.Number
			for _, t := range x.Texts {
				ns = append(ns, record.Number(t))
			}
			text = tell.PanelList(ns)
		case "When":
			text = inTime(s.Code, text, v)
		}
		pairs = append(pairs, x.Name, text)
	}
	return m.With(pairs...)
}

// inTime says a time: day and hour of a clock, the day of a backup.
func inTime(code, text string, v *studio.View) string {
	w, err := record.ParseWhen(text)
	t, exact := w.Exact()
	switch {
	case err != nil:
		return text
	case code == "clock-behind" && exact:
		return t.In(v.Zone).Format("2 Jan 15:04")
	case code == "backup-old" && exact:
		return t.In(v.Zone).Format("2 January 2006")
	}
	return tell.When(w, v.Now, v.Zone)
}

// exitCodes are the exit codes of refusals.
var exitCodes = map[refuse.Class]int{refuse.Failed: exitError, refuse.Unclear: exitUsage, refuse.Broken: exitIntegrity, refuse.NoBook: exitNoBook}

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
	return said, inWords(hints[r.Said.Code], r.Said, nil), exitCodes[r.Class]
}
