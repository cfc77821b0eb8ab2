package session

import "strconv"

// reasonsFor lists what a crew says most often, so that a reason can be given by
// its digit; any other is typed.
func reasonsFor(a act) []string {
	switch a {
	case goAhead:
		return []string{"looked twice, it is so", "larvae cannot wait", "nothing else at hand"}
	case leaveOut:
		return []string{"larvae look weak", "no ready tank", "done at the next session", "moved already"}
	case putOff:
		return []string{"hands full", "not at hand", "waiting for water", "someone else does it"}
	case closeIncomplete:
		return []string{"out of time", "no power or water", "handed to the next shift", "larvae in trouble"}
	}
	return nil
}

// reasonTyped reads a reason: the digit of one in the list, or its own words.
func reasonTyped(list []string, typed string) string {
	if n, err := strconv.Atoi(typed); err == nil && n >= 1 && n <= len(list) {
		return list[n-1]
	}
	return typed
}

// warmReasons are those for going ahead between waters that lie too far apart.
func warmReasons() []string {
	return []string{"measured twice, larvae cannot wait", "heater or chiller is out", "brought nearer drop by drop", "nothing else at hand"}
}
