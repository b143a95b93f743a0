package ask

import (
	"slices"
	"strings"
	"sync"
	"unicode"

	"backleaf/record"
)

// content returns the words of a text that mean something, in one form.
func content(s string) []string {
	var out []string
	for _, w := range split(s) {
		if w = stem(w); !empty()[w] && !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}

// short are the short forms of "not", which would fall apart at the apostrophe.
var short = strings.NewReplacer("can't", "can not", "can’t", "can not", "won't", "will not", "won’t", "will not", "n't", " not", "n’t", " not")

func split(s string) []string {
	return strings.FieldsFunc(short.Replace(strings.ToLower(s)), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// stem takes off the plural.
func stem(w string) string {
	switch {
	case strings.HasSuffix(w, "shes"), strings.HasSuffix(w, "ches"), strings.HasSuffix(w, "xes"):
		return w[:len(w)-2]
	case len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") && !strings.HasSuffix(w, "us") && !strings.HasSuffix(w, "is"):
		return w[:len(w)-1]
	}
	return w
}

// set makes a set of the stems of words, when it is first asked.
func set(words string) func() map[string]bool {
	return sync.OnceValue(func() map[string]bool {
		out := map[string]bool{}
		for _, w := range strings.Fields(words) {
			out[stem(w)] = true
		}
		return out
	})
}

// empty are words that carry no question by themselves and stand in no phrase.
var empty = set(`a an the this that these those it its is are be being am having do does doing
	what there here any some anything something at to as goes and or about into onto within through than so too also
	using kind type sort me mine please i im we you your our he she his her him their they them us
	give giving go went come came yes t s d ll ve artwork piece object one
	far exactly actually really just ever already yet today currently current present presently recently lately at moment day again once
	 find found want wants like let see seen mean means think thought maybe possibly
	next each every more most less very quite rather such
	hello hi thanks thank dear sir madam um uh well please information info detail details anyone anybody someone somebody people person
	approximately roughly anywhere somewhere whether either neither kindly shop outside inside
	ask asked asking answer certain particular specific precise possible main general entire actual regarding concerning concern
	carry carries carried carrying bear bears contain contains contained containing include includes 
	wish wondering wonder wondered try trying tried checking hear heard believe believed suppose supposed understand understood explain explaining
	question bit little matter case help helping helpful advise able required require concerned curious interested interesting interest
	visiting planning plan urgent urgently soon quickly immediately obviously apparently supposedly reportedly allegedly usually normally
	basically simply clearly correctly several few couple though although because until unless however besides otherwise instead among near nearby ago
	beforehand meanwhile previously formerly whatever whichever whoever whenever wherever everything everybody everyone themselves himself
	herself yourself ourselves hey afternoon evening regards best cheers sorry excuse pardon colleague friend boss assistant intern student teacher
	curator insurer lawyer dealer gallerist gallery registrar shipper photographer journalist researcher historian letter form file text caption getting letting set
	bring bringing happen become remain remained turn turned talk talking speak speaking spoke telling read reading hint idea clue thereof therefore
	whereby herein upon toward beyond despite except including throughout underneath aside via versus respect terms view point sense true false truly
	honest honestly approximate approx circa nearly almost particularly especially mainly mostly partly entirely totally wholly absolutely definitely
	surely certainly probably perhaps likely unlikely even always often sometimes seldom rarely twice least enough plenty dozen various different
	following latter middle centre center inner outer outermost innermost visible visibly invisible seeing spot region zone part portion overall special
	regular normal ordinary usual unusual typical common rare accurate correct proper suitable appropriate necessary important relevant impossible
	 task project office hall hallway corridor lobby months hours minutes night someday originally initially finally eventually newly
	freshly thereafter exhibit auctioneer valuer appraiser expert specialist scientist lab laboratory verify verification confirm confirmation confirmed
	claim claimed statement mention mentioned spoken`)

// interrogative words choose a topic only where no other word does; left over,
// they are passed over in silence.
var interrogative = set(`who whom whose when where why how many much made make not
	mm cm inch millimetre centimetre picture time year first last latest final new old on off up over under below beneath above with has have had painting
	should put take took taken use used still other another same own got get my out in of between for from by after before done gone which both all sure panel given exact now
	was will hold apply lay look show later say need write name left tell know down recorded`)

// outside are words of what no record of a panel can answer: what it is worth,
// whether it is liked, the world around, what is to come.
var outside = set(`visitor live worth value valuable investment auction fetch bid bargain reward insure insurance tax profit
	weather rain raining sunny snow forecast tomorrow tonight yesterday week
	beautiful ugly nice pretty lovely better favourite favorite prefer opinion advice famous happy sad angry mood feel feeling feelings love hate style choose chose
	cook eat recipe drink coffee tea lunch dinner restaurant hotel train bus ticket tickets timetable flight parking phone telephone email birthday married wife husband born
	stove burn joke poem song sing story password lend borrow football election president capital
	wall sofa curtains suit suits match matches similar recommend hire commission order thief stole suspect award prize
	meaning symbolise symbolize interpretation inspire inspired`)

// hazard words are never guessed: neither read into a misspelt word, nor taken
// for one.
var hazard = set("lead leads leaded cadmium mercury arsenic chromium chrome cobalt nickel barium antimony zinc toxic poison poisonous poisoning hazard hazards hazardous danger dangerous dangers harmful safe safety vermilion asbestos formaldehyde")

// recordedWords are the words that stand in what is recorded of a panel and of
// the materials and lots on it.
func recordedWords(w *record.Workshop, p *record.Panel) map[string]bool {
	out := map[string]bool{}
	add := func(texts ...string) {
		for _, t := range texts {
			for _, x := range content(t) {
				if len(x) > 2 && !interrogative()[x] {
					out[x] = true
				}
			}
		}
	}
	add(w.Studio.Maker)
	for _, e := range p.Events {
		add(record.FreeText(e.Body)...)
	}
	for _, u := range p.Used() {
		m, _ := w.Material(u.Material, u.As)
		add(m.Name)
		for _, l := range u.Lots {
			x, _ := w.Lot(l)
			add(string(l), x.MakerLot)
		}
	}
	return out
}
