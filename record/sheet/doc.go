// Package sheet exchanges tables with spreadsheet programs: CSV (RFC 4180) and
// tab-separated text, in UTF-8. It is pure: bytes and a folded journal in,
// entries and refusals out.
//
// [Write] guards every cell against being taken for a formula (TestGuard).
package sheet
