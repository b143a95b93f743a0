package ask

// Codes of care by what is asked; what fits the panel is told, see trade.CareOf.
var (
	careOfCleaning = []string{"no-water", "dust-with-brush", "acrylic-holds-dust", "air-only", "touch-marks", "wax-bloom", "tempera-bloom", "tempera-scratches", "never-wet"}
	careOfHanging  = []string{"inner-wall", "no-sun", "room-of-comfort", "less-light-not-glass", "frame-lets-move", "must-move", "glass-always", "glass-with-spacer", "gives-off-acids"}
	careOfShipping = []string{"acrylic-cold", "oil-cold", "cold-two-layers", "acrylic-heat", "wax-heat", "carry-flat", "dents", "glass-against-dust", "never-press-blisters", "climate-of-loans", "damage"}
)

func (r *reader) cleaning() Answer {
	return recorded(nil, append(r.CareOn(careOfCleaning...), r.say("ask-clean"))...).and(r.varnish())
}

func (r *reader) hanging() Answer {
	return recorded(nil, append([]string{r.say("ask-hang")}, r.CareOn(careOfHanging...)...)...).andRecorded(r.weight())
}

// shipping adds what harms: whoever unpacks it should know before.
func (r *reader) shipping() Answer {
	a := recorded(nil, append([]string{r.say("ask-ship")}, r.CareOn(careOfShipping...)...)...)
	m := r.metals()
	if m.Recorded && m.Entries != nil {
		a = a.and(m)
	}
	return a.andRecorded(r.weight())
}
