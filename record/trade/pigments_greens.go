package trade

// Green pigments. The columns are those of [pigmentRow].
var greens = []pigmentRow{
	{index: "PG 7", names: "phthalo green|Phthalogrün|vert phtalo", light: "excellent", from: "memory"},
	{index: "PG 8", names: "nitroso green|Nitrosogrün", light: "fair", from: "memory"},
	{index: "PG 10", names: "nickel azo green-gold|Nickelazogrün|or vert nickel", holds: "nickel", light: "good", from: "memory"},
	{index: "PG 15", names: "Brunswick green|Chromgrün", holds: "lead chromium-vi", light: "fair", from: "Gettens-1942 memory"},
	{index: "PG 17", names: "chromium oxide green|Chromoxidgrün|Chromoxidgrün stumpf|vert oxyde de chrome", light: "excellent", from: "pigment-handbook memory"},
	{index: "PG 18", names: "viridian|Guignet’s green|Chromoxidhydratgrün|Guignetgrün|vert émeraude|verde esmeralda|vert Guignet", light: "excellent", from: "memory"},
	{index: "PG 19", names: "Rinman’s green|Rinmanns Grün", holds: "cobalt", light: "excellent", zinc: "oxide", from: "CAMEO Gettens-1942"},
	{index: "PG 20", names: "verdigris|Grünspan|vert-de-gris", light: "changes", from: "Field memory"},
	{index: "PG 21", names: "Schweinfurt green|Schweinfurter Grün|Paris green|vert de Schweinfurt", holds: "arsenic", light: "good", from: "CAMEO WebExhibits"},
	{index: "PG 22", names: "Scheele’s green|Scheeles Grün|vert de Scheele", holds: "arsenic", light: "fair", from: "Field memory"},
	{index: "PG 23", names: "green earth|terre verte|Grüne Erde", light: "excellent", from: "Gettens-1942 memory"},
	{index: "PG 24", names: "ultramarine green|Ultramaringrün|vert d’outremer", light: "good", from: "memory"},
	{index: "PG 26", names: "cobalt chromite green|Kobaltchromgrün|vert cobalt-chrome", holds: "cobalt", bound: true, light: "excellent", from: "memory"},
	{index: "PG 36", names: "phthalo green|Phthalogrün gelblich|vert phtalo jaunâtre", light: "excellent", from: "memory"},
	{index: "PG 39", names: "malachite|Malachit", light: "excellent", from: "Gettens-1942 memory"},
	{index: "PG 50", names: "cobalt titanate green|cobalt teal|Kobalttitangrün|vert cobalt-titane", holds: "cobalt", some: "nickel", bound: true, light: "excellent", zinc: "bound?", from: "supplier-tables memory"},
}
