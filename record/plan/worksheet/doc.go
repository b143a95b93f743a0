// Package worksheet sets a plan as what one saws from: text, PDF/A-1b with a
// page a sheet, and SVG. Words come from a [tell.Catalogue]; the same job gives
// the same bytes, its date is handed in.
//
// Line conventions follow ISO 128-2 and 129-1, hatching ISO 128-3, as far as
// they are common knowledge (from memory): outlines and cuts continuous and
// wide, dimensions and hatching narrow, running dimensions from the reference
// edges, lengths without their unit, which stands once on the page.
//
// TestPreflight validates the PDF by an independent validator; TestPages finds
// each panel on the page of its sheet and nowhere else.
package worksheet
