// Package ask answers a short question in the trade's words from the record of
// one panel: "adhesive", "is the back sealed", "varnish remover", "lead".
//
// It works by a thesaurus of trade terms and nothing else. Every word of a
// question must be understood: a word in no list is an error that names it,
// and nothing is guessed from the rest. An answer is one or two lines with the
// entries they rest on; what nobody wrote down is "not recorded".
//
// TestQuestions is the table of questions and what they must find.
package ask
