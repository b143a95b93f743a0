package trade

// White pigments and fillers. The columns are those of [pigmentRow].
var whites = []pigmentRow{
	{index: "PW 1", names: "lead white|white lead|Cremnitz white|Cremnitzer Weiß|Bleiweiß|Kremser Weiß|Kremserweiß|blanc de plomb|blanc d’argent|céruse", holds: "lead", light: "excellent", from: "maker-pigment-pages memory"},
	{index: "PW 2", names: "basic lead sulfate|sublimed lead|basisches Bleisulfat|sulfate basique de plomb", holds: "lead", light: "excellent", from: "memory"},
	{index: "PW 4", names: "zinc white|zinc oxide|Zinkweiß|blanc de zinc|blanc de neige", light: "excellent", zinc: "oxide", from: "Gettens-1942"},
	{names: "leaded zinc white|leaded zinc oxide", holds: "lead", light: "excellent", zinc: "oxide", from: "memory"},
	{index: "PW 5", names: "lithopone|Charlton white|Orr’s white|enamel white|Lithopon|lithopone", light: "changes", zinc: "sulfide oxide?", from: "lithopone-dictionaries Gettens-1942 memory"},
	{index: "PW 6", names: "titanium dioxide|blanc de titane rutile", light: "excellent", from: "memory"},
	{index: "PW 7", names: "zinc sulfide white|Zinksulfidweiß|blanc de sulfure de zinc", light: "fair", zinc: "sulfide", from: "memory"},
	{index: "PW 10", names: "witherite|barium carbonate|Witherit|carbonate de baryum", holds: "barium", light: "excellent", from: "memory"},
	{index: "PW 11", names: "antimony white|Antimonweiß|blanc d’antimoine", holds: "antimony", light: "excellent", from: "CSA-pigments memory"},
	{index: "PW 18", names: "chalk|whiting|marble dust|Kreide|Champagnerkreide|craie|blanc de Meudon", light: "excellent", from: "Gettens-1942 memory"},
	{index: "PW 19", names: "china clay|kaolin|Kaolin|Porzellanerde", light: "excellent", from: "memory"},
	{index: "PW 20", names: "mica|Glimmer", light: "excellent", from: "memory"},
	{index: "PW 21, PW 22", names: "blanc fixe|barytes|Permanentweiß|Schwerspat|barytine", light: "excellent", from: "Gettens-1942 memory"},
	{index: "PW 25", names: "gypsum|terra alba|Gips|gypse|plâtre", light: "excellent", from: "Gettens-1942 memory"},
	{index: "PW 26", names: "talc|Talkum", light: "excellent", from: "memory"},
	{index: "PW 16", names: "basic lead silicate", holds: "lead", from: "memory"},
}
