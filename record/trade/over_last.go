package trade

// Wax on top. Teachers and suppliers speak here; nothing was found from
// conservators.
var waxOver = []overRow{
	{"WX", "WD", Sound, "", "fuse-each-layer", "absorbs", "re-fuse", "encaustic-grounds"},
	{"WX", "GG", Sound, "", "rigid-support", "absorbs traditional", "", "encaustic-grounds"},
	{"WX", "MD HB", Conditions, "untempered", "no-overheating", "gives-off", "", "practice encaustic-grounds"},
	{"WX", "AG", Against, "", "", "closed-film", "knock-test re-ground", "encaustic-grounds"},
	{"WX", "AM AP PV PU EP AL", Against, "", "", "closed-film", "paper-or-cloth-between", "encaustic-grounds"},
	{"WX", "OG OP AK LO LA", Against, "", "", "lower-moves heat-softens", "absorbent-ground", "encaustic-grounds memory"},
	{"WX", "LI CO", Against, "rigid", "", "brittle-above", "mount", "encaustic-grounds"},
	{"WX", "ET CA GU GD GS", Conditions, "thin-below rigid", "", "soaks-in-for-good", "", "memory"},
	{"WX", "WX", Sound, "", "fuse-each-layer", "same-binder", "re-fuse", "encaustic-grounds"},
	{"WX", "SH", Conditions, "", "decoration-only", "brittle-below", "", "practice"},
	{"WX", "RV", Against, "", "", "dissolves-lower", "", "memory"},
}

// Shellac on top.
var shellacOver = []overRow{
	{"SH", "WD MD HB", Sound, "", "thin-coats fresh-solution both-faces", "stops-stains slows-vapour", "", "MITRA-431 MITRA-shellac painter-stain-block"},
	{"SH", "GG ET CA", Conditions, "thin-above", "not-on-finished-paint", "soluble-inside", "", "MITRA-gesso magazine-casein MITRA-151 memory"},
	{"SH", "GS SH", Sound, "", "thin-coats", "absorbs", "", "memory"},
	{"SH", "GU GD", Conditions, "", "spray", "darkens", "", "memory"},
	{"SH", "LI CO", Conditions, "", "prefer-acrylic-or-pva", "stiff-above", "", "memory"},
	{"SH", "OP AK AP EO RV", Against, "", "", "yellows-for-good", "removable-varnish", "memory MITRA-not-varnish"},
	{"SH", "AG AM OG PV WX LA LO AL", Conditions, "keyed", "stain-block-only", "brittle-above", "", "memory"},
}

// Varnishes, polyurethane and epoxy on top.
var varnishOver = []overRow{
	{"NR", "OP", Conditions, "waited", "firm-through", "soft-paint-takes-varnish", "temporary-varnish", "varnish-wait MITRA-307"},
	{"AR HC KR", "OP", Conditions, "waited", "firm-through", "soft-paint-takes-varnish", "temporary-varnish", "varnish-wait memory"},
	{"NR AR HC KR", "AK", Conditions, "waited", "", "soft-paint-takes-varnish", "temporary-varnish", "memory"},
	{"NR", "AP", Against, "", "", "solvent-swells yellows", "removable-varnish isolate", "memory"},
	{"AR", "AP", Conditions, "waited", "isolation-coat", "solvent-swells", "isolate", "MITRA-634 maker-isolation"},
	{"HC", "AP", Conditions, "waited", "isolation-coat", "solvent-swells", "isolate", "MITRA-634"},
	{"KR", "AP", Conditions, "waited", "isolation-coat", "solvent-swells brittle-above", "isolate", "memory"},
	{"NR HC KR", "ET", Conditions, "waited isolated", "", "porous", "isolate leave-bare behind-glass", "MITRA-151"},
	{"AR", "ET", Conditions, "", "spray as-isolation", "porous", "", "MITRA-742"},
	{"NR AR HC KR", "EO", Conditions, "waited", "", "porous", "", "memory"},
	{"NR AR HC KR", "CA GU GD", Against, "", "", "soaks-in-for-good", "behind-glass", "gallery-letter-2003 maker-isolation tempera-varnish-course"},
	{"NR AR HC KR", "WX", Against, "", "", "solvent-bites-wax", "buff", "memory encaustic-care"},
	{"NR AR HC KR", "RV", Conditions, "", "same-resin", "never-parted", "remove-varnish", "memory varnish-wait"},
	{"NR AR HC KR", "AG AM OG GG", Conditions, "", "left-visible", "porous", "", "memory"},
	{"AR", "SH", Conditions, "", "as-isolation", "", "", "memory"},
	{"PU", "WD MD HB", Sound, "", "cured sand-before-grounds", "slows-vapour slick", "", "practice"},
	{"PU", "OP AP AK ET EO CA GU GD WX RV AG OG GG", Against, "", "", "yellows-for-good", "removable-varnish", "MITRA-not-varnish memory"},
	{"PU", "EP PU AL", Sound, "", "keyed-well", "same-family", "", "practice"},
	{"PU", "LI CO SH", Against, "", "", "stiff-above never-parted", "", "memory"},
	{"EP", "WD MD AL EP PU", Sound, "", "thin-coats", "strong-bond never-parted", "", "memory"},
	{"EP", "HB LI CO", Conditions, "", "for-good", "never-parted brittle-above", "", "memory"},
	{"EP", "OP AP AK ET EO CA GU GD WX RV AG OG GG", Against, "", "", "yellows-for-good stiff-above", "", "memory"},
}
