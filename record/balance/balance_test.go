package balance_test

import (
	"math"
	"testing"

	"backleaf/record"
	"backleaf/record/balance"
	"backleaf/record/measure"
)

type rng = balance.Range

// Boards of the worked cases.
var (
	ply3   = balance.BoardOf(balance.Sheet{Kind: record.Plywood, ThicknessMicrons: 3000, Plies: 3, Species: "birch"})
	ply36  = balance.BoardOf(balance.Sheet{Kind: record.Plywood, ThicknessMicrons: 3600, Plies: 3, Species: "birch"})
	ply64  = balance.BoardOf(balance.Sheet{Kind: record.Plywood, ThicknessMicrons: 6400, Plies: 5, Species: "birch"})
	ply92  = balance.BoardOf(balance.Sheet{Kind: record.Plywood, ThicknessMicrons: 9200, Plies: 7, Species: "birch"})
	ply12  = balance.BoardOf(balance.Sheet{Kind: record.Plywood, ThicknessMicrons: 12000, Plies: 9, Species: "birch"})
	ply148 = balance.BoardOf(balance.Sheet{Kind: record.Plywood, ThicknessMicrons: 14800, Plies: 11, Species: "birch"})
	ply176 = balance.BoardOf(balance.Sheet{Kind: record.Plywood, ThicknessMicrons: 17600, Plies: 13, Species: "birch"})
	mdf3   = balance.BoardOf(balance.Sheet{Kind: record.MDF, ThicknessMicrons: 3000})
	mdf6   = balance.BoardOf(balance.Sheet{Kind: record.MDF, ThicknessMicrons: 6000})
	mdf19  = balance.BoardOf(balance.Sheet{Kind: record.MDF, ThicknessMicrons: 19000})
	hb32   = balance.BoardOf(balance.Sheet{Kind: record.TemperedHardboard, ThicknessMicrons: 3200})
	wood25 = balance.BoardOf(balance.Sheet{Kind: record.SolidWood, ThicknessMicrons: 25000})
	acm3   = balance.BoardOf(balance.Sheet{Kind: record.AluminiumComp, ThicknessMicrons: 3000, SkinMicrons: 300})
)

func film(kind balance.Kind, um float64) balance.Layer {
	return balance.Film(kind, false, balance.Exactly(um), balance.Estimated, balance.Room)
}

func acrylic(um float64) balance.Layer { return film("acrylic-dispersion", um) }

func ground(um float64) balance.Layer {
	return balance.Film("acrylic-dispersion", true, balance.Exactly(um), balance.Estimated, balance.Room)
}

func painted(l balance.Layer) balance.Layer { l.Picture = true; return l }

var cloth = balance.ClothLayer("", balance.UsualCloth, balance.UsualCloth, balance.Room)

func face(ls ...balance.Layer) []balance.Layer { return ls }

// The amounts of the worked panels: 430 g of sealer of 1.04 g/mL and 42 %
// volume solids on fourteen panels of 300 × 400 × 3 mm, both faces and edges, the
// edges twice; 390 g laid under the cloth; 290 g more on thirteen backs; 260 g
// of ground of 1.35 g/mL and 38 %, thinned by a tenth, on thirteen fronts; 220 g
// of it on twelve backs.
var (
	sealed  = dry(430, 1.04, 14*(2*0.12+2*2*0.7*0.003), 0.42, 0)
	glued   = dry(390, 1.04, 14*0.12, 0.42, 0)
	second  = dry(290, 1.04, 13*0.12, 0.42, 0)
	grounds = dry(260, (1.35+0.1*0.998)/1.1, 13*0.12, 0.38, 0.1)
	primed  = dry(220, (1.35+0.1*0.998)/1.1, 12*0.12, 0.38, 0.1)
)

func dry(grams, density, squareMetres, solids, thinner float64) float64 {
	um, err := measure.DryMicrons(grams/density/squareMetres, solids, thinner)
	if err != nil {
		panic(err)
	}
	return um
}

// same holds a figure to the four digits it is given with.
func same(t *testing.T, what string, got, want float64) {
	t.Helper()
	unit := 1e-9
	if want != 0 {
		unit = math.Pow(10, math.Floor(math.Log10(math.Abs(want)))-3)
	}
	if !(math.Abs(got-want) <= 0.501*unit) {
		t.Errorf("%s: %.6g, want %.4g", what, got, want)
	}
}

