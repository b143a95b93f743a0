package record

// ThreadsPerMeter returns a thread count in its base unit; false when it is none.
func (t ThreadCount) ThreadsPerMeter() (int64, bool) { return t.base() }

var CheckCharacter = checkCharacter
