package check

// Rules is the table of all rules, in the order in which a panel is made.
var Rules = []Rule{
	// the board
	boardSettled,
	boardThickness,
	rigidBattens,
	formaldehyde,
	temperedBoard,
	// sealing and cloth
	sealedAllRound,
	edgesExtra,
	answeredCoats,
	wetThrough,
	edgesPressed,
	clothWeighted,
	trimmedInTime,
	glueSize,
	filmForming,
	expiredLot,
	sandedAfterCure,
	sandingGrit,
	notSandedThrough,
	// ground and paint
	veneerCloth,
	stainBlock,
	sizeBeforeOil,
	groundDryBeforeOil,
	fatOverLean,
	acrylicOverOil,
	oilOnGlossyAcrylic,
	zincInOil,
	// varnish
	varnishWaiting,
	varnishRemovable,
	paintOverVarnish,
	// the finished panel
	flatness,
	soundLayers,
	backBarrier,
	climateOfUse,
	toxicLayers,
	gaps,
}
