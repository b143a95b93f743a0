// Package label draws the labels for the backs of panels: what a panel is, in
// words that need no device, and a QR symbol that leads to its record.
//
// # Three sizes
//
// A label is small (42 × 42 mm), medium (62 × 62 mm) or large (95 × 85 mm); in
// a place of a bought sheet it takes the whole place. [Fit] chooses the
// largest that leaves a margin on the back: 4, 6 or 8 mm on each side. The
// smallest panel that can carry a label is 50 × 50 mm.
//
// # What is left out first
//
// Where room is short, type is first set smaller, to 82 % of its size and
// never below 5 pt. Then a field is left out after the other, first things
// first, and in the end what still finds room is put back:
//
//	small   lines for remarks and signature, build-up in full, care, build-up,
//	        fingerprint, place, sealed faces, changes, varnish, date, dimensions,
//	        medium and support, title, symbol
//	medium  line for remarks, care, line for the signature, build-up in full,
//	        build-up, fingerprint, place, sealed faces, changes, varnish, date,
//	        dimensions, medium and support, title, symbol
//	large   build-up line by line, line for remarks, care, build-up in full, line
//	        for the signature, fingerprint, build-up, sealed faces, place, changes,
//	        varnish, date, dimensions, medium and support, title, symbol
//
// A build-up that is left out in full is told in short. Nothing is ever cut
// off. The number, the maker, the arrow to the top edge and the line that says
// where the record is, with its link in letters, always stand on the label,
// and so does the notice on what is a demonstration. What was left out is in
// [Layout]. TestLeavingOut and TestGeometry hold the package to this.
//
// # The symbol
//
// The symbol is of level Q (ISO/IEC 18004), its modules at least 0.42 mm on
// the small label and 0.51 mm on the others: whole dots of printers of 300 and
// 600 dpi. Its quiet zone stands in the margin of the label. A studio without
// a link base has number, maker and contact in it as plain text.
// TestSymbolsAreRead reads every symbol of printed sheets, TestReading counts
// what three independent readers make of blurred, turned, pale and stained ones.
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
