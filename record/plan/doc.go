// Package plan works out a day at the bench before it begins: which sheets to
// saw and how, how much cloth to buy and where to cut it, how much of each wet
// material, what it costs, and when each batch may be touched again. It is
// pure: values in, values out; no clock, no file.
//
// Lengths are whole micrometres, areas square micrometres; the same order
// gives the same plan on every machine. Work and memory are bounded by what is
// counted, never by a clock; the limits are the constants beside [Order].
//
// Sheets are cut by guillotine cuts, edge to edge, by a beam search (see
// beam.go) that takes the cheapest set of sheets for which it finds a plan,
// and then the least board used up. What it found is held against a bound
// (see bound.go), and [Proof] says honestly how far the bound reaches.
//
// TestGeometry checks random plans by a geometry that shares no code with the
// search, and saws them again from the printed list; TestUnconstrained and the
// tests beside it hold bound and plans against published instances;
// TestPainterOrders holds the board used against the plans of another program.
package plan
