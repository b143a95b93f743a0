// Package measure holds the quantities and the physics of a panel's making: film
// thickness, movement of boards, air and moisture in wood, drying windows,
// abrasives, formaldehyde limits and dimensions in print. How layers and moisture
// bow a panel stands in record/balance.
//
// It is pure arithmetic: no clock, no files, no entries. Each function states
// its formula, its range and where both come from; a test table of the same file
// name holds it against published figures.
//
// # Units
//
// Every quantity is a float64 whose name carries the unit; lengths to be printed
// are whole micrometres as an int64. Lengths and thicknesses are micrometres
// throughout (the record's own unit), temperatures degrees Celsius, humidities
// percent.
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
// one that was computed.
package measure
