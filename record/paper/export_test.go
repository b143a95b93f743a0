package paper

// For tests of the symbol.
const (
	LevelL = levelL
	LevelH = levelH
)

var SnapModule = snapModule
