// Package calendar is the screen of the days to come: one row a day with the
// tanks that fall due, the minutes they take the crew, and what they ask for of
// sea water, acid and algae; the chosen day in words; and a proposal by which no
// day is too full.
//
// It works nothing out itself, model/calendar does, and it enters nothing. The
// root of the interface opens it by its name; it imports no other screen.
package calendar
