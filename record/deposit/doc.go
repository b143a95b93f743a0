// Package deposit writes the parts of a deposit that are neither papers nor
// the book itself: tables, Dublin Core, and what a stranger has to be told. It
// is pure: a folded journal in, texts out.
//
// A deposit is the whole of a studio's record in one folder, for an archive, a
// museum or an heir: a bag (RFC 8493, package bag) that can be read and checked
// without backleaf. The README at its top, made by [Readme], is its
// specification; the command "deposit" puts it together. What is private stands
// outside the journal and so never in a deposit.
//
// Tables are RFC 4180 with every cell guarded against formulas (package
// sheet). Dublin Core is the Dublin Core Metadata Element Set 1.1 (ISO
// 15836-1) with terms of the DCMI Metadata Terms where the fifteen elements
// say too little. TestEveryField holds the tables against the types of the
// record, TestDublinCore reads the XML back, and the tests of the command run
// every recipe of the README.
package deposit
