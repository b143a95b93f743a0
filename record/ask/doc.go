// Package ask answers a short question about one panel from its record:
// "adhesive", "is the back sealed", "who took the varnish off", "lead?".
//
// It is a table of topics, topics: phrases of the trade, and a function that
// answers from the panel. The longest phrase of a question that a topic knows
// chooses it; [understand] tells how. Words that ask for the same stand for one
// another, see [same]. Words that are slightly misspelt are read
// as the nearest word that a topic or this panel's record knows, never words of
// fewer than five letters, and never words of what harms.
//
// An answer is true by itself, whatever was meant by the question: it states
// what is recorded, never "yes" or "no", and names the topic it speaks of. What
// lies on the panel today, what was taken off, what is absent because it was not
// done and what is only not recorded come from the same folded panel, and what
// harms from the same tables, as in the rules, the dossier and the label. A
// question of which too little is understood is refused, with the two nearest
// topics.
//
// TestQuestions is the table of topics and what they must find, TestTopics how
// each may be asked; the command's TestAsked puts some eight hundred phrasings
// to eight panels.
package ask
