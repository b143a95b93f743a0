// Package tell turns a panel into words for print: titles and dimensions as a
// cataloguer writes them, the build-up from front to back, the drawing of it,
// care and its sources, and what nobody recorded.
//
// Every printed word stands in a [Catalogue]; [English] ships, and another
// language is one more value of that type. What is not in the catalogue is
// what people recorded, numbers, and signs. TestNoWordOutsideTheCatalogue
// masks a catalogue with [Catalogue.Each] and finds no letter that is neither
// masked nor recorded.
//
// Dimensions follow Cataloging Cultural Objects 3.2.1: height × width × depth,
// the measured unit first, the other in brackets. Unknown is said to be
// unknown, absent to be not recorded, and a thickness that was computed to be
// an estimate; none of them is printed as a fact.
package tell
