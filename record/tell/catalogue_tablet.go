package tell

import "maps"

// AtPage returns the catalogue as the page at the bench speaks it: where the
// command line names a command, the page names what is on it.
func (c *Catalogue) AtPage() *Catalogue {
	at := *c
	at.Codes = maps.Clone(c.Codes)
	maps.Copy(at.Codes, c.Tablet)
	return &at
}

// englishAtTablet says for the page what names a command elsewhere.
var englishAtTablet = table{
	{"backup-old", "reminder: the last backup is of {last}"},
	{"never-backed-up", "reminder: this book of {entries, plural, one {1 entry} other {{entries} entries}} was never backed up"},
	{"done-twice", "{entry} of within the hour may be the same, for {panels}"},
	{"is-away", "{panels} {panels, number, sing {is} other {are}} away already: {how} ({entry})"},
	{"due-answer", "turn and coat the {face}, before more is laid on the other face: it lacks {coats, plural, one {one coat} other {{coats} coats}}{bows, select, yes {; it bows, so see what its page advises first} other {}}"},
	{"left-out", "not here, so left out: {panels}"},
	{"label-except", "labels of these cannot be pasted now: {panels}"},
	{"purpose-not-recorded", "what this coat is for is not said"},
	{"coarse-grit", "{scale} {grit} is coarser than 150: it may cut through to fibre or board"},
	{"no-cloth-to-trim", "no cloth is recorded on {panels} until then"},
	{"not-printable", "this can be written down, but not printed on a label or certificate: {why}"},
	{"oz-as-weight", "oz is taken as weight; for fluid ounces write “{number} fl oz”"},
	{"before-cutting", "that is before {panels} were cut, as far as recorded"},
	{"left-open", "{field, select, bracing {with what it was braced} for {for how long} medium {in which medium} other {of which board}} is not said"},
	{"bare-but-coated", "something lies already on the {faces} of {panels}"},
	{"meant-otherwise", "{material} is recorded as {uses}"},
	{"not-meant-for", "{material} is not recorded as a material for {use}"},
	{"out-of-order", "{panels} already {panels, number, sing {has} other {have}} on the front what usually comes after this: the wrong panel, or the wrong day?"},
	{"too-early", "early for {panels}: by the usual times not before {from:near}"},
	{"too-late", "late for {panels}: by the usual times until {until:near}"},
	{"unlikely-amount", "that is {spread}; is the amount, its unit or a face mistyped?"},
	{"was-discarded", "{panels}: discarded already"},
	{"was-here", "{panels} {panels, number, sing {is} other {are}} in the studio, as far as recorded"},
	{"certified-before", "the certificate of {panels} in force ({entry}) tells it as it was before this"},
	{"back-not-sealed", "no seal is recorded on the back of {panels}; a label keeps best on a sealed back"},
	{"lot-left", "{lot}: about {left} left before this"},
	{"lot-left-most", "{lot}: at most {left} left before this"},
	{"clock-behind", "the computer’s clock ({clock:moment}) is behind the last entry in the book ({last:moment}): set it right"},
}

