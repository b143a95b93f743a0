package main

import (
	"fmt"
	"strings"
)

// A tale is a short history of one panel: one line an entry, "KIND FIELDS", K
// for the panel. Beside it stands what is true of it where that is not what
// [taleTruth] says, typed from the history and not from what the program says.
type tale struct{ name, history, truth string }

// What most tales begin with.
const (
	taleStudio = `studio "maker":"Ada Example","mark":"KB","place":"Riga, Latvia","contact":"studio@example.org"`
	talePly    = `material "key":"b","name":"birch plywood","uses":["board"],"board":{"kind":"plywood","species":"birch","species_kind":"birch"}`
	taleCut    = `cut "batch":"may","size":"30 x 40 cm x 3 mm","board":"b","year":2026,"recorded":"as-made","at":"2026-05-02",K`
	taleBegun  = talePly + "\n" + taleCut
	talePaint  = `paint "medium":"oil","at":"2026-05-20",K`
	taleTitle  = `described "title":"Low tide","made":"2026","framed":"no",K`
	taleWhole  = taleBegun + "\n" + talePaint + "\n" + taleTitle
	taleSealed = `material "key":"s","name":"the sealer","uses":["sealer"],"binder":"acrylic-dispersion"` + "\n" +
		`coat "purpose":"sealer","faces":["front","back","edges"],"mix":[{"parts":1,"material":"s"}],"at":"2026-05-03",K`
	talePrimed = `material "key":"g","name":"the ground","uses":["ground"],"binder":"acrylic-dispersion"` + "\n" +
		`coat "purpose":"ground","faces":["front"],"mix":[{"parts":1,"material":"g"}],"at":"2026-05-04",K`
	taleLaid = `material "key":"a","name":"the glue","uses":["adhesive"],"binder":"acrylic-dispersion"` + "\n" +
		`material "key":"l","name":"fine linen","uses":["cloth"],"cloth":{"fibre":"linen","weave":"plain"}` + "\n" +
		`cloth "faces":["front"],"cloth":"l","mix":[{"parts":1,"material":"a"}],"at":"2026-05-03",K`
	taleDone = taleBegun + "\n" + taleSealed + "\n" + taleLaid + "\n" + talePrimed + "\n" + talePaint + "\n" + taleTitle
	// All faces sealed, cloth, ground.
	taleDoneIs = " front=sealed back=sealed edges=sealed cloth=laid ground=laid"
)

func holding(pigments string) string {
	return taleWhole + "\n" + `paint "medium":"oil","at":"2026-05-21","pigments":[` + pigments + `],K`
}

func byName(pigment string) string { return `{"name":"` + pigment + `"}` }

func varnishing(material, fields string) string {
	return taleWhole + "\n" + `material "key":"v","name":"the varnish","uses":["varnish"],"binder":"hydrocarbon-resin"` + material + "\n" +
		`varnish "at":"2026-06-01","mix":[{"parts":1,"material":"v"}]` + fields + `,K`
}

// off takes layers off again: those of the last entry that begins so.
func off(history, begins, what, extent string) string {
	seq := 0
	for i, line := range strings.Split(history, "\n") {
		if strings.HasPrefix(line, begins) {
			seq = i + 2 // the studio stands before it
		}
	}
	return history + fmt.Sprintf("\n"+`removed "layers":[%d],"at":"2030-05-01","what":"%s","extent":"%s","by":"R. Invented",K`, seq, what, extent)
}

func described(fields string) string { return taleWhole + "\n" + `described ` + fields + `,K` }

func swapped(history, old, new string) string {
	if !strings.Contains(history, old) {
		panic(old)
	}
	return strings.Replace(history, old, new, 1)
}

func coat(purpose, faces string) string {
	return taleWhole + "\n" + `material "key":"s","name":"the product","uses":["sealer"],"binder":"acrylic-dispersion"` + "\n" +
		`coat "purpose":"` + purpose + `","faces":[` + faces + `],"mix":[{"parts":1,"material":"s"}],"at":"2026-05-03",K`
}

