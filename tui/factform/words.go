package factform

import (
	"errors"
	"strconv"
	"strings"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/text"
)

const notSaved = "not saved: "

// NotSaved words for a person why a fact was not entered.
func NotSaved(err error) string {
	var readOnly *desk.ReadOnlyError
	if errors.As(err, &readOnly) {
		return text.Clean(err.Error())
	}
	if wrong, ok := err.(*model.FieldError); ok {
		return text.Clean("not taken: " + wrong.Problem)
	}
	return text.Clean(notSaved + strings.TrimPrefix(err.Error(), notSaved))
}

// Label is a field's name as the screens show it.
func label(field model.Field) string { return strings.ReplaceAll(field.Name, "_", " ") }

// Unit is a unit of the model as it stands beside a figure.
func Unit(unit string) string {
	switch unit {
	case "degrees C":
		return "°C"
	case "um":
		return "µm"
	case "per cent":
		return "%"
	}
	return unit
}

func unit(field model.Field) string { return Unit(field.Unit) }

// note says what to type.
func note(field model.Field) string {
	s := what(field)
	if !field.Need {
		return strings.TrimPrefix(s+"; may stay empty", "; ")
	}
	return s
}

func what(field model.Field) string {
	switch field.Type {
	case model.TankName:
		return "the name of a tank"
	case model.Source:
		return "the name of a water source"
	case model.AlgaName:
		return "the short name of an alga"
	case model.ShortName:
		return "a short name"
	case model.Word:
		words := make([]string, len(field.Words))
		for i, w := range field.Words {
			words[i] = strconv.Itoa(i+1) + " " + w
		}
		return strings.Join(words, ", ")
	case model.Number:
		return "a number; . or , before the decimals"
	case model.Whole:
		return "a whole number"
	case model.Flag:
		return "y yes, n no"
	case model.HatchDay:
		return "a date as 2026-11-08"
	case model.Numbers:
		return "numbers with spaces between; . before the decimals"
	case model.Wholes:
		return "whole numbers with spaces between, one a subsample"
	case model.Legs:
		return "moves as C5:C1, C2:C5"
	}
	return ""
}

// Meaning says in a few words what a kind of entry stands for.
func Meaning(k model.Kind) string {
	switch k {
	case model.KindStocked:
		return "a batch, or part of it, put into a ready tank"
	case model.KindMoved:
		return "larvae siphoned from one tank into another"
	case model.KindWashed:
		return "a tank acid-washed and rinsed, still empty"
	case model.KindFilled:
		return "a tank filled with clean water: ready"
	case model.KindTemperature:
		return "a temperature of a tank or a water source"
	case model.KindSizes:
		return "shell lengths read at the microscope"
	case model.KindLook:
		return "lobes, gut, swimming and dead at the microscope"
	case model.KindCount:
		return "larvae counted in subsamples"
	case model.KindCells:
		return "algae cells counted, of a culture or left in a tank"
	case model.KindFed:
		return "algae poured into a tank"
	case model.KindWater:
		return "salinity, pH, oxygen, ammonia of a tank or a source"
	case model.KindRemoved:
		return "larvae sampled or culled"
	case model.KindEnded:
		return "a tank's larvae settled, discarded or lost"
	case model.KindService:
		return "a tank out of use, or back"
	case model.KindSuspect:
		return "a tank marked suspect, or cleared"
	case model.KindNoted:
		return "a remark on the room or a tank"
	}
	return ""
}
