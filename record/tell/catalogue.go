package tell

import (
	"time"

	"golang.org/x/text/language"

	"backleaf/record"
	"backleaf/record/edtf"
	"backleaf/record/section"
)

// A Catalogue is one language: every printed word of label, certificate and
// dossier, and of what the program says of a record. All of it is data.
type Catalogue struct {
	Tag     language.Tag // language of the paper, plural rules, capitals
	Number  NumberFormat
	Dates   edtf.Lexicon
	Join    Joins
	Section section.Words

	Words       Words
	Codes       map[string]Message // of all families, see [codes]
	Tablet      map[string]Message // instead of these at the page, see [Catalogue.AtPage]
	Hints       map[string]Message // what to do next, by the code of what was refused
	Rules       map[string]RuleWords
	Findings    FindingLines
	Events      map[record.Kind]Message
	Objects     map[string]Message
	Lines       Lines
	Danger      DangerWords
	Label       LabelWords
	Certificate CertificateWords
	Page        PageWords
	Dossier     DossierWords
	Plan        PlanWords

	now time.Time // see [Catalogue.At]
}

// Joins stand between words.
type Joins struct {
	List, LastOfList Message // {a}, {b}: between the parts of a list
	Clauses          Message // between parts that may hold commas
	Bracket          Message // {text} ({aside})
	Pair             Message // {name}: {value}
	Named            Message // {name} {value}, within a part
	Quote            Message // “{text}”
}

// Lines are what a [Teller] says.
type Lines struct {
	Blank, Untitled          Message
	TitleUnknown             Message
	NotRecorded, Unknown     Message
	Size                     Message // {measured} ({other})
	NoSize, NoSides, NoDepth Message
	NoDate, UnknownDate      Message
	Between                  Message // {from} {to}
	On                       Message // {medium} on {support}
	LaidOn                   Message // {cloth} laid on {board}
	NoMedium                 Message
	BinderLayer              Message                      // {binder} {layer}
	PaintLayer               Message                      // {medium} paint
	VarnishLayer             Message                      // {resin} varnish
	Coats                    Message                      // {layer}, {n} coats
	More                     Message                      // {layer}, more of it
	OtherCoats               Message                      // of which pigments are not recorded
	Threads                  Message                      // {warp} × {weft}
	BackLine, EdgesLine      Message                      // {layer}
	BuildUp                  Message                      // {board} {front}
	BuildUpBack              Message                      // {back}
	BuildUpEdges             Message                      // {edges}
	Faces                    map[record.FaceState]Message // {faces}
	Nothing                  map[record.FaceState]Message // on a face that carries nothing
	NoVarnish                Message
	Removable                Message // {varnish}
	RemovableWith            Message // {varnish} {solvent}
	NotRemovable             Message
	RemovableUnknown         Message
	RemovableNotRecorded     Message
	AsProduct                Message // {line} {basis}: what is known from the product only
	AsProductUnstated        Message // {line}
	AsTypical                Message // {line}: of no data sheet, but of the kind
	Entry                    Message // {n}
	Amended                  Message // {entry} {date} {of} {changes} {because}
	Withdrawn                Message
	Unfit                    Message
	Change                   Message // {field} {was} {now}
	SharedByPanels           Message // {amount} for {n} panels
	ForEach                  Message // {amount} for each panel
	PaintedIn                Message // {dates}: of a work whose date is not recorded
	SectionTitle, EdgeTitle  Message // {number}
	Outside, Inside          Message // above and below the section of an edge
	Cloth, Coat, Paint       Message // of what kind is not recorded
	Varnish, Board           Message
	Newer                    Message // {code}
	NewerValues              Message // {code} {values}
	NewerKind                Message // {kind}
	Today                    Message // {time}
	Tomorrow, Yesterday      Message // {time}
	Digest                   Message // {first}: its first figures
	Panels, PanelsAmong      Message // {n} {first} {last}: a run; some of a run
	Products                 Message // {layer} {mix}
}
