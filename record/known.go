package record

// StudioNow implements [Known].
func (w *Workshop) StudioNow() (Studio, bool) { return w.Studio, w.Studio.Mark != "" }

// Naan is a convenience: the ARK prefix of the studio's numbers, or empty.
func (w *Workshop) Naan() string { return w.Studio.NAAN }

// Numbers lists all numbers given, in order.
func (w *Workshop) Numbers() []Number {
	ns := make([]Number, len(w.Panels))
	for i, p := range w.Panels {
		ns[i] = p.Number
	}
	return ns
}
