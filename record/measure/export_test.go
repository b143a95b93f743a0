package measure

// GritMicrons is tested by itself: across the scales all rests on the table.
var GritMicrons = gritMicrons
