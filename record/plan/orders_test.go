package plan

// painterOrders are twenty invented orders of painters, in millimetres, with what another program,
// a prototype of the same search, used up: board in m², sheets, and the bound it reported.
var painterOrders = []struct {
	name        string
	kerf        float64
	pieces      []mmPiece
	sheets      []mmSheet
	least       int
	used, bound float64
}{
	{"01 six small studies, quarter sheet hardboard", 2, []mmPiece{{250, 200, Free, 4}, {400, 300, Free, 2}}, []mmSheet{{"quarter 1220x610", 1220, 610, 5, Free, false, -1}}, 1, 0.486416, 0.486416},
	{"02 dozen 30x40 and dozen 24x30, MDF", 3, []mmPiece{{400, 300, Free, 12}, {300, 240, Free, 12}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}, {"quarter 1220x610", 1220, 610, 5, Free, false, -1}}, 1, 2.350794, 2.348856},
	{"03 class set of twenty 30x30", 3, []mmPiece{{300, 300, Free, 20}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}}, 1, 1.837695, 1.837695},
	{"04 mixed exhibition set, MDF", 3, []mmPiece{{800, 600, Free, 4}, {600, 500, Free, 4}, {500, 400, Free, 6}, {400, 300, Free, 8}, {200, 200, Free, 10}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}}, 2, 5.876985, 5.873346},
	{"05 portrait set in birch ply, grain upright", 2.5, []mmPiece{{500, 400, First, 6}, {600, 500, First, 4}, {400, 300, First, 8}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, First, false, -1}}, 2, 3.5586875, 3.5586875},
	{"06 landscape and portrait formats, grain along the height", 2.5, []mmPiece{{400, 500, First, 5}, {500, 400, First, 5}, {300, 600, First, 6}, {300, 250, First, 8}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, First, false, -1}}, 2, 4.04671875, 4.04671875},
	{"07 one large and many small", 3, []mmPiece{{1200, 1000, Free, 1}, {240, 180, Free, 20}, {300, 240, Free, 10}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}}, 1, 2.885538, 2.885538},
	{"08 sixty miniatures", 2, []mmPiece{{150, 100, Free, 30}, {180, 130, Free, 20}, {240, 180, Free, 10}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}, {"quarter 1220x610", 1220, 610, 5, Free, false, -1}}, 2, 1.456824, 1.38604},
	{"09 squares only", 3, []mmPiece{{800, 800, Free, 2}, {600, 600, Free, 3}, {400, 400, Free, 6}, {300, 300, Free, 8}, {200, 200, Free, 8}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}}, 2, 4.546324, 4.539046},
	{"10 tight fit: four 60x60 per quarter of the sheet", 3, []mmPiece{{600, 600, Free, 8}, {300, 300, Free, 4}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}}, 2, 3.318768, 3.318768},
	{"11 exact halves: 122x61 lost to the kerf", 3, []mmPiece{{1220, 610, Free, 3}, {600, 400, Free, 4}}, []mmSheet{{"full 2440x1220", 2440, 1220, 0, Free, false, -1}}, 2, 3.480658, 3.480658},
	{"12 with three offcuts to use first", 2.5, []mmPiece{{400, 300, Free, 8}, {300, 240, Free, 6}, {500, 400, Free, 4}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}, {"offcut a", 1200, 400, 0, Free, true, 1}, {"offcut b", 800, 620, 0, Free, true, 1}, {"offcut c", 610, 330, 0, Free, true, 2}}, 3, 2.3972875, 2.2232125},
	{"13 eight sizes, forty pieces", 3, []mmPiece{{240, 180, Free, 6}, {250, 200, Free, 6}, {300, 240, Free, 6}, {400, 300, Free, 6}, {450, 350, Free, 4}, {500, 400, Free, 4}, {700, 500, Free, 4}, {900, 600, Free, 4}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}}, 3, 6.960194, 6.800078},
	{"14 inch sizes on an inch sheet", 3.2, []mmPiece{{254, 203, Free, 10}, {356, 279, Free, 8}, {406, 305, Free, 8}, {508, 406, Free, 6}, {610, 457, Free, 4}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}}, 2, 4.93626816, 4.87803456},
	{"15 diptychs, grain matched", 2.5, []mmPiece{{700, 500, First, 8}, {700, 350, First, 4}, {700, 200, First, 4}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, First, false, -1}}, 2, 5.1569, 5.1569},
	{"16 panoramas", 3, []mmPiece{{300, 1200, Free, 5}, {300, 900, Free, 5}, {200, 600, Free, 8}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}}, 2, 4.303724, 4.292807},
	{"17 big commission, several sheets", 3, []mmPiece{{1000, 1000, Free, 4}, {1000, 800, Free, 4}, {800, 600, Free, 6}, {500, 500, Free, 8}, {400, 300, Free, 12}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}}, 6, 15.730184, 15.730184},
	{"18 golden rectangles", 2.4, []mmPiece{{1000, 618, Free, 3}, {618, 382, Free, 5}, {382, 236, Free, 8}, {236, 146, Free, 12}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}}, 2, 4.45810272, 4.45810272},
	{"19 quarter sheets only, ply grain along the length", 2, []mmPiece{{400, 300, First, 8}, {300, 240, First, 8}, {200, 200, Free, 12}, {600, 400, First, 2}}, []mmSheet{{"quarter 1220x610", 1220, 610, 5, First, false, -1}}, 5, 3.16332, 3.161704},
	{"20 two-sheet limit, odd sizes", 3, []mmPiece{{583, 437, Free, 7}, {437, 291, Free, 9}, {349, 217, Free, 9}, {731, 523, Free, 3}, {211, 163, Free, 14}}, []mmSheet{{"full 2440x1220", 2440, 1220, 5, Free, false, -1}}, 2, 5.608065, 5.430601},
}
