package water

import (
	"cmp"
	"math"
	"strconv"
)

// Scheme is a way to reckon the pKa of ammonium. They differ by up to a
// third, chiefly because each belongs to a scale of pH: take the one that goes
// with how the pH was measured.
type Scheme string

// The schemes.
const (
	// EPASea is the form of the saltwater criteria of the US EPA 1989
	// (440/5-88-004), after Whitfield 1974 and Hampson 1977. For a pH meter set
	// with NBS (NIST) buffers, which is what stands on a bench.
	EPASea Scheme = "epa"
	// CleggTotal is Clegg and Whitfield 1995 (Geochimica et Cosmochimica Acta
	// 59:2403-2421) for pH on the total scale, as from a dye or TRIS buffers.
	CleggTotal Scheme = "clegg-total"
	// CleggFree is the same work for pH on the free hydrogen ion scale.
	CleggFree Scheme = "clegg-free"
	// EmersonFresh is Emerson, Russo, Lund and Thurston 1975, for fresh water
	// and NBS buffers.
	EmersonFresh Scheme = "emerson"
)

// freshBelow is the salinity below which water is called fresh.
const freshBelow = 0.5

// SchemeFor is the scheme for a reading with an NBS pH meter: EmersonFresh
// below a salinity of 0.5, EPASea from there on.
func SchemeFor(salinity float64) Scheme {
	if salinity < freshBelow {
		return EmersonFresh
	}
	return EPASea
}

// MgNH3PerMgN is the mass of ammonia that holds one of nitrogen. Ask whether a
// test kit reads its total ammonia as N or as NH3.
const MgNH3PerMgN = 1.21589

// Ammonia is a water whose total ammonia was measured.
type Ammonia struct {
	Celsius  float64 // 0 to 40
	Salinity float64 // 0 to 40
	PH       float64 // 4 to 11, on the scale the scheme asks for
	TotalMgL float64 // total ammonia, mg/L, as nitrogen or as NH3
	Scheme   Scheme  // empty: SchemeFor(Salinity)
}

// Unionised is the part of total ammonia that is NH3, the poisonous one.
type Unionised struct {
	Percent float64
	MgL     float64 // in the same terms as the total: as N if that was as N
	Scheme  Scheme  // the one used
}

// Unionised reckons the share 1/(1 + 10^(pKa - pH)).
func (a Ammonia) Unionised() (Unionised, error) {
	err := cmp.Or(
		between("celsius", a.Celsius, 0, 40),
		between("salinity", a.Salinity, 0, 40),
		between("ph", a.PH, 4, 11),
		between("total-mg-l", a.TotalMgL, 0, 1000),
	)
	if err != nil {
		return Unionised{}, err
	}
	scheme := cmp.Or(a.Scheme, SchemeFor(a.Salinity))
	pKa, err := scheme.pKa(a.Celsius+kelvin, a.Salinity)
	if err != nil {
		return Unionised{}, err
	}
	share := 1 / (1 + math.Pow(10, pKa-a.PH))
	return Unionised{Percent: 100 * share, MgL: share * a.TotalMgL, Scheme: scheme}, nil
}

func (s Scheme) pKa(t, salinity float64) (float64, error) {
	switch s {
	case EPASea:
		return epaSea(t, salinity), nil
	case CleggTotal:
		return cleggTotal(t, salinity), nil
	case CleggFree:
		return cleggFree(t, salinity), nil
	case EmersonFresh:
		return 0.09018 + 2729.92/t, nil
	}
	return 0, &FieldError{"scheme", strconv.Quote(string(s)), "must be epa, clegg-total, clegg-free or emerson"}
}

// epaSea goes by ionic strength, at one atmosphere.
func epaSea(t, s float64) float64 {
	return 9.245 + 0.116*ionicStrength(s) + 0.0324*(298-t) + 0.0415/t
}

func ionicStrength(salinity float64) float64 {
	return 19.9273 * salinity / (1000 - 1.005109*salinity)
}

// cleggPure is the pKa in pure water.
func cleggPure(t float64) float64 { return 9.244605 - 2729.33*(1/298.15-1/t) }

func cleggTotal(t, s float64) float64 {
	root := math.Sqrt(t)
	return cleggPure(t) +
		(0.04203362-11.24742/t)*math.Pow(s, 0.25) +
		(-13.64160+1.176949*root-0.02860785*t+545.4834/t)*math.Sqrt(s) +
		(-0.1462507+0.009022648*root-1.471361e-4*t+10.54250/t)*math.Pow(s, 1.5) +
		(0.004669309-1.691742e-4*root-0.5677934/t)*s*s +
		(-2.354039e-5+0.009698623/t)*math.Pow(s, 2.5)
}

func cleggFree(t, s float64) float64 {
	return cleggPure(t) +
		(0.0500616-9.412696/t-2.029559e-7*t*t)*math.Sqrt(s) +
		(-0.0142372+1.46041e-5*t+3.730005/t)*s +
		(7.1047e-5-0.0229021/t)*s*s +
		(-5.521278e-7+1.95413e-4/t)*s*s*s
}
