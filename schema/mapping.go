package schema

import _ "embed"

//go:embed mapping.schema.json
var mapping []byte

//go:embed examples/mapping.json
var exampleMapping []byte

// Mapping returns the schema of a file that says which column of a
// spreadsheet is which field.
func Mapping() []byte { return clone(mapping) }

// ExampleMapping returns such a file. It reads examples/panels.csv.
func ExampleMapping() []byte { return clone(exampleMapping) }
