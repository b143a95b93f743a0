package tell

import "backleaf/record/trade"

var englishDanger = DangerWords{
	Names: map[trade.Hazard]Message{trade.Lead: "lead", trade.Cadmium: "cadmium", trade.Mercury: "mercury", trade.Arsenic: "arsenic",
		trade.ChromiumVI: "chromate", trade.Barium: "barium", trade.Antimony: "antimony", trade.Cobalt: "cobalt", trade.Nickel: "nickel", trade.Manganese: "manganese"},
	Holds: "Holds {names}.", May: "May hold {names}.", Recorded: "Recorded as harmful when sanded: {names}.",
	Never: "Do not sand, do not burn.",
}
