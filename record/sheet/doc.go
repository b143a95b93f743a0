// Package sheet exchanges tables with spreadsheet programs: CSV (RFC 4180) and
// tab-separated text, in UTF-8. It is pure: bytes and a folded journal in,
// entries and refusals out.
//
// # Reading
//
// [Read] turns a table of older panels into entries, one panel a row, by a
// [Mapping] that says which column is which field ([Fields]). Each row is
// accepted whole or refused with every cell that is wrong and why. Nothing is
// guessed: an empty cell is not recorded, a material that is not on the shelf
// is refused with the nearest names, a material's lot of today is not taken
// for that of an old panel. Dates of before the book are inexact and kept as
// EDTF texts: "1998~", "199X", "2019-21".
//
// A mapping file is JSON, with the schema schema/mapping.schema.json:
//
//	{"backleaf": "mapping", "v": 1,
//	 "columns": {"No.": "own_reference", "H": "height", "W": "width",
//	   "Support": "board", "Layers": "coats", "Title": "title",
//	   "Year": "made", "Sold to": "handover_to", "Price": "handover_price"},
//	 "constants": {"batch": "old", "depth": "3", "cut": "unknown", "handover": "sale"},
//	 "shelf": {"gesso": "acrylic-ground", "ply": "birch-ply-3mm"},
//	 "words": {"coats": {"usual": "acrylic-sealer on all; gesso on front x3"}},
//	 "dates": "DD.MM.YYYY", "unit": "cm", "depth_unit": "mm", "currency": "EUR"}
//
// A constant fills the cells that are empty; "handover" only in rows that say
// to whom, for how much or when. Shelf gives the names of the sheet for
// things on the shelf; words replace a whole cell, by nothing to leave it out.
// Dates in the form given, or parts of it ("05.1998", "c. 1998"), become EDTF
// texts; EDTF itself is always accepted.
//
// Coats are written from the board outwards, with semicolons between them:
//
//	acrylic-sealer on all; cloth; 3 acrylic-ground + 1 acrylic-sealer on front as ground x2
//
// "cloth" marks where the cloth of the row was laid; without it, before the
// first ground on the front. A purpose may stand for a material that nobody
// recorded: "ground on front x3".
//
// Name, price and private note of a handover are returned apart from the
// entries: they stand outside the journal.
//
// # Writing
//
// [Write] guards every cell against being taken for a formula (TestGuard);
// reading takes the guard away.
package sheet