func sameRange(t *testing.T, what string, got, want rng) {
	t.Helper()
	same(t, what+", low", got.Low, want.Low)
	same(t, what+", high", got.High, want.High)
}

func panel(b balance.Board, height, width float64, grain record.Grain, front, back []balance.Layer) *balance.Panel {
	return &balance.Panel{HeightMicrons: height * 1000, WidthMicrons: width * 1000, Grain: grain, Board: b, Front: front, Back: back}
}

type side struct{ stiffness, moment, curvature, bowMM rng }

func sameSide(t *testing.T, what string, b balance.Bow, want side) {
	t.Helper()
	sameRange(t, what+": stiffness", b.StiffnessNewtonMetres, want.stiffness)
	sameRange(t, what+": moment", b.MomentNewtons, want.moment)
	sameRange(t, what+": curvature", b.CurvaturePerMetre, want.curvature)
	sameRange(t, what+": bow", rng{Low: b.BowMicrons.Low / 1000, High: b.BowMicrons.High / 1000}, want.bowMM)
}

// Panels by pull: stiffness N·m, moment N, curvature 1/m, bow mm. The figures
// were computed by an independent program in another language from the same
// sources; the glue gesso is that of a panel shown in a conservators'
// forum, 3/4 in birch plywood of 30 in, bowed by 1.5 to 2 mm.
func TestPanelsByPull(t *testing.T) {
	laid := face(acrylic(sealed), acrylic(glued), cloth)
	back := face(acrylic(sealed))
	gesso, lessGesso := face(film("glue-ground", 381)), face(film("glue-ground", 300))
	isolation := face(painted(acrylic(30)))
	oil := face(painted(film("drying-oil", 60)), painted(film("hydrocarbon-resin", 20)))
	dryOil := face(painted(balance.Film("drying-oil", false, balance.Exactly(60), balance.Estimated, balance.Dry)),
		painted(balance.Film("hydrocarbon-resin", false, balance.Exactly(20), balance.Estimated, balance.Dry)))
	twoCoats := face(acrylic(50), acrylic(45))
	barrier := film("alkyd", 60)
	for _, c := range []struct {
		name          string
		board         balance.Board
		height, width float64
		grain         record.Grain
		front, back   []balance.Layer
		wantHeight    side
		wantWidth     side
		outcome       balance.Outcome
		most          balance.Grade
	}{
		{"alike, mdf 6", mdf6, 600, 400, "height", face(acrylic(150)), face(acrylic(150)),
			side{rng{53.41, 95.99}, rng{-0.09, 0.09}, rng{-0.001685, 0.001685}, rng{-0.07583, 0.07583}},
			side{rng{53.41, 95.99}, rng{-0.09, 0.09}, rng{-0.001685, 0.001685}, rng{-0.0337, 0.0337}}, balance.Holds, balance.Negligible},
		{"square, plywood 3", ply3, 400, 400, "width", face(acrylic(50), acrylic(90), cloth), face(acrylic(50)),
			side{rng{1.458, 5.656}, rng{0.07325, 0.688}, rng{0.0129, 0.4718}, rng{0.258, 9.436}},
			side{rng{35.37, 38.12}, rng{0.07325, 0.688}, rng{0.001921, 0.01945}, rng{0.03841, 0.389}}, balance.Open, balance.Strong},
		{"nearly square, plywood 3", ply3, 399, 400, "width", face(acrylic(50), acrylic(90), cloth), face(acrylic(50)),
			side{rng{1.458, 5.656}, rng{0.07325, 0.688}, rng{0.0129, 0.4718}, rng{0.2567, 9.389}},
			side{rng{35.37, 38.12}, rng{0.07325, 0.688}, rng{0.001921, 0.01945}, rng{0.03841, 0.389}}, balance.Open, balance.Strong},
		{"cloth, plywood 3", ply3, 300, 400, "width", laid, back,
			side{rng{1.458, 5.659}, rng{0.07345, 0.6953}, rng{0.01293, 0.4768}, rng{0.1454, 5.364}},
			side{rng{35.37, 38.12}, rng{0.07345, 0.6953}, rng{0.001926, 0.01966}, rng{0.03851, 0.3931}}, balance.Open, balance.Strong},
		{"cloth, second back coat", ply3, 300, 400, "width", laid, face(acrylic(sealed), acrylic(second)),
			side{rng{1.458, 5.716}, rng{0.05093, 0.5986}, rng{0.0089, 0.4105}, rng{0.1001, 4.618}},
			side{rng{35.37, 38.18}, rng{0.05093, 0.5986}, rng{0.001334, 0.01692}, rng{0.02668, 0.3385}}, balance.Open, balance.Strong},
		{"cloth and ground", ply3, 300, 400, "width", face(acrylic(sealed), acrylic(glued), cloth, ground(grounds)), back,
			side{rng{1.458, 5.707}, rng{0.07345, 0.779}, rng{0.01279, 0.5341}, rng{0.1439, 6.009}},
			side{rng{35.37, 38.17}, rng{0.07345, 0.779}, rng{0.001923, 0.02202}, rng{0.03845, 0.4404}}, balance.Open, balance.Strong},
		{"ground on both faces", ply3, 300, 400, "width", face(acrylic(sealed), acrylic(glued), cloth, ground(grounds)), face(acrylic(sealed), acrylic(second), ground(primed)),
			side{rng{1.458, 5.796}, rng{0.03892, 0.6284}, rng{0.006697, 0.4309}, rng{0.07535, 4.848}},
			side{rng{35.37, 38.26}, rng{0.03892, 0.6284}, rng{0.001017, 0.01777}, rng{0.02034, 0.3553}}, balance.Open, balance.Strong},
		{"cloth, mdf 3", mdf3, 300, 400, "width", laid, back,
			side{rng{6.676, 12.03}, rng{0.07345, 0.6953}, rng{0.006092, 0.1041}, rng{0.06854, 1.172}},
			side{rng{6.676, 12.03}, rng{0.07345, 0.6953}, rng{0.006092, 0.1041}, rng{0.1218, 2.083}}, balance.Open, balance.Strong},
		{"cloth, hardboard 3.2", hb32, 300, 400, "width", laid, back,
			side{rng{9.302, 21.69}, rng{0.07746, 0.7357}, rng{0.003566, 0.07908}, rng{0.04012, 0.8897}},
			side{rng{9.302, 21.69}, rng{0.07746, 0.7357}, rng{0.003566, 0.07908}, rng{0.07132, 1.582}}, balance.Open, balance.Matters},
		{"cloth, plywood 6.4", ply64, 300, 400, "width", laid, back,
			side{rng{104, 116.6}, rng{0.1415, 1.382}, rng{0.001212, 0.01328}, rng{0.01364, 0.1494}},
			side{rng{278.2, 283.3}, rng{0.1415, 1.382}, rng{0.0004991, 0.004965}, rng{0.009983, 0.09931}}, balance.Holds, balance.Negligible},
		{"cloth, mdf 6", mdf6, 300, 400, "width", laid, back,
			side{rng{53.41, 95.69}, rng{0.1335, 1.301}, rng{0.001393, 0.02436}, rng{0.01568, 0.274}},
			side{rng{53.41, 95.69}, rng{0.1335, 1.301}, rng{0.001393, 0.02436}, rng{0.02787, 0.4872}}, balance.Holds, balance.Negligible},
		{"glue gesso, plywood 3", ply3, 300, 400, "width", gesso, lessGesso,
			side{rng{3.362, 13.13}, rng{-0.3948, 1.002}, rng{-0.1174, 0.298}, rng{-1.321, 3.353}},
			side{rng{37.29, 45.62}, rng{-0.3765, 1.185}, rng{-0.0101, 0.03178}, rng{-0.202, 0.6355}}, balance.Open, balance.Strong},
		{"glue gesso, plywood 17.6", ply176, 762, 762, "width", gesso, lessGesso,
			side{rng{3440, 3800}, rng{-2.272, 6.323}, rng{-0.0006603, 0.001838}, rng{-0.04793, 0.1334}},
			side{rng{4620, 4929}, rng{-2.271, 6.328}, rng{-0.0004916, 0.00137}, rng{-0.03568, 0.09941}}, balance.Holds, balance.Negligible},
		{"glue gesso, mdf 3", mdf3, 300, 400, "width", gesso, lessGesso,
			side{rng{8.586, 19.52}, rng{-0.3808, 1.142}, rng{-0.04435, 0.1331}, rng{-0.4989, 1.497}},
			side{rng{8.586, 19.52}, rng{-0.3808, 1.142}, rng{-0.04435, 0.1331}, rng{-0.8869, 2.661}}, balance.Open, balance.Strong},
		{"isolation, plywood 3", ply3, 300, 400, "width", isolation, nil,
			side{rng{1.458, 5.538}, rng{0, 0.04545}, rng{0, 0.03117}, rng{0, 0.3506}},
			side{rng{35.37, 38}, rng{0, 0.04545}, rng{0, 0.001285}, rng{0, 0.0257}}, balance.Holds, balance.Negligible},
		{"isolation, mdf 3", mdf3, 300, 400, "width", isolation, nil,
			side{rng{6.676, 11.91}, rng{0, 0.04545}, rng{0, 0.006808}, rng{0, 0.07659}},
			side{rng{6.676, 11.91}, rng{0, 0.04545}, rng{0, 0.006808}, rng{0, 0.1362}}, balance.Holds, balance.Negligible},
		{"isolation, plywood 6.4", ply64, 300, 400, "width", isolation, nil,
			side{rng{104, 116.1}, rng{0, 0.09645}, rng{0, 0.000927}, rng{0, 0.01043}},
			side{rng{278.2, 282.8}, rng{0, 0.09645}, rng{0, 0.0003466}, rng{0, 0.006933}}, balance.Holds, balance.Negligible},
		{"work balanced", ply3, 300, 400, "width", twoCoats, twoCoats,
			side{rng{1.458, 5.654}, rng{-0.0285, 0.0285}, rng{-0.01954, 0.01954}, rng{-0.2199, 0.2199}},
			side{rng{35.37, 38.12}, rng{-0.0285, 0.0285}, rng{-0.0008057, 0.0008057}, rng{-0.01611, 0.01611}}, balance.Holds, balance.Negligible},
		{"acrylic picture", ply3, 300, 400, "width", face(painted(acrylic(60)), painted(acrylic(30)), painted(film("hydrocarbon-resin", 20))), nil,
			side{rng{1.458, 5.582}, rng{0.016, 0.299}, rng{0.002856, 0.2051}, rng{0.03213, 2.307}},
			side{rng{35.37, 38.04}, rng{0.016, 0.299}, rng{0.0004204, 0.008454}, rng{0.008407, 0.1691}}, balance.Holds, balance.Strong},
		{"oil picture, plywood 3", ply3, 300, 400, "width", oil, nil,
			side{rng{1.458, 5.657}, rng{0.0157, 0.5517}, rng{0.002753, 0.3783}, rng{0.03098, 4.256}},
			side{rng{35.37, 38.12}, rng{0.0157, 0.5517}, rng{0.0004114, 0.0156}, rng{0.008228, 0.312}}, balance.Holds, balance.Strong},
		{"oil picture, mdf 6", mdf6, 300, 400, "width", oil, nil,
			side{rng{53.41, 95.69}, rng{0.0307, 1.089}, rng{0.0003202, 0.02039}, rng{0.003602, 0.2293}},
			side{rng{53.41, 95.69}, rng{0.0307, 1.089}, rng{0.0003202, 0.02039}, rng{0.006404, 0.4077}}, balance.Holds, balance.Negligible},
		{"oil picture, plywood 6.4", ply64, 300, 400, "width", oil, nil,
			side{rng{104, 116.6}, rng{0.0327, 1.16}, rng{0.00028, 0.01115}, rng{0.00315, 0.1255}},
			side{rng{278.2, 283.3}, rng{0.0327, 1.16}, rng{0.0001153, 0.00417}, rng{0.002307, 0.0834}}, balance.Holds, balance.Negligible},
		{"oil picture, dry air", ply3, 300, 400, "width", dryOil, nil,
			side{rng{1.458, 5.657}, rng{0.04324, 0.7392}, rng{0.007582, 0.5069}, rng{0.0853, 5.702}},
			side{rng{35.37, 38.12}, rng{0.04324, 0.7392}, rng{0.001133, 0.0209}, rng{0.02266, 0.4179}}, balance.Holds, balance.Strong},
		{"one coat, mdf 6", mdf6, 400, 500, "height", face(acrylic(100)), nil,
			side{rng{53.41, 95.42}, rng{0, 0.305}, rng{0, 0.005711}, rng{0, 0.1142}},
			side{rng{53.41, 95.42}, rng{0, 0.305}, rng{0, 0.005711}, rng{0, 0.1785}}, balance.Holds, balance.Negligible},
		{"barrier on the back alone", ply3, 300, 400, "width", nil, face(barrier),
			side{rng{1.458, 5.657}, rng{-0.2754, -0.02754}, rng{-0.1888, -0.004829}, rng{-2.125, -0.05433}},
			side{rng{35.37, 38.12}, rng{-0.2754, -0.02754}, rng{-0.007786, -0.0007216}, rng{-0.1557, -0.01443}}, balance.Open, balance.Strong},
		{"before the barrier", ply3, 300, 400, "width", face(acrylic(50), acrylic(90), cloth, ground(45)), face(acrylic(90)),
			side{rng{1.458, 5.735}, rng{0.06125, 0.7233}, rng{0.01062, 0.496}, rng{0.1195, 5.58}},
			side{rng{35.37, 38.2}, rng{0.06125, 0.7233}, rng{0.001602, 0.02045}, rng{0.03205, 0.409}}, balance.Open, balance.Strong},
		{"with the barrier", ply3, 300, 400, "width", face(acrylic(50), acrylic(90), cloth, ground(45)), face(acrylic(90), barrier),
			side{rng{1.458, 5.892}, rng{-0.2303, 0.6942}, rng{-0.158, 0.476}, rng{-1.777, 5.355}},
			side{rng{35.37, 38.35}, rng{-0.2303, 0.6942}, rng{-0.006512, 0.01962}, rng{-0.1302, 0.3925}}, balance.Open, balance.Strong},
		{"cloth, composite", acm3, 500, 700, "width", face(acrylic(140), cloth, acrylic(90)), nil,
			side{rng{86.25, 114.9}, rng{0.08825, 0.9234}, rng{0.0007676, 0.01071}, rng{0.02399, 0.3346}},
			side{rng{86.25, 114.9}, rng{0.08825, 0.9234}, rng{0.0007676, 0.01071}, rng{0.04701, 0.6558}}, balance.Holds, balance.Negligible},
		{"gesso, wood 25", wood25, 600, 400, "height", face(film("glue-ground", 500)), nil,
			side{rng{1.18e4, 1.855e4}, rng{3.18, 31.8}, rng{0.0001708, 0.002695}, rng{0.007688, 0.1213}},
			side{rng{598.3, 1471}, rng{3.036, 30.36}, rng{0.001991, 0.05074}, rng{0.03981, 1.015}}, balance.Open, balance.Matters},
		{"three coats against two", ply3, 300, 400, "width", face(acrylic(30), acrylic(30), acrylic(30)), face(acrylic(45), acrylic(45)),
			side{rng{1.458, 5.647}, rng{-0.027, 0.027}, rng{-0.01851, 0.01851}, rng{-0.2083, 0.2083}},
			side{rng{35.37, 38.11}, rng{-0.027, 0.027}, rng{-0.0007633, 0.0007633}, rng{-0.01527, 0.01527}}, balance.Holds, balance.Negligible},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := balance.Judge(panel(c.board, c.height, c.width, c.grain, c.front, c.back))
			pull := j.Work
			if len(c.front) > 0 && c.front[0].Picture { // told apart: the work has nothing and holds
				pull = j.Picture
			}
			sameSide(t, "height", pull.Height, c.wantHeight)
			sameSide(t, "width", pull.Width, c.wantWidth)
			if j.Outcome != c.outcome {
				t.Errorf("outcome %s, want %s", j.Outcome, c.outcome)
			}
			if most := max(pull.Height.MostGrade, pull.Width.MostGrade); most != c.most {
				t.Errorf("at most %d, want %d", most, c.most)
			}
		})
	}
}

// Pull of each face under cloth in sealer, N/m, by hand: front 143.7 µm of acrylic at 0 to 1
// MPa and a cloth, back 49.93 µm.
func TestPullOfFaces(t *testing.T) {
	j := balance.Judge(panel(ply3, 300, 400, "width", face(acrylic(sealed), acrylic(glued), cloth), face(acrylic(sealed))))
	for _, b := range []balance.Bow{j.Work.Height, j.Work.Width} {
		sameRange(t, "front", b.Front, rng{50, 443.7})
		sameRange(t, "back", b.Back, rng{0, 49.93})
	}
	if w := j.Work.Worst(); w.Over != balance.OverHeight || w.Direction != balance.Across {
		t.Errorf("worst over the %s, direction %d", w.Over, w.Direction)
	}
}
