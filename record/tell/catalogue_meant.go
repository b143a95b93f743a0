package tell

// englishMeant are the commands and flags for words that a person of the trade may
// type first.
func englishMeant() map[string]string {
	return map[string]string{
		"prime": "backleaf coat … --as ground", "gesso": "backleaf coat … --as ground", "ground": "backleaf coat … --as ground",
		"seal": "backleaf coat … --as sealer", "sealer": "backleaf coat … --as sealer", "size": "backleaf coat … --as size", "glue": "backleaf cloth",
		"cut": "backleaf panel add", "number": "backleaf panel add", "title": "backleaf panel describe … --title", "measure": "backleaf inspect",
		"sell": "backleaf handover … --how sale", "sold": "backleaf handover … --how sale", "sale": "backleaf handover … --how sale",
		"lend": "backleaf handover … --how loan", "loan": "backleaf handover … --how loan", "stolen": "backleaf handover … --how theft",
		"return": "backleaf handover … --how return", "undo": "backleaf withdraw", "delete": "backleaf withdraw", "correct": "backleaf amend", "edit": "backleaf amend",
		"print": "backleaf label", "sticker": "backleaf label", "stock": "backleaf lot list", "search": "backleaf find", "history": "backleaf journal",
		"init": "backleaf studio new", "new": "backleaf studio new",
		"lost": "backleaf handover … --how loss", "certify": "backleaf certificate", "version": "backleaf --version", "completion sh": "backleaf completion bash", "completion pwsh": "backleaf completion powershell", "studio key print": "backleaf studio key recovery-sheet",

		"--because": "--note", "--comment": "--note", "--remarks": "--remark", "--reason": "--because", "--when": "--at", "--date": "--at", "--time": "--at",
		"--face": "--on", "--side": "--on", "--material": "--with", "--lot": "--with", "--purpose": "--as", "--file": "--output", "--o": "--output",
	}
}
