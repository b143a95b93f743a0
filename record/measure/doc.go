// Package measure holds the quantities and the physics of a painting panel:
// film thickness, moisture in boards, bow, air, drying windows, abrasives,
// formaldehyde limits and dimensions in print.
//
// It is pure arithmetic: no clock, no files, nothing of the record itself.
// Each function states its formula, its range and where both come from; a
// test table of the same file name holds it against published figures.
//
// # Units
//
// Every quantity is a float64 whose name carries the unit; lengths to be printed
// are whole micrometres as an int64. Lengths and
// thicknesses are micrometres throughout (the record's own unit), moduli and
// stresses megapascals (the same as N/mm²), tensions of a film or cloth
// newtons per metre of width, curvatures 1/m, temperatures degrees Celsius,
// humidities percent. Note that 1 MPa over 1 µm is exactly 1 N/m.
//
// # Sign of curvature and bow
//
// Positive means hollow at the front: the face of the painting is the concave
// one, as after a film in tension on the front alone. Layers are listed from
// the front to the back. Turning a panel round changes the sign and nothing
// else.
//
// # Input
//
// A value outside the stated range, or not a number, is refused with an error;
// no function returns NaN or an infinity. The ranges are wider than any panel
// needs: they are there to catch a wrong unit, not to judge the work.
//
// # Standing of the figures
//
// A figure that comes out of a table carries a [Source], which tells a figure
// read in a publication from one remembered, one that is workshop practice and
// one that was computed. All bow figures are linear-elastic upper bounds: real
// films relax.
package measure
