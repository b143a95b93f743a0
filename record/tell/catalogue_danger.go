package tell

var englishDanger = DangerWords{
	Holds: "Holds {names}.", May: "May hold {names}.", Recorded: "Recorded as harmful when sanded: {names}.",
	Never: "Do not sand, do not burn.",
}
