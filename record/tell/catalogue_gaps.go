package tell

// englishGaps say what nobody recorded: {what} is one of the others.
var englishGaps = table{
	{"gap", "{topic}: {what}"},
	{"gap-unknown", "{topic}: {what} (recorded as unknown)"},
	{"recorded-as-unknown", "{what} (not known)"},

	{"gap-size", "size"},
	{"gap-thickness", "thickness"},
	{"gap-board", "kind of board"},
	{"gap-board-lot", "lot of the board"},
	{"gap-grain", "run of the grain"},
	{"gap-cutting-date", "date of cutting"},
	{"gap-sealing", "{face, number, plur {whether the {face} are sealed} other {whether the {face} is sealed}}"},

	{"gap-cloth", "which cloth"},
	{"gap-cloth-lot", "lot of the cloth"},
	{"gap-thread-run", "run of the threads"},

	{"gap-date", "date"},
	{"gap-material", "which material"},
	{"gap-material-lot", "lot of {product}"},
	{"gap-amount", "amount"},
	{"gap-medium", "medium"},
	{"gap-pigments", "pigments"},
	{"gap-resin", "resin"},
	{"gap-removability", "whether it can be removed"},

	{"gap-title", "title"},
	{"gap-date-of-work", "date of the work"},
	{"gap-signature", "inscription or signature"},
	{"gap-front-photograph", "photograph of the front"},
}
