package tell

import (
	"backleaf/record"
	"backleaf/record/edtf"
	"backleaf/record/paper"
)

// Catalogue holds every printed word of label, certificate and dossier in one
// language.
type Catalogue struct {
	Language string        // BCP 47 tag
	Form     func(int) int // which form of a [Counted] a number takes; nil: the first
	Dates    edtf.Lexicon
	Section  paper.SectionWords

	Words       Words
	Lines       Lines
	Care        CareWords
	Label       LabelWords
	Certificate CertificateWords
	Dossier     DossierWords
}

// Words are the names of things: the closed lists of the record, and units.
type Words struct {
	Faces    map[record.Face]Message
	Purposes map[record.Purpose]Message
	Binders  map[record.Binder]Message
	Boards   map[record.BoardKind]Message // {species} stands for the wood, if it is recorded
	Fibres   map[record.Fibre]Message
	Weaves   map[record.Weave]Message
	Media    map[record.PaintMedium]Message
	Stages   map[record.Stage]Message
	Glosses  map[record.Gloss]Message
	Answers  map[record.Answer]Message
	Others   map[string]Message // the small lists: grain, run of threads, bracing, soundness …
	Units    map[string]Message // what is printed for the unit of the record
	Single   map[string]Message // the same after the number 1, where it differs
	Fields   map[string]Message // names of the fields of an entry, for corrections

	Cloth, Coat, Paint, Varnish, Board Message // of what kind is not recorded
}

// Lines are what a [Teller] says.
type Lines struct {
	Blank, Untitled          Message
	NotRecorded, Unknown     Message
	List, LastOfList         Message // {a}, {b}: between the parts of a list
	Size                     Message // {measured} ({other})
	NoSize, NoSides, NoDepth Message
	NoDate, UnknownDate      Message
	Between                  Message // {from} {to}
	On                       Message // {medium} on {support}
	LaidOn                   Message // {cloth} laid on {board}
	NoMedium                 Message
	BinderLayer              Message // {binder} {layer}
	PaintLayer               Message // {medium} paint
	VarnishLayer             Message // {resin} varnish
	Coats                    Counted // {layer}, {n} coats
	More                     Message // {layer}, more of it
	Weave                    Message // {cloth}, {weave}
	Threads                  Message // {warp} × {weft}
	BackLine, EdgesLine      Message // {layer}
	BuildUp                  Message // {board} {front}
	BuildUpBack              Message // {back}
	BuildUpEdges             Message // {edges}
	NothingOnFront           Message
	Sealed                   Message // {faces}
	NotSealed                Message // {faces}
	NoVarnish                Message
	Removable                Message // {varnish}
	RemovableWith            Message // {varnish} {solvent}
	NotRemovable             Message
	RemovableUnknown         Message
	RemovableNotRecorded     Message
	AsProduct                Message // {line} {basis}: what is known from the product only
	AsProductUnstated        Message // {line}
	Gap                      Message // {topic} {what}
	GapUnknown               Message
	GapTopics, GapThings     map[string]Message // by the words of the record
	GapLot                   Message            // {material}
	Entry                    Message            // {n}
	Amended                  Message            // {entry} {date} {of} {changes} {because}
	Withdrawn                Message
	Unfit                    Message
	Change                   Message // {field} {was} {now}
	SharedByPanels           Counted // {amount} for {n} panels
	ForEach                  Message // {amount} for each panel
	SectionTitle             Message // {number}
}

// CareWords are the advice to whoever keeps the panel. Each advice ends in the
// mark of its source, ¹ ² ³ …, in the order of Sources.
type CareWords struct {
	Line                                  Message
	Climate, Extremes, Light, Place, Dust Message
	Cold                                  Message // for what has acrylic layers
	Sources                               []Message
	ColdSource                            Message
}
