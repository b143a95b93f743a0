package check

import "slices"

// Rules is the table of all rules, in the order in which a panel is made.
var Rules = []Rule{
	// the board
	boardSettled,
	boardThickness,
	rigidBattens,
	formaldehyde,
	temperedBoard,
	// sealing and balance
	sealedAllRound,
	edgesExtra,
	balancedPull,
	balancedMoisture,
	explainedBow,
	// cloth
	wetThrough,
	edgesPressed,
	clothWeighted,
	trimmedInTime,
	glueSize,
	// air, tins, sanding
	filmForming,
	expiredLot,
	sandedAfterCure,
	sandingGrit,
	notSandedThrough,
	// what lies on what
	layersHold,
	veneerCloth,
	stainBlock,
	zincInOil,
	varnishRemovable,
	// the finished panel
	soundLayers,
	backBarrier,
	climateOfUse,
	toxicLayers,
	gaps,
}

// asked are rules in the order in which it is worth most to learn what they do
// not find recorded: what bows or parts before what is lighter. The others
// follow in the order of the table, what only a reader would miss comes last.
var asked = []string{
	balancedPull.Name, balancedMoisture.Name, layersHold.Name, sealedAllRound.Name, soundLayers.Name, toxicLayers.Name, zincInOil.Name,
	filmForming.Name, varnishRemovable.Name,
}

// Asking is the place of a rule among what to ask, the most useful first.
func Asking(rule string) int {
	if i := slices.Index(asked, rule); i >= 0 {
		return i
	}
	return len(asked) + slices.IndexFunc(Rules, func(r Rule) bool { return r.Name == rule })
}
