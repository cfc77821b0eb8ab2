package main

import (
	"time"

	"drainboard/model"
)

// hoursAgo dates an example.
func hoursAgo(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }

// inventoryTemplate is for a room that begins in mid-season.
func inventoryTemplate() csvTemplate {
	return csvTemplate{
		name: "inventory", short: "What stands where, for a room that begins in mid-season",
		when: "What stands where, one row or two a tank, for a room that begins in mid-season. at is when the tank's\n" +
			"water was last changed, or since when it stands empty.",
		examples: []example{
			{model.KindStocked, hoursAgo(26), "a tank that holds larvae; larvae by the last count, empty where nobody knows", map[string]string{
				"tank": "EXAMPLE-1", "batch": "26-05", "larvae": "12800",
			}, 16},
			{model.KindNoted, hoursAgo(26), "what else is known; a mean length of unknown readings is a remark", map[string]string{
				"tank": "EXAMPLE-1", "text": "mean length 720 um before the start",
			}, 0},
			{model.KindFilled, hoursAgo(20), "a tank full of clean water: ready", map[string]string{"tank": "EXAMPLE-2", "celsius": "27.6"}, 0},
			{model.KindWashed, hoursAgo(3), "a tank washed and not filled", map[string]string{"tank": "EXAMPLE-3"}, 0},
			{model.KindService, hoursAgo(2), "a tank out of use", map[string]string{"tank": "EXAMPLE-4", "out": "true", "why": "standpipe cracked"}, 0},
			{model.KindService, hoursAgo(1), "a dirty tank takes two rows: out of use,", map[string]string{"tank": "EXAMPLE-5", "out": "true", "why": "before the start"}, 0},
			{model.KindService, hoursAgo(1), "and back at the same time: it is to be washed", map[string]string{"tank": "EXAMPLE-5", "out": "false", "why": "stands dirty"}, 0},
		},
	}
}

// lateTemplate is for what was written on paper while the program could not be
// used. Sessions and their steps are left out: a change done on paper is its moves.
func lateTemplate() csvTemplate {
	row := func(kind model.Kind, ago float64, what string, cells map[string]string) example {
		return example{kind, hoursAgo(ago), what, cells, 0}
	}
	one := "EXAMPLE-1"
	stocked := row(model.KindStocked, 8, "a batch put into a ready tank", map[string]string{
		"tank": "EXAMPLE-3", "batch": "26-06", "larvae": "9800", "origin": "pen 2",
	})
	return csvTemplate{
		name: "late", short: "What was written on paper, after an outage",
		when: "What was written on paper while the program could not be used, in the order of time; at is when it\n" +
			"happened. Of a change session enter the moves, washes and fills. Several kinds share a column; a list is\n" +
			"quoted as \"38,42,50\", litres by alga as \"iso:0.35,chaet:0.1\".",
		examples: []example{
			row(model.KindTemperature, 20, "of a tank, or under supply of a water source", map[string]string{"tank": one, "celsius": "27.4"}),
			row(model.KindWater, 19.9, "salinity, ph, oxygen, total ammonia nitrogen, as far as measured", map[string]string{
				"tank": one, "salinity": "35.6", "ph": "8.1", "oxygen_mg_l": "6.4", "ammonia_mg_l": "0.1",
			}),
			row(model.KindCells, 19, "algae cells left in a tank, or under algae of a culture", map[string]string{
				"tank": one, "counts": "46,50", "chamber_ml": "0.0009", "dilution": "1",
			}),
			row(model.KindFed, 18.5, "litres by alga", map[string]string{"tank": one, "litres": "iso:0.35"}),
			row(model.KindLook, 17, "the stereo microscope: lobes 2, 4 or 6; golden and dead in per cent; swim good, fair, poor", map[string]string{
				"tank": one, "lobes": "4", "golden": "80", "swim": "good", "dead": "2", "text": "clear water",
			}),
			row(model.KindSizes, 16.9, "shell lengths in um, all that were read", map[string]string{"tank": one, "um": "702,718,745,731"}),
			row(model.KindCount, 16, "live (and dead) larvae, one number a subsample", map[string]string{
				"tank": one, "live": "38,42,50", "dead": "0,1,0", "sample_ml": "10", "holding_ml": "2000",
			}),
			row(model.KindRemoved, 15.9, "larvae sampled or culled", map[string]string{"tank": one, "larvae": "30", "why": "sample"}),
			row(model.KindWashed, 10, "a tank washed and rinsed", map[string]string{"tank": "EXAMPLE-3", "acid_ml": "40", "water_litres": "3.96"}),
			row(model.KindFilled, 9.8, "a washed tank full of clean water", map[string]string{"tank": "EXAMPLE-3", "celsius": "27.6"}),
			stocked,
			row(model.KindMoved, 6, "larvae siphoned over into a ready tank; share 0.5 is half of them", map[string]string{
				"from": one, "to": "EXAMPLE-2", "mesh_um": "200", "from_celsius": "27.9", "to_celsius": "27.5",
			}),
			row(model.KindService, 5.5, "a tank out of use (out true) or back (false)", map[string]string{"tank": one, "out": "true", "why": "airlift blocked"}),
			row(model.KindSuspect, 5, "a tank marked suspect (on true) or cleared (false)", map[string]string{"tank": "EXAMPLE-2", "on": "true", "why": "pale gut"}),
			row(model.KindEnded, 2, "a tank's larvae settled, discarded or lost", map[string]string{"tank": "EXAMPLE-2", "why": "settled", "larvae": "8200"}),
			row(model.KindNoted, 1, "a remark on a tank; without a tank on the room", map[string]string{"tank": "EXAMPLE-2", "text": "power cut from 14:00 to 16:30"}),
		},
	}
}
