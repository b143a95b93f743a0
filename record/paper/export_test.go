package paper

// For tests of the symbol.
const (
	LevelH = levelH
)

var SnapModule = snapModule
