// Package trade holds what the trade knows of the stuff of a panel, each fact
// once: pigments, binders, purposes, what holds on what, how long to wait,
// what harms whoever sands it later, how it wants to be kept. Rules, answers,
// labels and papers read it here and keep no copy.
//
// It is pure: tables, and functions that read them. It says codes and values,
// never sentences; record/tell has the words.
//
// # Three answers
//
// A question is answered yes, no or unknown ([record.Answer]), unknown meaning
// that what is recorded does not settle it. Making what is recorded vaguer
// leaves an answer as it was or makes it unknown; it never turns yes into no
// or no into yes. One thing is no such vagueness: a Colour Index name that
// contradicts the name beside it ("cadmium red", PR 254) and is then taken away.
//
// # Pigments
//
// The Colour Index generic name decides, and the name on the tube is then not
// looked at: PY 35 holds cadmium whatever it is sold as. Without an index name
// a traditional name that means one substance ("lead white", "Kadmiumrot",
// "blanc de plomb") says yes and never no; one that stands for several things
// ("emerald green", "Naples yellow") says that it cannot be told and what it
// may be; a name with "hue", "imitation", "-free", "-ton" and the like says
// nothing. A pigment that no table knows cannot be told.
//
// # Standing of the rows
//
// Each row names its works (see [Work]); "practice" stands for common practice
// and "memory" for what was remembered and not looked up. Many works were seen
// by their opening only. A verdict on layers is advice for making and never
// says that a finished painting is unsound.
package trade
