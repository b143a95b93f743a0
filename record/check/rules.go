package check

// Rules is the table of all rules, in the order in which a panel is made.
var Rules = []Rule{
	sealedAllRound,
	answeredCoats,
	balancedFilms,
	clothTension,
}
