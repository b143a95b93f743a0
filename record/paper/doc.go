// Package paper is the sheet everything printed stands on: faces and text,
// shapes, the QR symbol, the cross-section of a build-up, and the PDF file.
// It knows nothing of panels.
//
// Lengths are millimetres from the top left corner of the page, y growing
// downwards; sizes of type are points (1 pt = 25.4/72 mm). Ink is black.
//
// A page is made of shapes. The same shapes are drawn as vectors in PDF and
// written as SVG, so that a drawing on paper and on a screen cannot differ.
//
// Text from outside is data. [Compose] normalises it (Unicode NFC), shows
// control and direction characters as visible escapes, and refuses with an
// error that names the character and its field whatever no face can print.
//
// The file is written in two steps. Page content comes from a PDF library,
// which only fpdf.go imports; [Document.Finish] then reads its objects and
// writes them again as PDF/A-1b (ISO 19005-1) or to the rules of PDF/A-3b
// (ISO 19005-3, with attachments). TestPreflight validates the first with
// an independent validator, TestA3bRules holds the second against the rules
// through an independent reader. The same shapes, information and dates give
// the same bytes; no clock is read.
//
// The symbol follows ISO/IEC 18004; TestSymbolIsRead decodes it with two
// independent readers at printers' resolutions.
package paper
