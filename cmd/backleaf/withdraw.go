package main

import "backleaf/record"

func newWithdraw(a *app) {
	var why string
	a.corrects("withdraw", &moment{}, &why, nil, func(_ *doing, old record.Entry) (record.Body, error) {
		return record.Withdrawn{Entry: old.Seq, Because: why}, nil
	})
}