var tales = []tale{
	{"plain", taleWhole, ""},
	{"afterwards", swapped(taleWhole, "as-made", "afterwards"), "recorded=after varnish=open cloth=open ground=open front=open back=open edges=open sanded=open"},

	// Each hazard, as held, as possible, as ruled out.
	{"lead", holding(`{"name":"lead white","colour_index":"PW 1"}`), "harm=held lead=held"},
	{"lead and antimony", holding(`{"name":"Naples yellow","colour_index":"PY 41"}`), "harm=held lead=held antimony=held"},
	{"cadmium", holding(`{"name":"cadmium red","colour_index":"PR 108"}`), "harm=held cadmium=held"},
	{"mercury", holding(`{"name":"vermilion","colour_index":"PR 106"}`), "harm=held mercury=held"},
	{"lead and chromate", holding(`{"name":"chrome yellow","colour_index":"PY 34"}`), "harm=held lead=held chromium-vi=held"},
	{"arsenic", holding(`{"name":"emerald green","colour_index":"PG 21"}`), "harm=held arsenic=held"},
	{"barium", holding(`{"name":"lemon yellow","colour_index":"PY 31"}`), "harm=held barium=held chromium-vi=held"},
	{"an index alone", holding(byName("PW 1")), "harm=held lead=held"},
	{"a name that is two things", holding(byName("Naples yellow")), "harm=may lead=may antimony=may cadmium=may"},
	{"a hue", holding(byName("cadmium yellow hue")), ""},
	{"a name unknown", holding(byName("studio mixture no. 4")), ""},
	{"titanium white", holding(`{"name":"titanium white","colour_index":"PW 6"}`), ""},
	{"harmless", swapped(taleWhole, talePaint, `paint "medium":"oil","pigments":[{"name":"titanium white","colour_index":"PW 6"}],"at":"2026-05-20",K`), "harm=none"},
	{"lead, one of two", holding(`{"name":"titanium white","colour_index":"PW 6"},{"name":"lead white","colour_index":"PW 1"}`), "harm=held lead=held"},
	{"recorded as harmful", varnishing(`,"toxic_dry":"yes"`, ""), "harm=held varnish=on removable=unrecorded"},
	{"lead, taken off", off(holding(`{"name":"lead white","colour_index":"PW 1"}`), "paint", "paint", "whole"), ""},
	{"lead, taken off in part", off(holding(`{"name":"lead white","colour_index":"PW 1"}`), "paint", "paint", "in-part"), "harm=held lead=held"},
	{"lead, perhaps taken off", off(holding(`{"name":"lead white","colour_index":"PW 1"}`), "paint", "paint", "unknown"), "harm=may lead=may"},

	// Varnish and what takes it off.
	{"varnish that comes off", varnishing("", `,"removable":"yes","removed_with":"white spirit","removed_with_kind":"white-spirit"`), "varnish=on removable=yes"},
	{"varnish that stays", varnishing("", `,"removable":"no"`), "varnish=on removable=no"},
	{"varnish not known", varnishing("", `,"removable":"unknown"`), "varnish=on removable=unknown"},
	{"varnish not recorded", varnishing("", ""), "varnish=on removable=unrecorded"},
	{"varnish as the product", varnishing(`,"removable":"yes","removed_with":"white spirit","basis":"data sheet","basis_kind":"data-sheet"`, ""), "varnish=on removable=yes"},

	// Each removed layer.
	{"varnish taken off", off(varnishing("", ""), "varnish", "varnish", "whole"), "varnish=off"},
	{"varnish taken off in part", off(varnishing("", `,"removable":"yes"`), "varnish", "varnish", "in-part"), "varnish=part removable=yes"},
	{"varnish reduced", off(varnishing("", `,"removable":"yes"`), "varnish", "varnish", "reduced"), "varnish=part removable=yes"},
	{"varnish perhaps taken off", off(varnishing("", `,"removable":"yes"`), "varnish", "varnish", "unknown"), "varnish=part removable=yes"},
	{"varnish that is not on record", taleWhole + "\n" + `removed "what":"varnish","extent":"whole","at":"2030-05-01",K`, ""},
	{"retouching taken off", taleWhole + "\n" + `removed "what":"retouching","extent":"whole","at":"2030-05-01",K`, ""},
	{"paint taken off", off(taleDone, "paint", "paint", "whole"), taleDoneIs + " paint=off"},
	{"ground taken off", off(taleDone, `coat "purpose":"ground"`, "ground", "whole"), taleDoneIs + " ground=off"},
	{"cloth taken off", off(taleDone, "cloth", "cloth", "whole"), taleDoneIs + " cloth=off"},
	{"sealer taken off", off(coat("sealer", `"back"`), "coat", "sealer", "whole"), "back=nothing"},
	{"barrier taken off", off(coat("barrier", `"back"`), "coat", "barrier", "whole"), "back=nothing"},
	{"size taken off", off(coat("size", `"front","back"`), "coat", "size", "whole"), "back=nothing"},
	{"isolation taken off", off(coat("isolation", `"front"`), "coat", "isolation", "whole"), ""},
	{"cloth laid again", taleDone + "\n" + `cloth "faces":["front"],"cloth":"l","again_of":8,"mix":[{"parts":1,"material":"a"}],"at":"2027-05-03",K`, taleDoneIs},

	// Faces and cloth.
	{"done", taleDone, taleDoneIs},
	{"a back left bare", taleWhole + "\n" + `left-bare "faces":["back"],"at":"2026-05-20",K`, "back=bare"},
	{"a front left bare", swapped(taleWhole, talePaint, `left-bare "faces":["front"],"at":"2026-05-20",K`), "front=bare paint=none painter=-"},
	{"a ground on the back", taleWhole + "\n" + strings.ReplaceAll(talePrimed, `"front"`, `"back"`), "back=coated ground=laid"},
	{"edges sealed", coat("sealer", `"edges"`), "edges=sealed"},
	{"a coat on faces not known", coat("sealer", `"unknown"`), "front=open back=open edges=open"},
	{"a coat for a purpose not known", coat("unknown", `"back"`), "back=open"},
	{"meant to carry no cloth", taleWhole + "\n" + `intended "cloth":"no",K`, "cloth=meant-none"},
	{"which cloth is not known", swapped(taleDone, `"cloth":"l"`, `"cloth":"unknown"`), taleDoneIs},

	// Each other unknown.
	{"board not known", swapped(swapped(taleWhole, `"board":"b"`, `"board":"unknown"`), talePly, `material "key":"b","name":"x","uses":["board"]`), "board=open"},
	{"sides not known", swapped(taleWhole, "30 x 40 cm x 3 mm", "unknown x unknown"), "size=unknown"},
	{"cut down", taleWhole + "\n" + `resized "how":"cut-down","size_before":"30 x 40 cm","size":"25 x 40 cm","at":"2030-01-01",K`, "size=25x40"},
	{"date not known", described(`"made":"unknown"`), "date=unknown"},
	{"date not recorded", swapped(taleWhole, `"made":"2026",`, ""), "date=unrecorded"},
	{"about 1998", described(`"made":"1998~"`), "date=1998"},
	{"signed", described(`"signed":"lower right"`), "signed=yes"},
	{"whether signed is not known", described(`"signed":"unknown"`), "signed=unknown"},
	{"an edition", described(`"edition":"2 of 3"`), "edition=some"},
	{"edition not known", described(`"edition":"unknown"`), "edition=unknown"},
	{"framed", swapped(taleWhole, `"framed":"no"`, `"framed":"yes"`), "framed=yes"},
	{"frame not recorded", swapped(taleWhole, `,"framed":"no"`, ""), "framed=unrecorded"},
	{"medium not known", swapped(taleWhole, `"medium":"oil"`, `"medium":"unknown"`), "medium=unknown"},
	{"another painter", swapped(taleWhole, talePaint, `maker "key":"bo","name":"Bo Other"`+"\n"+swapped(talePaint, "K", `"makers":[{"maker":"bo"}],K`)), "painter=bo"},
	{"sanded", taleWhole + "\n" + `sanded "faces":["front"],"scale":"P","grit":180,"at":"2026-05-22",K`, "sanded=yes"},

	// What became of it.
	{"examined", taleWhole + "\n" + `condition "by":"R. Invented","text":"sound, but for a scratch","at":"2030-02-03",K`, "condition=seen"},
	{"inspected", taleWhole + "\n" + `inspection "edges":"sound","adhesion":"sound","at":"2030-02-03",K`, "condition=seen"},
	{"treated", taleWhole + "\n" + `treatment "by":"R. Invented","text":"loose corner laid down","at":"2031-03-12",K`, "treated=yes"},
	{"sold", taleWhole + "\n" + `handed-over "how":"sale","at":"2027-01-01",K`, "where=sale"},
	{"lent and come back", taleWhole + "\n" + `handed-over "how":"loan","at":"2027-01-01",K` + "\n" + `handed-over "how":"return","at":"2027-06-01",K`, ""},
	{"stolen", taleWhole + "\n" + `handed-over "how":"theft","at":"2027-01-01",K`, "where=theft"},
	{"discarded", taleWhole + "\n" + `discarded "because":"split","at":"2027-01-01",K`, "where=discarded"},
	{"corrected", taleWhole + "\n" + `amended "entry":4,"because":"misread","change":{"medium":"alkyd"},K`, "corrected=yes medium=alkyd"},
}
