// Package check holds a panel's record against rules of thumb and says what is
// due next. It is pure: the record and a time in, findings and windows out.
//
// # Four outcomes
//
// A rule holds, falls short, is not recorded, or does not apply. What nobody
// wrote down, or wrote down as unknown, is never counted as a pass: a rule
// holds only by what the record says. A rule gives one [Verdict] for each
// thing it judges (a coat, a cloth, a face, the panel), and [Panel] joins the
// verdicts of a rule into one [Finding], the worst first.
//
// Taking knowledge out of a record therefore never makes a rule hold that did
// not hold before; TestBlurring takes every field of every history out in
// turn, TestNoKnowledgeNoFault makes drawn histories vaguer and vaguer: a
// verdict stays or becomes "not recorded".
//
// # What is tested of all rules together
//
// Over drawn histories: no two findings contradict each other
// (TestNoContradictions), a verdict passes directly from holds to falls short
// at a named limit only (TestVerdictsAreContinuous), the order of writing does
// not matter (TestOrderOfWriting), a remedy works (TestRemediesWork) and leaves
// what did not see it as it was (TestUnseenIsUnchanged), and rules,
// due and the bench agree on when an act is early (TestWindowsAgree).
// BACKLEAF_REQUIRE_TOOLS=1 draws thousands of each.
//
// Three readings are not strict, because that is how people write things down.
// Entries without a date stand in the order of writing, as everywhere in the
// record. A description or an inspection that is silent on something leaves
// standing what an earlier one said of it. A coat for which no thinner is
// recorded counts as undiluted, and a face that is not marked as given more as
// given the same.
//
// # Front and back
//
// Every rule treats the two faces alike; where one of them is meant as the
// back it is the one opposite the painting. Turning a record round changes no
// outcome (TestMirror).
//
// # Sources
//
// Each rule names where it comes from. "Common practice" means what it says:
// no source is claimed. Figures of films, boards and air are those of package
// measure, with their own sources.
//
// # Adding a rule
//
// Write one file with a Rule and its judge function, add it to [Rules], and
// give the table of the tests a history for each outcome that it can have.
package check
