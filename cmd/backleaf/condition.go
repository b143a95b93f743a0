package main

import "backleaf/record"

func newCondition(a *app) {
	var b record.Condition
	act(a, "condition", &b, flags{"by": needed{&b.By}, "text": &b.Text, "because": &b.Why})
}
