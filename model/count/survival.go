package count

// Survival is the share of a batch that is alive.
type Survival struct {
	Share Estimate // 1 is all
	// Above is set where more were counted than there were at the start. That
	// happens, as when clinging larvae hid from an earlier count; it is shown and
	// marked, not refused.
	Above bool
}

// Surviving returns larvae now over larvae at the start, the start reduced to
// the share kept: the product of Kept over every deliberate removal, 1 where
// there was none. So a larva taken out counts neither as dead nor as alive. The
// limits are those of Over; kept is taken as exact. It refuses a kept share that
// is not above 0 and at most 1.
func Surviving(now, start Estimate, kept float64) (Survival, error) {
	if !(kept > 0 && kept <= 1) {
		return Survival{}, wrong("kept", "%s is not possible; give a share above 0 and up to 1", plain(kept))
	}
	share := now.Over(start.times(kept))
	return Survival{Share: share, Above: share.Value.Known && share.Value.X > 1}, nil
}

// Kept returns the share of the standing larvae that is left when some are
// removed: 0 where as many or more are removed as are thought to stand. Unknown
// where the standing larvae are unknown or none. It refuses a negative removal.
func Kept(standing Estimate, removed float64) (Figure, error) {
	if err := notNegative("larvae", removed); err != nil {
		return Figure{}, err
	}
	if !standing.Value.Known || standing.Value.X <= 0 {
		return Figure{}, nil
	}
	return Known(max(0, 1-removed/standing.Value.X)), nil
}
