package session

import (
	"fmt"
	"strconv"
	"strings"

	"drainboard/model"
)

// tankTyped reads a tank's name as it can be typed, on a number pad too: the
// name itself; its digits alone where no other tank has the same; or a point and
// the tank's place in the room's list, as in .3. What it cannot read as a tank is
// given back as it was typed, to be refused by name; digits that fit several tanks
// or none are refused here.
func tankTyped(room *model.Room, typed string) (string, error) {
	typed = strings.TrimSpace(typed)
	if i, ok := room.Tank(typed); ok {
		return room.Tanks[i].Name, nil
	}
	if place, ok := strings.CutPrefix(strings.ReplaceAll(typed, ",", "."), "."); ok && digits(place) {
		n, err := strconv.Atoi(place)
		if err != nil || n < 1 || n > len(room.Tanks) {
			return "", fmt.Errorf("%s: the room's list has %d tanks", typed, len(room.Tanks))
		}
		return room.Tanks[n-1].Name, nil
	}
	if !digits(typed) {
		return typed, nil
	}
	var fits []int
	for i, t := range room.Tanks {
		if sameDigits(digitsOf(t.Name), typed) {
			fits = append(fits, i)
		}
	}
	switch len(fits) {
	case 0:
		return "", fmt.Errorf("no tank has the number %s; on a number pad type a point and its place: %s", typed, places(room, nil))
	case 1:
		return room.Tanks[fits[0]].Name, nil
	}
	return "", fmt.Errorf("%s fits several tanks; type the name, or a point and its place: %s", typed, places(room, fits))
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

func digitsOf(name string) string {
	return strings.Map(func(r rune) rune {
		if r < '0' || r > '9' {
			return -1
		}
		return r
	}, name)
}

// sameDigits compares numbers as people read them: 05 is 5.
func sameDigits(a, b string) bool {
	return a != "" && strings.TrimLeft(a, "0") == strings.TrimLeft(b, "0")
}

// places lists tanks with their places in the room's list; nil are all.
func places(room *model.Room, which []int) string {
	if which == nil {
		for i := range room.Tanks {
			which = append(which, i)
		}
	}
	words := make([]string, len(which))
	for k, i := range which {
		words[k] = fmt.Sprintf(".%d %s", i+1, room.Tanks[i].Name)
	}
	return strings.Join(words, ", ")
}
