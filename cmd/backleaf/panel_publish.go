package main

import (
	"backleaf/record"
	"backleaf/record/studio"
)

func panelPublish(a *app) {
	var withdraw bool
	var o moment
	b := record.Published{Shown: record.Yes}
	a.acts("panel publish", &o, func(d *doing) (studio.Written, error) {
		if withdraw {
			b.Shown = record.No
		}
		return d.perform(b)
	}, o.flags(), flags{"remark": &o.remarks, "withdraw": &withdraw, "photograph": &b.Photograph, "because": &b.Because})
}
