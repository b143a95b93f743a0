package ask

import (
	"cmp"
	"strings"
	"sync"
)

// same are words that ask for the same, and forms of one word: the first of
// each line stands for the others, in questions as in the phrases of topics.
var same = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	for line := range strings.Lines(`cloth linen canvas canvass fabric textile
		board plywood ply plies mdf hardboard masonite fibreboard fiberboard substrate timber
		wood wooden
		glue adhesive glued glueing gluing stuck stick sticking bonded bond paste pasted adhered adhere
		attach attached attaching fix fixed fixing fasten fastened affixed
		ground primer priming primed gesso gessoed undercoat
		varnish varnished varnishing
		back reverse verso rear backside behind
		front recto
		maker artist painter creator author
		colour color coloured colored hue shade
		gram gramme
		centimetre centimeter
		thick thicker thickness thin thinness gauge
		wide wider width breadth broad
		high higher height tall taller
		old older
		long longer length
		deep depth
		large big bigger larger
		small smaller tiny
		weight weigh weighed weighing heavy heavier heaviness mass
		remove removing removal strip stripping
		removed stripped
		photo photograph photographed photography photographic image snapshot
		clean cleaned cleaning cleanse wash washed washing wipe wiped wiping dust dusted dusting
		hang hung hanging
		ship shipping shipped pack packed packing packaging package transport transporting transported transportation transit send sending sent courier mail parcel freight fly post posting
		travel travelling move moving moved
		store storing stored storage
		sand sanded sanding
		trim trimmed trimming
		cure cured curing harden hardened
		dry dried drying
		thinned thinner thinning dilute diluted dilution
		restore restored restoration restoring
		repair repaired mend mended
		certificate certified certification
		sold sell sale selling
		bought buy purchase purchased buying
		own owner owned owning ownership
		sign signed signature
		inscription inscribed
		change changed changing altered alteration modified modification amended amendment revised edited corrected correction
		recorded documented registered logged noted
		frame framed framing
		crack cracked cracking craquelure
		lift lifted lifting
		flake flaked flaking
		damage damaged
		finish finished
		complete completed completion
		protect protected protection protecting
		seal sealing
		coat coated coating
		warped warping warpage
		bow bowed bowing
		bend bent bending
		curve curved curvature
		twist twisted twisting
		inspect inspected inspection examine examined examination examining
		paint painted
		make making
		composition composed consist
		write writing wrote written
		apply applied applying application
		hold holding held
		lay laid lie lying
		need needed needing
		not no never nobody nothing none without dont didnt doesnt isnt wasnt hasnt havent cant cannot couldnt arent werent
		was were been did had
		should can may could must shall might ought allowed permitted ok okay need ideal ideally recommended recommend advisable advised
		will would
		take taking
		took taken
		say saying
		know knew known`) {
		words := strings.Fields(line)
		for _, w := range words[1:] {
			out[stem(w)] = stem(words[0])
		}
	}
	return out
})

// meant is the word that stands for a word.
func meant(w string) string { return cmp.Or(same()[w], w) }
