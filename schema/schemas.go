package schema

import _ "embed"

// The JSON Schemas (draft 2020-12) describe version 1 of what this project
// writes as JSON. They are strict: a member they do not name was not written
// by version 1. The schema of an entry is made from the types that read it,
// and TestEntrySchema proves that it still says the same; TestAgreement proves
// that schema and reader accept the same entries.

//go:embed entry.schema.json
var entry []byte

//go:embed import.schema.json
var imports []byte

//go:embed record.schema.json
var panelRecord []byte

//go:embed examples/entries.json
var example []byte

// Entry returns the schema of one entry of the journal.
func Entry() []byte { return clone(entry) }

// Import returns the schema of a file of entries, as import reads and export
// writes it.
func Import() []byte { return clone(imports) }

// Record returns the schema of the signed record of one panel.
func Record() []byte { return clone(panelRecord) }

// Example returns a file of entries with at least one of every kind.
func Example() []byte { return clone(example) }

func clone(b []byte) []byte { return append([]byte(nil), b...) }
