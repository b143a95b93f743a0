// Package record says what a painting panel is: studio, material, lot, batch,
// panel, and the entries of the journal from which all of them follow. It is
// pure: no storage, no paper, no command line.
//
// # The form of an entry
//
// One entry is one JSON object in the canonical form of RFC 8785: names
// sorted, no white space, whole numbers only. Every measured amount is a text
// with the digits and the unit as they were measured ("3.2 mm", "8 x 10 x
// 1/8 in"), so that nothing is lost by conversion; every time is an EDTF text
// (ISO 8601-2), with offset where the moment is exact.
//
//	v        version of this form, 1
//	seq      place in the journal, from 1
//	kind     what happened; the fields below depend on it
//	at       when it happened; absent: not recorded; "unknown": recorded as unknown
//	written  when it was written down
//	panels     the panels it is about
//	makers     who did it; absent: the maker whom the studio's entry names
//	studio_as  the entries that describe the studio as it was then
//	imported   from where it came, and when, if not from the bench
//
// The fields of each kind are the JSON names of its Go type. An absent field
// was not recorded; the text "unknown" says that somebody looked and could
// not learn it. Neither counts as anything else. So that an entry has one
// spelling, there is no null, no empty text, list or object, and no nought.
//
// An act names the entries that describe its material, makers and studio as it
// means them ("material_as": [12]); several mean that nobody knows which of
// them. Beside some free texts stands the word of a closed list ("tool_kind"
// beside "tool"), which rules read. The name of the journal stands in its first
// entry.
//
// The published JSON Schema of an entry is made from these types, and its
// example file holds one full entry of every kind. TestRoundTrip, TestDecodeRefuses
// and FuzzDecode hold the form; TestCanonicalJSON the published cases of RFC
// 8785; TestCheckCharacter those of the Noid documentation; TestAmounts the
// exact conversions; TestFoldIsPure that the same entries make the same panels.
//
// # What never changes
//
// A mistake is amended or withdrawn by a later entry that names the earlier
// one and says why; [Fold] applies it and keeps both readable. New fields and
// kinds may be added; the meaning of one that exists never changes.
package record
