package trade

// A misleadingRow is a name that stands for more than one thing. What it may
// be are generic names, a + joining the parts of a mixture; open means that it
// may be something else again.
type misleadingRow struct {
	names string
	maybe string // candidates, separated by commas
	open  bool
	from  string
}

var misleading = []misleadingRow{
	{"emerald green", "PG 21, PG 7+PW 4, PG 36+PW 4, PG 7+PW 5, PG 36+PW 5", true, "CAMEO WebExhibits maker-pigment-pages"},
	{"vert Véronèse", "PG 21, PG 7, PG 17", true, "CAMEO memory"},
	{"Veronese green|Smaragdgrün", "PG 7, PG 17, PG 18", true, "memory"},
	{"Naples yellow|Neapelgelb|jaune de Naples", "PY 41, PY 53, PBr 24, PW 4+PY 97+PR 101, PY 35+PW 6+PW 4", true, "AAT-Naples maker-pigment-pages"},
	{"zinc green|Zinkgrün|vert de zinc", "PG 19, PY 36+PB 27", false, "CAMEO ColourLex"},
	{"permanent white", "PW 21, PW 4", true, "memory"},
	{"flake white|Cremnitz|silver white", "PW 1, PW 1+PW 4", true, "maker-pigment-pages"},
	{"titanium white|Titanweiß|blanc de titane", "PW 6, PW 6+PW 4", false, "maker-pigment-pages"},
	{"mixed white|mixing white|soft white|Mischweiß|blanc mixte|blanc de mélange", "PW 6+PW 4", true, "memory"},
	{"Chinese white|Chinesischweiß|blanc de Chine", "PW 4", true, "Gettens-1942"},
	{"lemon yellow|citron yellow|Zitronengelb|jaune citron", "PY 31, PY 32, PY 34, PY 35, PY 3, PY 53", true, "WebExhibits HeritageSci-2017"},
	{"cerulean|Coelinblau|Cölinblau|bleu céruléum|céruléum", "PB 35, PB 36, PB 15+PW 4, PB 15+PW 6, PB 28", true, "CAMEO maker-pigment-pages"},
	{"cobalt green|Kobaltgrün|vert de cobalt", "PG 19, PG 26, PG 50, PB 28+PY 34", false, "CAMEO"},
	{"cobalt violet|Kobaltviolett|violet de cobalt", "PV 14, PV 49", false, "CAMEO ColourLex"},
	{"manganese blue|Manganblau|bleu de manganèse", "PB 33, PB 15", true, "pigment-laboratory"},
	{"chrome green|vert de chrome", "PG 15, PG 17", true, "memory"},
	{"vermilion|Zinnober|Zinnoberrot|vermillon|cinnabar|cinabre", "PR 106, PR 254, PR 188, PR 108", true, "WebExhibits memory"},
	{"cinnabar green|Zinnobergrün|vert de cinabre", "PB 27+PY 34", true, "maker-pigment-pages"},
	{"minium", "PR 105, PR 106", false, "conservation-glossary"},
	{"English red|Venetian red|Indian red|Englischrot|rouge anglais|rouge de Venise", "PR 101, PR 102", false, "memory"},
	{"caput mortuum", "PR 101, PR 102, PV 19+PBk 11", true, "memory"},
	{"Indian yellow|Indischgelb|jaune indien", "PY 110, PY 139, PY 83", true, "maker-pigment-pages"},
	{"sap green|Hooker’s green|olive green|Saftgrün|Olivgrün|vert de vessie|vert olive", "", true, "memory"},
	{"madder|rose madder|madder lake|Krapplack|laque de garance", "NR 9, PR 83, PR 122", true, "memory"},
	{"sepia|Van Dyck brown|Vandyke brown|Van-Dyck-Braun|brun Van Dyck|sépia", "NBr 8, PBr 7+PBk 7", true, "memory"},
	{"gold|silver|bronze|copper|Silber|Kupfer|argent|cuivre", "PW 20+PW 6, PW 20+PR 101, PM 1, PM 2, PM 3", true, "memory"},
	{"Mars yellow|Mars red|Mars black|ferrite|transparent oxide|transparent yellow oxide|transparent red oxide", "PY 42, PR 101, PBk 11", false, "memory"},
	{"ultramarine yellow|Ultramaringelb|jaune d’outremer", "PY 31, PY 36", false, "ColourLex WebExhibits"},
}

// stems are the beginnings of words that name a metal outright, for names that
// no table lists: "cadmium barium yellow", "Kadmiumrot tief". Zinc stands for
// any form.
var stems = []struct {
	stem  string
	holds string
	zinc  string
}{
	{"cadmium", "cadmium", ""}, {"kadmium", "cadmium", ""}, {"mercadium", "cadmium mercury", ""},
	{"lead", "lead", ""}, {"plomb", "lead", ""}, {"blei", "lead", ""},
	{"arsen", "arsenic", ""}, {"realgar", "arsenic", ""}, {"mercur", "mercury", ""}, {"quecksilber", "mercury", ""},
	{"chromat", "chromium-vi", ""}, {"antimon", "antimony", ""},
	{"cobalt", "cobalt", ""}, {"kobalt", "cobalt", ""}, {"nickel", "nickel", ""}, {"mangan", "manganese", ""},
	{"zinc", "", "some-form oxide? sulfide? chromate? bound? metal?"}, {"zink", "", "some-form oxide? sulfide? chromate? bound? metal?"},
}

// unlike are words that begin like a stem and name something else.
var unlike = map[string]bool{"bleistift": true, "leading": true, "leader": true}
