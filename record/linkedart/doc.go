// Package linkedart says a panel in Linked Art 1.0 (JSON-LD over CIDOC-CRM),
// so that a museum's system can read it without knowing backleaf.
//
// # The mapping
//
// The panel is a HumanMadeObject; the board and each layer on each face are
// documents of their own that point at it with part_of, since an object has no
// list of parts. What stands where:
//
//	panel number            identified_by / Identifier (owner-assigned number)
//	title                   identified_by / Name (preferred name)
//	maker, place, date      produced_by / Production
//	size                    dimension (height, width, depth) and a dimension statement
//	medium and support      referred_to_by (material statement), made_of where the thesaurus has the material
//	signature, inscription  referred_to_by
//	subject                 referred_to_by (description)
//	layer                   HumanMadeObject with made_of, produced_by, part_of
//	treatment               modified_by / Modification of the panel
//	condition report        referred_to_by (condition statement)
//	a gap                   nothing: absence is not a statement
//
// Dates are stated as bounds (begin_of_the_begin, end_of_the_end), so an
// inexact date keeps its width. Concepts are those of the Art & Architecture
// Thesaurus by number; a material without a fitting concept is named in words
// only. Buyers and prices are never in it.
//
// [Context] holds the terms used here, for processors without a network. The
// meaning of the terms is that of the Linked Art API 1.0; their identifiers
// are from memory of CIDOC-CRM 7.1. TestQuads expands every document with two
// independent processors and compares the canonical quads.
package linkedart
