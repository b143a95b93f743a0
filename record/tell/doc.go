// Package tell turns codes and typed values into words: what a record says of
// a panel, as a cataloguer writes it, and what the program says of a record.
// It is the only place that does.
//
// # Saying
//
// The rooms below say things as [record.Said]: a code and values made with
// [record.With]. [Say] turns one into words of a language; [Teller.Say] also
// names materials by their keys. The sentences stand in tables from code to
// [Message], one table a family (englishFindings, englishGaps …), joined into
// [Catalogue.Codes]. A code that a catalogue does not know was written by a
// newer program and is told as its code and values, "newer: …"; nothing is
// dropped.
//
// A family of codes is added so:
//
//  1. say record.Say("board-rested", record.With("rest", time), record.With("faces", faces));
//  2. write "board-rested": "the board rested for {rest}; {faces} …" in a file
//     catalogue_FAMILY.go, and add its table to codes(…) in english.go;
//  3. let a test run [Catalogue.Lacks] over all that is said: it finds codes
//     without a message, places without a value, forms and plurals that are
//     not there.
//
// Sentences of papers that have no code are messages too: [Catalogue.Fill]
// puts values into one. [Told] is a value of words that are said already.
//
// # Messages
//
// A [Message] is text with places: "{coats} on {faces}". A sentence whose
// words depend on a value is written whole for each case: "{n, plural, one
// {one coat} other {{n} coats}}"; see [Message] for what can choose. Values
// are told by their type: a count, figure or amount as a number of the
// language with its unit; a word by its own list and never by another; a When
// by its role, {date} "May 2026", {date:on} "in May 2026", {date:moment} with
// the time of day, {date:short} "2–4 May 2026" for a span; a list as "front,
// back and edges"; an absent value as not recorded, "unknown" as unknown. A
// recorded text is told as it is and is never taken for anything else.
//
// # Languages
//
// A [Catalogue] is data of one language; [English] ships. Words carry gender,
// number and forms, numbers their signs ([NumberFormat]), dates their roles
// ([edtf.Lexicon]), joins stand in [Joins], plural categories and capitals
// come from golang.org/x/text. TestInventedLanguage shows that this serves a
// language with three plurals, two genders and cases.
//
// What is not in the catalogue is what people recorded, numbers, and signs.
// TestNoWordOutsideTheCatalogue masks a catalogue with [Catalogue.Each] and
// finds no letter that is neither masked nor recorded.
//
// # Panels
//
// Dimensions follow Cataloging Cultural Objects 3.2.1: height × width × depth,
// the measured unit first, the other in brackets. Unknown is said to be
// unknown, absent to be not recorded, and a thickness that was computed to be
// an estimate; none of them is printed as a fact.
package tell
