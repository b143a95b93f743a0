// Package balance reckons whether the faces of a panel pull alike and let
// moisture through alike: how far coats and cloth may bow the board, how far a
// change of the air may, and what a measured bow says about both.
//
// It is pure arithmetic on plain values and knows no entries; what it has to
// say are codes and figures. Films and cloth are elastic layers on a plate:
// thin-film stress as in Stoney (Proc. R. Soc. A 82, 1909) with real lever arms,
// plywood by lamination. The tests hold it against published cases of
// Timoshenko and Stoney, handbook stiffness of birch plywood, a data sheet of
// aluminium composite, published swelling of three-ply and a diffusion sum.
//
// # Use
//
// Describe the board as a [Sheet] and let [BoardOf] find its figures. List the
// layers of front and back from the board outwards, each made by [Film] or
// [ClothLayer]; the adhesive of a cloth is a film of its own. Paint, isolation
// coat and varnish are marked Picture. A layer whose amount nobody recorded
// takes its thickness from [UsualCoat], [UsualPaint] or [UsualVarnish] and is
// marked [Assumed]; a removed layer is left out, edges play no part. Then
//
//	board := balance.BoardOf(balance.Sheet{Kind: record.Plywood, ThicknessMicrons: 3000, Species: "birch"})
//	seal := balance.Film("acrylic-dispersion", false, balance.Exactly(50), balance.Estimated, balance.Room)
//	p := balance.Panel{HeightMicrons: 300e3, WidthMicrons: 400e3, Grain: "width", Board: board,
//		Front: []balance.Layer{seal, balance.ClothLayer("", balance.UsualCloth, balance.UsualCloth, balance.Room)},
//		Back:  []balance.Layer{seal}}
//	j := balance.Judge(&p)              // the pull: outcome, and figures over height and width
//	m := balance.MoistureOf(&p, 10)     // a change of 10 % RH on both sides
//	w := balance.WallOf(&p, 10)         // a wall 10 % RH damper behind it
//	c := balance.Compare(&p, measured, nil) // a bow that was measured, against both
//	e := balance.Weigh(&p, &after)      // whether a remedy is worth offering
//
// A Panel may be changed and judged again; nothing is kept and nothing of it is
// written to.
//
// # Units, signs and directions
//
// Lengths and thicknesses are micrometres, stresses and moduli megapascals (1
// MPa over 1 µm is 1 N/m), pulls newtons per metre of width, moments newtons
// (per width), stiffness of the plate newton metres (per width), curvatures
// 1/m, humidities percent, vapour resistances metres of still air (sd, EN ISO
// 12572; divided by 2.0e-10 kg/(m·s·Pa) they are m²·s·Pa/kg).
//
// Positive is hollow at the front. [Along] and [Across] are meant against the
// face grain of the board; a board without grain has the same values in both.
//
// # What is no promise
//
// The high figure is no bound of the bow to be seen. It is what the pull alone
// does to a flat board: boards creep under a pull that lasts, films relax, and
// a sheet as bought may be bowed by half a percent. Left out are creep, frame
// and brace, weight, edges, patches, coat that soaked in, the stresses of
// pressing and the ageing of the picture. Figures hold for bows to 2 % of the
// span and 25 to 75 % RH.
package balance
