// Package dossier sets everything that is recorded of a panel in the order in
// which a conservator asks: what it is (all categories of Object ID), support,
// cloth, size and adhesive, ground, paint, surface coating, drawings, dates
// and climate, products, what their binders are sensitive to, hazards, rules
// of thumb, bow, later history, corrections, what is not recorded, and how to
// verify it.
//
// [New] makes one [Document] of sections, paragraphs, tables and drawings;
// PDF (PDF/A-1b), plain text and HTML are three renderings of it, so that
// nothing is said twice or differently. The same record gives the same bytes:
// dates come from the record.
//
// Every word is of a [tell.Catalogue], but for the texts of the rules of
// thumb, which are quoted as package check words them.
//
// TestPreflight validates the PDF by an independent validator;
// TestObjectID finds every category; TestHostile prints what could be taken
// for markup, PDF operators or terminal escapes.
package dossier
