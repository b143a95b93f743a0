package tell

// englishDue is what is due, by code, and on what its window rests.
var englishDue = table{
	{"due-seal", "seal front, back and edges; the edges twice"}, {"due-lay", "lay the cloth, or the ground"}, {"due-ground", "lay the ground"},
	{"due-press", "work adhesive under the loose {what}, press, and look again"},
	{"due-trim", "trim the cloth while the film is still soft"}, {"due-trim-hard", "trim the cloth: the film is hard by now, use a fresh blade or sandpaper"},
	{"due-answer", "turn and coat the {face}, before more is laid on the other face: it lacks {coats, plural, one {one coat} other {{coats} coats}}{bows, select, yes {; it bows, so see \"backleaf check\" first} other {}}"},
	{"due-sand", "sand lightly (150 or finer), then prime"}, {"due-sand-again", "sand and prime again, or paint in acrylic"}, {"due-sand-again-any", "sand and prime again, or paint"},
	{"due-prime", "dust off and prime"}, {"due-prime-again", "prime again, or paint in acrylic"}, {"due-prime-again-any", "prime again, or paint"},
	{"due-paint-oil", "paint in oil"}, {"due-label", "print the label for the back"},
	{"due-varnish", "varnish, when the paint is firm all through"},
	{"due-varnish-acrylic", "varnish with a removable varnish; an isolation coat first makes later cleaning safer, and stays for good"},

	{"usual-times", "usual times, none stated for the material"}, {"air-open", "air not recorded: the later moment is for the dampest"}, {"air-read", "by the air read, {entries}"},
	{"material-unknown", "what the {layer} is made of is not recorded"}, {"laid-when-unknown", "on what day the {layer} was laid is not recorded"},
	{"times-of-material-unknown", "how long {material} takes to dry and to cure is not recorded"}, {"times-unlikely-unknown", "the times stated for the {layer} cannot be"},
	{"no-wait-known", "no waiting time is known for the {layer}"},
}

// englishBalance is what is reckoned of the balance of a panel, by code.
var englishBalance = table{
	{"reckoned-pull", "coats and cloth could bow this panel {bow:range} {over} of {span}, {direction}{toward, select, front {, hollow at the front} back {, hollow at the back} other {}} (estimate for a flat board; boards creep and films relax)"},
	{"reckoned-pull-none", "{over} of {span, plural, one {1 coat} other {{span} coats}} and cloth balance: no bow to speak of (estimate)"},
	{"reckoned-picture", "as it ages the picture itself may add up to {most} {over}{toward, select, front {, hollow at the front} back {, hollow at the back} other {}}"},
	{"reckoned-picture-none", "the picture itself adds no bow to speak of"},
	{"reckoned-moisture", "the {leads} takes up moisture sooner: a change of 10 % RH bows the panel {bow:range} {over}, most after {peak:range}; it comes back"},
	{"reckoned-amounts", "amounts that nobody recorded were taken as usual (common practice)"},
	{"reckoned-binders", "a layer of unknown binder was taken to pull by as much as any may"},
	{"reckoned-board", "of the board nobody recorded {supposed}: taken as is usual"},
	{"reckoned-grain", "the run of the grain is not recorded: reckoned both ways, the worse is told"},
}
