package trade

import "backleaf/record"

// Seals answers whether a layer is a coat that closes the face it lies on; see
// [record.Layer.Seals].
func (m Made) Seals() record.Answer { return m.Layer.Seals(m.Materials, m.All) }
