package tell

// englishDue is what is due, by code, and on what its window rests.
var englishDue = map[string]Message{
	"due-seal": "seal front, back and edges; the edges twice", "due-lay": "lay the cloth, or the ground",
	"due-press": "work adhesive under the loose {what}, press, and look again",
	"due-trim":  "trim the cloth while the film is still soft", "due-trim-hard": "trim the cloth: the film is hard by now, use a fresh blade or sandpaper",
	"due-answer": "turn and coat the {face}: it lacks {coats, plural, one {one coat} other {{coats} coats}} that the other face has",
	"due-sand":   "sand lightly (150 or finer), then prime", "due-sand-again": "sand and prime again, or paint in acrylic",
	"due-prime": "dust off and prime", "due-prime-again": "prime again, or paint in acrylic",
	"due-paint-oil": "paint in oil", "due-label": "print the label for the back",
	"due-varnish":         "varnish, when the paint is firm all through",
	"due-varnish-acrylic": "varnish with a removable varnish; an isolation coat first makes later cleaning safer, and stays for good",

	"usual-times": "usual times, none stated for the material", "air-open": "air not recorded: the later moment is for the dampest", "air-read": "by the air read ({entries})",
	"binder-open": "what the {layer} is made of is not recorded", "no-wait-known": "no waiting time is known for the {layer}",
}
