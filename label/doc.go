// Package label draws the labels for the backs of panels: what a panel is, in
// words that need no device, and a QR symbol that leads to its record.
//
// # Size
//
// A label is of any size: small (42 × 42 mm), medium (62 × 62 mm), large
// (85 × 95 mm), of an area of one's own ([SizeOf]) or, in a place of a bought
// sheet, as large as the place. Some of the back is left free around it: 6 % of
// its shorter side, 4 to 8 mm. [Fit] chooses; the smallest panel that can carry
// a label on plain paper is 50 × 50 mm. From 40 × 60 mm on, a label holds at
// least what is named first below, up to varnish.
//
// # What gives way
//
// One order holds for all sizes; the first stay longest ([Staying]):
//
//	title, date, medium and support, dimensions, symbol, build-up in short,
//	sealed faces, varnish, changes, which record, place, dimensions in other
//	units, facts as a symbol, build-up in full, care, fingerprint, mark of the
//	studio, line for the signature, lines for remarks
//
// A label holds all of them up to the first that finds no room; what would
// find none even alone is passed over. So a larger place never drops what a
// smaller one holds (TestLargerHoldsMore). Nothing is ever cut off. Number,
// maker, hazards, the arrow to the top edge and the line that says where the
// record is, with its link in letters, always stand on the label, and so does
// the notice on what is a demonstration. Hazards that find no room are carried
// on by a further label, and both say that they are two (TestHazardsAreCarriedOn).
// What was left out is in [Layout]. TestLeavingOut and TestGeometry hold the
// package to this.
//
// # Type and symbol
//
// Text is set as large as it can be with all that the label holds, from 9 to
// 6 pt; no type is smaller, but for the figures of a fraction. Labels of one
// size in one file have the same type, number and modules (TestOneSizeOfType).
//
// The symbol is of level Q (ISO/IEC 18004), its modules 0.42, 0.51 or 0.59 mm:
// whole dots of printers of 300 and 600 dpi. Its quiet zone stands in the
// margin of the label. A studio without a link base has number, maker and
// contact in it as plain text. A second symbol, on request, holds the facts
// themselves as text, at level L. TestSymbolsAreRead reads every symbol of
// printed sheets, TestReading counts what three independent readers make of
// blurred, turned, pale and stained ones.
//
// # The file
//
// All labels are one PDF/A-1b file in black (TestPreflight), with every face
// embedded once. No clock is read: same record, same bytes (TestSameBytes).
//
// What a back label should say follows the advice of museums on labelling
// works: maker, contact, title, number, year, medium and support, height ×
// width × depth and the top edge first; then build-up, varnish, dates and care.
package label
