package tell

var englishDanger = DangerWords{
	Holds: "Contains {names}.", May: "May contain {names}.", Recorded: "Recorded as harmful when sanded: {names}.",
	Never: "Do\u00A0not\u00A0sand, do\u00A0not\u00A0burn.",
}