// englishTablet is what the page at the bench says by itself.
var englishTablet = table{
	{"bench-serves", "{address}"},
	{"bench-how", "open the address above in the browser of this computer; Ctrl-C ends the page{writes, select, no {\nread-only: it shows the book, and writes nothing down} other {}}"},
	{"bench-open", "on the tablet open one of the others\nnote: this is plain HTTP. In an open network others can listen and read what the page shows; use a network of your own with a password. " +
		"Each device asks for the code once; the page “devices” ends a pairing."},
	{"pair-code", "code for the next device: {code}"},
	{"pair-wrong", "That is not the code."},
	{"pair-old", "That code was too old: the computer shows another."},
	{"pair-closed", "Too many wrong codes. Wait a minute; the computer shows another code."},

	{"page-today", "Today"}, {"page-panels", "Panels"}, {"page-shelf", "Shelf"}, {"page-find", "Find or ask"}, {"page-asked", "{panel}"},
	{"page-batch", "Batch {batch}"}, {"page-panel", "{panel}{title, select, none {} unknown {} other { “{title}”}}"},
	{"page-finish", "Finish {panel}{title, select, none {} unknown {} other { “{title}”}}"}, {"page-entry", "Entry {entry}"},
	{"page-pair", "Pair this device"}, {"page-devices", "Paired devices"}, {"page-refused", "That could not be done"},

	{"page-about-input", "{input}: {why}"},
	{"page-what", "{what}{panels, if {. {panels}}}{at, if {, {at:near}}}"},
	{"page-lot", "{lot}, {name}"},
	{"page-lot-number", "no. {number}"},
	{"page-lot-quantity", "{quantity}"},
	{"page-lot-opened", "opened {opened}"},
	{"page-lot-left", "about {left} left"}, {"page-lot-left-most", "at most {left} left"}, {"page-more-than-there-was", "more was taken than there was"},
	{"page-lot-left-open", "{why, select, cost-quantity-open {} other {what is left is not known: {why}}}"},
	{"page-parting", "{how}{at, if {, {at:on}}}{to, if {, to {to}}}{price, if {, {price}}}{note, if {, {note}}}"},
	{"page-secretly", "{input}: {value} (private, outside the journal)"},
	{"page-will-label", "The label of {panels}, as a PDF; it is written down as printed"}, {"page-will-certificate", "The certificate of {panels}, signed, as a PDF to print"},
	{"page-as-recorded", "recorded: {value} (leave empty to keep it)"},
	{"page-outdated", "the certificate of {panel} ({entry}) was issued before this correction"},
	{"page-the-picture", "the picture"},

	{"page-paint-acrylic", "Paint in acrylic"},
	{"page-group-prepare", "Prepare"}, {"page-group-paint", "Paint"}, {"page-group-look", "Look and note"}, {"page-group-leave", "Label, leave, come back"}, {"page-group-discard", "Given up"}, {"page-other-sizes", "panels of other sizes"},
	{"page-ago-half", "half an hour ago"}, {"page-ago-one", "an hour ago"}, {"page-ago-two", "2 hours ago"}, {"page-now-just", "now"}, {"page-or-when", "or at another time"},
	{"page-for-example", "for example {example}"}, {"page-made-before", "{panel} got one {at:near}: why another?"}, {"page-on-the", "On this panel"},
	{"page-findings-open", "Rules that cannot be judged: something is not recorded"}, {"page-story-all", "Everything before that"}, {"page-open-panel", "Open"}, {"page-all-panels", "All panels"},
	{"page-scan-it", "Photograph a label"}, {"page-air-last", "Last read:"},
	{"page-lacks-page-no-size", "Say how many and how large."}, {"page-lacks-page-no-material", "Choose the material. A product that is not there yet is described at the computer first."},
	{"page-lacks-is-how", "Choose how it leaves, or that it comes back."}, {"page-lacks-is-because", "Give a reason."}, {"page-lacks-nothing-described", "Fill in at least one of these."},
	{"page-lacks-page-no-panels", "Tick the panels."}, {"page-lacks-page-nothing-changed", "Fill in what is to change."},
	{"page-skip", "to the content"}, {"page-nav", "pages"}, {"page-find-what", "Find or ask"}, {"page-find-eg", "0142, “harbour”, or: 0142 is the varnish removable"}, {"page-find-go", "Find"},
	{"page-reading-only", "Only for reading: nothing can be written here."},
	{"page-to-devices", "devices"},
	{"page-written-now", "Written down"}, {"page-take-back-now", "Take it back"}, {"page-put-right", "Put it right"}, {"page-the-paper", "Open the PDF to print"},
	{"page-now", "Now"}, {"page-later", "Later"}, {"page-nothing-now", "Nothing is due now."}, {"page-no-panels-yet", "There are no panels yet."},
	{"page-batches", "Batches"}, {"page-new-panels", "Cut new panels"}, {"page-panels-counted", "{n, plural, one {1 panel} other {{n} panels}}"}, {"page-or", "or"},
	{"page-air", "Air of the room"}, {"page-read-air", "Read the air: drying times hang on it"},
	{"page-what-else", "Something else"}, {"page-what-was-done", "What was done"}, {"page-panels-of", "Panels"},
	{"page-when", "When"}, {"page-when-eg", "for example 14:05, or yesterday 16:30"}, {"page-more", "More"},
	{"page-all", "all"}, {"page-none", "none"}, {"page-on-which", "On which panels"},
	{"page-will-be", "This will be written"}, {"page-is-changed", "Something changed since you looked. This is what would be written now:"},
	{"page-write-it", "Write it down"}, {"page-go-label", "Make the labels"}, {"page-go-certificate", "Issue the certificate"}, {"page-write-anyway", "Write it down all the same"}, {"page-look", "See what will be written"}, {"page-not-yet", "Nothing can be written yet"}, {"page-nothing-found", "Nothing is recorded with these words. Try others, or the number."},
	{"page-secret", "kept private, outside the journal"}, {"page-look-at-paper", "Look at the PDF first"},
	{"page-step-done", "done"}, {"page-step-open", "to do"},
	{"page-build-up", "Build-up today"}, {"page-build-up-was", "Build-up as it was after"}, {"page-layers", "Layers, from the board outwards"}, {"page-nothing-on", "nothing recorded"},
	{"page-findings", "What the rules find"}, {"page-findings-rest", "other rules hold or do not apply"}, {"page-gaps-are", "Not recorded yet"}, {"page-answer-now", "Answer one now:"},
	{"page-story", "What happened"}, {"page-as-it-was", "drawing after this"}, {"page-photographs", "Photographs"}, {"page-take-picture", "Take or choose a photograph"}, {"page-keep-picture", "Keep it"},
	{"page-shows", "It shows"}, {"page-caption", "Caption"}, {"page-to-whom", "To whom and for how much"}, {"page-to-finish", "Finish: sign, label, sell"}, {"page-dossier", "Dossier (PDF)"}, {"page-mended", "Corrections"},
	{"page-particulars", "Particulars"}, {"page-batch-of", "Batch"}, {"page-newer-panel", "A later program wrote about this panel: what stands here may be out of date."},
	{"page-scan-label", "Photograph a label to open its panel"}, {"page-scan-go", "Open the panel"}, {"page-next-lot", "Another of these"}, {"page-new-lot", "Put a lot on the shelf"},
	{"page-lots", "Lots"}, {"page-no-lot", "No lot of"}, {"page-used-on", "used on"}, {"page-expired", "expired"},
	{"page-code-is", "The code that the computer shows"}, {"page-device-name", "A name for this device"}, {"page-device-eg", "tablet on the wall"}, {"page-pair-go", "Pair"},
	{"page-pair-plain", "This is plain HTTP: in an open network others can listen. Use a network of your own."},
	{"page-pair-end", "End"}, {"page-pair-none", "No device is paired."}, {"page-since", "since"}, {"page-first-answer", "The record says"},
	{"page-take-it-back", "Take it back"}, {"page-amend-it", "Change a value"},

	{"page-state-sending", "Sending …"}, {"page-state-lost", "Not sent: the computer cannot be reached. Everything you filled in is still here."},
	{"page-state-back", "The computer is there again. It was not written: tap once more."}, {"page-state-was", "It was written."}, {"page-state-news", "Another device wrote something."},
	{"page-state-show", "Show it"}, {"page-count-left", "left"}, {"page-count-until", "until then"}, {"page-count-over", "over"},

	{"act-cut", "Cut panels"}, {"act-coat", "Coat"}, {"act-cloth", "Lay cloth"}, {"act-trim", "Trim"}, {"act-sand", "Sand"}, {"act-warm", "Warm air"}, {"act-bare", "Left bare"},
	{"act-no-cloth", "No cloth meant"}, {"act-inspect", "Inspect"}, {"act-note", "Note"}, {"act-discard", "Discard the panel"}, {"act-climate", "Read the air"}, {"act-paint", "Paint"},
	{"act-varnish", "Varnish"}, {"act-describe", "Describe the work"}, {"act-handover", "It leaves or comes back"}, {"act-lot", "Put a lot on the shelf"}, {"act-label", "Print labels"},
	{"act-certificate", "Issue the certificate"}, {"act-withdraw", "Take back"}, {"act-amend", "Put right"},

	{"in-as", "What for"}, {"in-with", "With what"}, {"in-mix", "A mix"}, {"in-on", "On which faces"}, {"in-extra", "Extra on"}, {"in-amount", "Wet amount, all panels together"},
	{"in-amount-each", "or wet amount for each"}, {"in-tool", "Tool"}, {"in-note", "Remark"}, {"in-thinned", "Water added"}, {"in-temp", "Temperature, °C"}, {"in-rh", "Relative humidity, %"},
	{"in-cloth", "Which cloth"}, {"in-wet-through", "Wet through"}, {"in-edges-pressed", "Edges pressed down"}, {"in-threads", "Warp and grain"}, {"in-again", "the same cloth as before, laid again"},
	{"in-oversize", "Cut oversize by"}, {"in-weighted", "Time under weights"}, {"in-eased", "Edges eased"}, {"in-grit", "Grit"}, {"in-grit-other", "or another grit"}, {"in-dusted", "Dust taken off"},
	{"in-through", "Sanded through"}, {"in-for", "How long"}, {"in-because", "Because"}, {"in-edges", "Edges"}, {"in-adhesion", "Cloth, tapped"}, {"in-remarks", "Remarks"}, {"in-bow", "Bow"}, {"in-span", "over"},
	{"in-hollow-to", "Hollow to"}, {"in-along", "Along"}, {"in-text", "Note"}, {"in-place", "Where"}, {"in-count", "How many"}, {"in-size", "Height × width × depth"}, {"in-board", "Of which board"},
	{"in-new-batch", "Name of the batch"}, {"in-grain", "The grain runs"}, {"in-cut-no-cloth", "these stay without cloth"}, {"in-nth", "{n}. {input}"},
	{"in-medium", "Medium"}, {"in-technique", "How"}, {"in-underdrawing", "Underdrawing"}, {"in-gloss", "Gloss"}, {"in-removable", "Can be taken off"}, {"in-removed-with", "Taken off with"},
	{"in-title", "Title"}, {"in-made", "Date of the work"}, {"in-signed", "Signed where and how"}, {"in-inscription", "Inscription"}, {"in-subject", "Subject"}, {"in-medium-line", "Medium line in your words"},
	{"in-features", "Marks to tell it by"}, {"in-own-reference", "Your own number"}, {"in-framed", "Framed"}, {"in-how", "How"}, {"in-to", "To whom"}, {"in-price", "Price"}, {"in-private-note", "Address or other private note"},
	{"in-key", "Name on the shelf"}, {"in-material", "Of which material"}, {"in-number", "Number on the tin"}, {"in-quantity", "How much"}, {"in-expires", "Expires"}, {"in-supplier", "Bought at"}, {"in-sheet", "Size of one sheet"},
	{"in-opened", "Opened"}, {"in-reason", "Why another"}, {"in-buyer", "Owner’s name, printed on it"}, {"in-entry", "Entry"}, {"in-why", "Why"}, {"in-at", "When"}, {"in-role", "It shows"},

	{"eg-amount", "430 g or 250 mL"}, {"eg-size", "30 x 40 cm x 3 mm"}, {"eg-for", "10 min"}, {"eg-mix", "3 primer + 1 sealer"}, {"eg-bow", "1.5 mm"}, {"eg-span", "60 cm"}, {"eg-made", "2026, 2026-05, 1998~"},
	{"eg-quantity", "2.5 L, 6 m, 2 sheets"}, {"eg-expires", "2027-03"}, {"eg-price", "38.50 EUR"}, {"eg-price-of-work", "for example 850 EUR"}, {"eg-thinned", "10 %"}, {"eg-weighted", "24 h"}, {"eg-oversize", "10 mm"}, {"eg-key", "sealer-2"}, {"eg-grit-other", "P400 or CAMI 220"},

	{"why-wrong-panels", "wrong panels"}, {"why-wrong-amount", "wrong amount"}, {"why-wrong-lot", "wrong tin or bolt"}, {"why-not-done", "it was not done"}, {"why-twice", "written down twice"},

	{"hint-coat-of-nothing", "Leave it out if it was not measured."}, {"hint-no-faces", "Tick the faces."}, {"hint-no-key", "The computer can make a key."},
	{"hint-no-passphrase", "Start the page with the passphrase of the key."}, {"hint-no-cloth-before", "Leave “laid again” out: the cloth is laid for the first time."},
	{"hint-not-finished", "Write down the paint or the title first."}, {"hint-time-not-read", "Say 14:05, or yesterday 16:30."}, {"hint-several-lots", "Choose the one you used."},
	{"hint-two-readings", "Write the one that is meant."}, {"hint-panel-away", "Leave it out, or bring it back first."}, {"hint-panels-not-read", "Say how many, and a size like 30 x 40 cm x 3 mm."},
	{"hint-bow-without-span", "Say over which length the bow was measured."}, {"hint-room-temperature", "Was it measured in °F?"}, {"hint-lot-there", "Choose another name for another tin."},
}
