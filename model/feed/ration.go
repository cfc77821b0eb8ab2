package feed

// mlPerLitre turns litres into mL, the volume that cells are counted in.
const mlPerLitre = 1000

// Mode is what the volume of the poured culture does to the tank.
type Mode int

const (
	// Plain takes the volume poured as part of the tank's litres:
	//
	//	(want - there) * litres * share / culture
	//
	// the plain sum of the trade. It is exact for a tank that held no food and
	// was filled short by the volume poured; else it falls a little short.
	Plain Mode = iota
	// Diluted takes the volume poured as coming on top of the tank's litres, so
	// that it thins what is there, and pours so much that the cells per mL
	// wanted are reached exactly.
	Diluted
)

// Need is the food wanted in one tank.
type Need struct {
	Litres float64 // water in the tank before the feed
	Want   float64 // cells per mL after the feed
	There  float64 // cells per mL still there, all algae together
	Share  ByAlga  // of the cells to add; any scale, so 3 and 1 is three to one
}

// Ration is what one tank gets.
type Ration struct {
	Cells       ByAlga  // cells to add
	Litres      ByAlga  // litres of each culture to pour
	TotalLitres float64 // litres of all cultures
	Reached     float64 // cells per mL once poured and mixed, the volume poured on top of the tank's litres
}

// RationFor works out the litres of each culture, of so many cells per mL, that
// bring a tank from what is there to what is wanted. The cells to add, not the
// volume, are split by share. Where there is enough already it pours nothing.
//
// It refuses a volume or a culture of 0 or less, negative cells, shares that are
// negative or sum to 0, an alga with a share and no culture, and, in mode
// Diluted, cultures thinner than the food wanted.
func RationFor(n Need, culture ByAlga, mode Mode) (Ration, error) {
	parts, err := n.check(culture)
	if err != nil {
		return Ration{}, err
	}
	perCell := 0.0 // mL poured per cell added
	for _, alga := range parts.Names() {
		perCell += parts[alga] / culture[alga]
	}
	cells := max(0, n.Want-n.There) * n.Litres * mlPerLitre
	if mode == Diluted && cells > 0 {
		room := 1 - n.Want*perCell
		if room < 1e-9 {
			return Ration{}, wrong("culture", "%.0f cells per mL of the mixed cultures cannot reach %s; use denser cultures or want less",
				1/perCell, plain(n.Want))
		}
		cells /= room
	}
	return n.pour(cells, parts, culture), nil
}

// check refuses what cannot be worked out and returns the shares as parts of 1.
func (n Need) check(culture ByAlga) (ByAlga, error) {
	err := firstError(positive("litres", n.Litres), notNegative("want", n.Want), notNegative("there", n.There))
	if err != nil {
		return nil, err
	}
	parts, err := n.Share.parts("share")
	if err != nil {
		return nil, err
	}
	return parts, checkCulture(parts, culture)
}

// checkCulture refuses cultures without cells and algae without a culture.
func checkCulture(parts, culture ByAlga) error {
	for _, alga := range culture.Names() {
		if err := positive("culture", culture[alga]); err != nil {
			return within(alga, err)
		}
	}
	for _, alga := range parts.Names() {
		if _, counted := culture[alga]; !counted {
			return wrong("culture", "no cells per mL known for %q; count that culture or leave it out of the share", alga)
		}
	}
	return nil
}

func (n Need) pour(cells float64, parts, culture ByAlga) Ration {
	r := Ration{Cells: parts.times(cells), Litres: make(ByAlga, len(parts))}
	for alga, c := range r.Cells {
		r.Litres[alga] = c / culture[alga] / mlPerLitre
	}
	r.TotalLitres = r.Litres.Sum()
	r.Reached = n.reached(cells, r.TotalLitres)
	return r
}

// reached is the cells per mL once cells in so many litres are in the tank.
func (n Need) reached(cells, litres float64) float64 {
	return (n.There*n.Litres + cells/mlPerLitre) / (n.Litres + litres)
}

// OverBrim returns the litres by which a feed would overfill a tank that holds
// litres now and capacity when full: fill that much less, or draw it off first.
func OverBrim(litres, added, capacity float64) float64 {
	return max(0, litres+added-capacity)
}
