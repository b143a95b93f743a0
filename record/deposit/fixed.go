package deposit

import (
	_ "embed"

	"backleaf/record/linkedart"
	"backleaf/schema"
)

// A File is one file of a deposit; Path is below data/.
type File struct {
	Path string
	Data []byte
}

//go:embed text/linked-art.txt
var linkedArt []byte

//go:embed text/papers.txt
var papers []byte

// Fixed returns the files that are the same in every deposit: schemas, the
// context of Linked Art, and notes for the reader.
func Fixed() []File {
	return []File{
		{"linked-art/context.json", linkedart.Context()},
		{"linked-art/mapping.txt", linkedArt},
		{"papers/about.txt", papers},
		{"schemas/book.sql", []byte(schema.Book)},
		{"schemas/entry.schema.json", schema.Entry()},
		{"schemas/example.json", schema.Example()},
		{"schemas/import.schema.json", schema.Import()},
		{"schemas/mapping.schema.json", schema.Mapping()},
		{"schemas/record.schema.json", schema.Record()},
	}
}
