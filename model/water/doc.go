// Package water holds the sums about the water of a tank: differences of
// temperature and the ways out of too great a one (mixing, waiting, heating,
// dripping), the trend of timed readings, and the properties of sea water:
// density, heat capacity, hydrometer readings, salinity, oxygen and ammonia.
//
// It is pure functions over numbers. It knows no tanks, no entries, no clock
// and no screen, and it imports the standard library alone. Whoever shows a
// figure rounds it; nothing here does.
//
// Units are in the names or the comments: temperatures are degrees Celsius as
// a modern thermometer reads them (ITS-90), salinities are practical
// salinities (PSS-78, near enough grams per kilogram), volumes are litres and
// pressures are atmospheres. Every function that takes a person's numbers
// refuses what cannot be with a [FieldError].
//
// The command line, the screens and the order of moves import it.
package water
