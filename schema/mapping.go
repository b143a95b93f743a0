package schema

import _ "embed"

//go:embed mapping.schema.json
var mapping []byte

// Mapping returns the schema of a file that says which column of a
// spreadsheet is which field.
func Mapping() []byte { return clone(mapping) }
