package record

import (
	"reflect"
	"slices"
	"sync"

	"github.com/go-json-experiment/json"
)

// Kind names what happened.
type Kind string

// Body is what one kind of entry says; there is one Go type for each kind.
type Body interface{ Kind() Kind }

// Traits are what is true of every entry of a kind. Whatever treats kinds
// differently reads this table.
type Traits struct {
	Least, Most int    // panels it names
	Layer       bool   // it lays something on faces
	Bench       bool   // it is work on the board itself: it dates the making
	Life        string // what it belongs to: "shelf", "making", "work", "whereabouts", "papers", "keys", "book"
	Stays       string // code of why it can be neither amended nor withdrawn; empty: it can
	NotTaken    string // code of why it cannot be withdrawn, where it can be amended
}

type kindInfo struct {
	Traits
	blank  Body
	fields func() []Field // made when first asked
	decode func(b []byte, opts ...json.Options) (envelope, Body, error)
}

// The panels that entries of a kind name.
const (
	none = iota
	one
	some
	any_
)

// maxPanels bounds the panels of one entry.
const maxPanels = 5000

func traits(panels int, t Traits) Traits {
	t.Least, t.Most = []int{0, 1, 1, 0}[panels], []int{0, 1, maxPanels, maxPanels}[panels]
	return t
}

// The traits that several kinds share.
var (
	shelf   = traits(none, Traits{Life: "shelf", NotTaken: "shelf-stays"})
	layer   = traits(some, Traits{Life: "making", Layer: true, Bench: true})
	bench   = traits(some, Traits{Life: "making", Bench: true})
	told    = traits(some, Traits{Life: "making"})
	work    = traits(some, Traits{Life: "work"})
	papers  = traits(one, Traits{Life: "papers"})
	keys    = traits(none, Traits{Life: "keys", Stays: "keys-stay"})
	correct = traits(any_, Traits{Life: "book", Stays: "correction-withdrawn-only"})
)

// kinds is the table of all kinds of entry. A new kind is a type, a Kind
// method and a line here.
var kinds = map[Kind]kindInfo{
	"studio":                kindOf[Studio](traits(none, Traits{Life: "book", Stays: "studio-changes"})),
	"maker":                 kindOf[Maker](shelf),
	"material":              kindOf[Material](shelf),
	"lot":                   kindOf[Lot](shelf),
	"recipe":                kindOf[Recipe](shelf),
	"cut":                   kindOf[Cut](traits(some, Traits{Life: "making", Bench: true, NotTaken: "number-stays"})),
	"coat":                  kindOf[Coat](layer),
	"cloth":                 kindOf[ClothLaid](layer),
	"trimmed":               kindOf[Trimmed](bench),
	"sanded":                kindOf[Sanded](bench),
	"paint":                 kindOf[PaintLayer](layer),
	"varnish":               kindOf[Varnish](layer),
	"braced":                kindOf[Braced](bench),
	"warm-air":              kindOf[WarmAir](told),
	"left-bare":             kindOf[LeftBare](told),
	"intended":              kindOf[Intended](told),
	"removed":               kindOf[Removed](told),
	"resized":               kindOf[Resized](told),
	"used-again":            kindOf[UsedAgain](told),
	"feature":               kindOf[Feature](told),
	"inspection":            kindOf[Inspection](told),
	"climate":               kindOf[Climate](traits(any_, Traits{Life: "making"})),
	"described":             kindOf[Described](work),
	"photograph":            kindOf[Photograph](traits(one, Traits{Life: "work"})),
	"condition":             kindOf[Condition](work),
	"treatment":             kindOf[Treatment](work),
	"handed-over":           kindOf[HandedOver](traits(some, Traits{Life: "whereabouts"})),
	"discarded":             kindOf[Discarded](traits(some, Traits{Life: "whereabouts"})),
	"published":             kindOf[Published](traits(some, Traits{Life: "papers"})),
	"label-printed":         kindOf[LabelPrinted](papers),
	"certificate-issued":    kindOf[Issued](traits(one, Traits{Life: "papers", Stays: "certificate-stays"})),
	"certificate-withdrawn": kindOf[Revoked](traits(one, Traits{Life: "papers", Stays: "withdrawal-stays"})),
	"private-erased":        kindOf[Forgotten](traits(none, Traits{Life: "book", Stays: "erasure-stays"})),
	"note":                  kindOf[Note](traits(any_, Traits{Life: "work"})),
	"amended":               kindOf[Amended](correct),
	"withdrawn":             kindOf[Withdrawn](correct),
	"key-made":              kindOf[KeyMade](keys),
	"key-retired":           kindOf[KeyRetired](keys),
	"key-lost":              kindOf[KeyLost](keys),
}

func kindOf[B Body](t Traits) kindInfo {
	var blank B
	fields := sync.OnceValue(func() []Field { return fieldsOf(reflect.TypeFor[B]()) })
	return kindInfo{t, blank, fields, func(b []byte, opts ...json.Options) (envelope, Body, error) {
		var w wire[B]
		err := json.Unmarshal(b, &w, opts...)
		return w.Envelope, w.Body, err
	}}
}

// Kinds lists every kind that this program knows, sorted.
func Kinds() []Kind {
	var ks []Kind
	for k := range kinds {
		ks = append(ks, k)
	}
	slices.Sort(ks)
	return ks
}

// Blank returns the zero body of a kind, for tools that describe its fields;
// false for a kind that this program does not know.
func Blank(k Kind) (Body, bool) { i, ok := kinds[k]; return i.blank, ok }

// Traits returns what is true of every entry of a kind; nothing is of a kind
// that this program does not know.
func (k Kind) Traits() Traits { return kinds[k].Traits }

// Foreign is the body of an entry of a kind that this program does not know,
// or whose fields have another shape than it knows: written by a later one.
type Foreign struct{ kind Kind }

// Kind returns the kind as it was written.
func (f Foreign) Kind() Kind { return f.kind }

// isBody reports that b is of the one Go type of its kind.
func isBody(b Body) bool {
	i, ok := kinds[b.Kind()]
	return ok && reflect.TypeOf(b) == reflect.TypeOf(i.blank)
}
