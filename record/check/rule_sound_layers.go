package check

import (
	"slices"

	"backleaf/record"
)

var soundLayers = Rule{
	Name:     "sound-layers",
	Source:   "common practice",
	Severity: Warning,
	judge:    judgeSound,
}

func judgeSound(s *subject) []verdict {
	if !slices.ContainsFunc(s.all(), isCloth) && len(each[record.Inspection](s)) == 0 {
		return one(NotApplicable, nil, "no-cloth")
	}
	return []verdict{
		s.lastLook("edges", func(i record.Inspection) record.Sound { return i.Edges }),
		s.lastLook("adhesion", func(i record.Inspection) record.Sound { return i.Adhesion }),
	}
}

// lastLook judges what the last inspection that looked at something found. Where
// the dates do not tell which was the last, all that may be have to agree.
func (s *subject) lastLook(of string, found func(record.Inspection) record.Sound) verdict {
	looks := slices.DeleteFunc(slices.Clone(each[record.Inspection](s)), func(i record.Done[record.Inspection]) bool { return found(i.Body) == "" })
	looks = last(looks)
	thing := record.With("what", record.Code(of))
	if len(looks) == 0 {
		return say(NotRecorded, nil, "not-inspected", thing)
	}
	sound, bad := []record.Answer{}, looks[0]
	for _, l := range looks {
		sound = append(sound, word(found(l.Body), "sound"))
		if sound[len(sound)-1] == record.No {
			bad = l
		}
	}
	good := all(sound...)
	if good == record.No && some(sound...) != record.No {
		good = record.Unknown // one of them found it sound, and may be the last
	}
	o := outcome(record.Yes, good)
	if o == FallsShort {
		return say(o, seqs(looks), "sound-not", thing, record.With("found", found(bad.Body)))
	}
	return say(o, seqs(looks), "sound"+suffix[o], thing)
}
