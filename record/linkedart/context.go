package linkedart

import _ "embed"

//go:embed context.json
var context []byte

// Context returns a JSON-LD context with the terms used in the documents, for
// processors that cannot fetch [ContextURL].
func Context() []byte { return context }
