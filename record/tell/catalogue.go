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
	Meant       map[string]string  // commands and flags, by words of the trade that none bears
	Rules       map[string]RuleWords
	Findings    FindingLines
	Events      map[record.Kind]Message
	Objects     map[string]Message
	Lines       Lines
	Danger      DangerWords
	Label       LabelWords
	Certificate Texts
	Page        PageWords
	Dossier     DossierWords
	Plan        PlanWords

	now    time.Time // see [Catalogue.At]
	inches bool      // see [Catalogue.For]
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
	Texts   `json:"texts"`
	Faces   map[record.FaceState]Message // {faces}
	Nothing map[record.FaceState]Message // on a face that carries nothing
}

// Texts are words by the name of their place; a test holds each name that is
// asked for to be there, and each that is there to be asked for.
type Texts map[string]Message

// T is the text of a name.
func (t Texts) T(name string) Message { return t[name] }
