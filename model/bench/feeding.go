package bench

import "drainboard/model/feed"

func food() Sum {
	return Sum{
		Name: "feed", Short: "Litres of each culture that bring a tank to its ration",
		Inputs: []Input{
			{Name: "litres", Label: "tank", What: "litres of water in the tank", Unit: "L", Need: true, Example: "120"},
			{Name: "want", Label: "wanted", What: "cells per mL wanted", Unit: "cells/mL", Need: true, Example: "5000"},
			{Name: "there", Label: "still there", What: "cells per mL still there; empty for none", Unit: "cells/mL", Example: "1200"},
			{Name: "share", Label: "share", What: "share of the cells by alga, as in iso:3 chaet:1", Kind: ByName, Need: true, Example: "iso:1"},
			{Name: "culture", Label: "cultures", What: "cells per mL of each culture, as in iso:5110909 chaet:4855454", Kind: ByName, Need: true, Example: "iso:5000000"},
		},
		Sources: []string{"(wanted - there) x litres x share / culture, the plain sum of the trade"},
		work: func(v values) (Answer, error) {
			need := feed.Need{Litres: v.number("litres"), Want: v.number("want"), There: v.number("there"), Share: byName(v.table("share"))}
			r, err := feed.RationFor(need, byName(v.table("culture")), feed.Plain)
			if err != nil {
				return Answer{}, err
			}
			return foodAnswer(r, v.table("share")), nil
		},
	}
}

// foodAnswer lists the algae in the order of the shares.
func foodAnswer(r feed.Ration, share []Amount) Answer {
	var pour []Amount
	for _, s := range share {
		if litres, ok := r.Litres[s.Name]; ok {
			pour = append(pour, Amount{s.Name, litres})
		}
	}
	a := Answer{
		Figures: []Figure{
			{"litres", "pour", pour, "L", 4},
			{"total_litres", "in all", r.TotalLitres, "L", 4},
		},
		Remarks: []string{"The diet is split by cells, not by volume. Fill the tank that much less, so that it does not run over."},
	}
	if r.TotalLitres == 0 {
		a.Remarks = []string{"There is enough already: pour nothing."}
	}
	return a
}
