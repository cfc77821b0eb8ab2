package main

import (
	"drainboard/model/feed"

	"github.com/spf13/pflag"
)

func sumFeed() sum {
	var litres, want, there number
	var share, culture shares
	return sum{
		name: "feed", short: "Litres of each culture that bring a tank to its ration",
		example: "--litres 120 --want 5000 --share iso:1 --culture iso:5000000",
		needs:   []string{"litres", "want", "share", "culture"},
		flags: func(f *pflag.FlagSet) {
			f.Var(&litres, "litres", "litres of water in the tank")
			f.Var(&want, "want", "cells per mL wanted")
			f.Var(&there, "there", "cells per mL still there")
			f.Var(&share, "share", "share of the cells by alga, as in iso:3,chaet:1")
			f.Var(&culture, "culture", "cells per mL of each culture, as in iso:5110909")
		},
		answer: func() (answer, error) {
			need := feed.Need{Litres: litres.x(), Want: want.x(), There: there.x(), Share: share.table()}
			r, err := feed.RationFor(need, culture.table(), feed.Plain)
			if err != nil {
				return answer{}, err
			}
			return feedAnswer(r, share), nil
		},
	}
}

// feedAnswer lists the algae in the order of the shares.
func feedAnswer(r feed.Ration, share shares) answer {
	var pour []named
	for _, s := range share {
		if litres, ok := r.Litres[s.name]; ok {
			pour = append(pour, named{s.name, litres})
		}
	}
	a := answer{
		figures: []fig{
			{"litres", "pour", pour, "L", 4},
			{"total_litres", "in all", r.TotalLitres, "L", 4},
		},
		remarks: []string{"The diet is split by cells, not by volume. Fill the tank that much less, so that it does not run over."},
		sources: []string{"(wanted - there) x litres x share / culture, the plain sum of the trade"},
	}
	if r.TotalLitres == 0 {
		a.remarks = []string{"There is enough already: pour nothing."}
	}
	return a
}
