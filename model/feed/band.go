package feed

// Band is the ration from an age on, up to the next band.
type Band struct {
	FromDay    int     // age in days
	CellsPerML float64 // wanted in the tank
	Share      ByAlga  // by cells
}

// BandAt returns the band of an age in days. It refuses bands that are not in
// the order of their days, and an age no band covers.
func BandAt(bands []Band, ageDays int) (Band, error) {
	found := -1
	for i, b := range bands {
		if i > 0 && b.FromDay <= bands[i-1].FromDay {
			return Band{}, wrong("ration", "from_day %d comes after %d; put the bands in the order of their days",
				b.FromDay, bands[i-1].FromDay)
		}
		if b.FromDay <= ageDays {
			found = i
		}
	}
	if found < 0 {
		return Band{}, wrong("ration", "no band for day %d; add one with from_day %d or less", ageDays, ageDays)
	}
	return bands[found], nil
}
