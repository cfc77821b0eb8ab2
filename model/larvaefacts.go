package model

import "drainboard/model/count"

// Stocked is a batch, or part of it, put into a ready tank.
type Stocked struct {
	Tank    string
	Batch   string
	Hatched Hatched
	Larvae  *float64
	Origin  string
}

func (*Stocked) Kind() Kind { return KindStocked }

func (f *Stocked) Fields() []Field {
	return []Field{
		need("tank", TankName, "", anyRange, &f.Tank),
		need("batch", ShortName, "", anyRange, &f.Batch),
		need("hatched", HatchDay, "", anyRange, &f.Hatched),
		may("larvae", Whole, "larvae", larvaeRange, &f.Larvae),
		may("origin", Text, "", anyRange, &f.Origin),
	}
}

// Moved is larvae siphoned from one tank to another through a sieve.
type Moved struct {
	From, To    string
	MeshUM      *float64
	FromCelsius *float64
	ToCelsius   *float64
	Share       *float64 // of the larvae; all of them where left out
	Join        bool     // the destination may hold larvae already
	Why         string
}

func (*Moved) Kind() Kind { return KindMoved }

func (f *Moved) Fields() []Field {
	return []Field{
		need("from", TankName, "", anyRange, &f.From),
		need("to", TankName, "", anyRange, &f.To),
		may("mesh_um", Number, "um", meshRange, &f.MeshUM),
		may("from_celsius", Number, "degrees C", celsiusRange, &f.FromCelsius),
		may("to_celsius", Number, "degrees C", celsiusRange, &f.ToCelsius),
		may("share", Number, "", shareRange, &f.Share),
		may("join", Flag, "", anyRange, &f.Join),
		may("why", Text, "", anyRange, &f.Why),
	}
}

// All reports whether every larva was moved.
func (f *Moved) All() bool { return f.Share == nil || *f.Share >= 1 }

// Removed is larvae sampled or culled from a tank.
type Removed struct {
	Tank   string
	Larvae float64
	Why    string
}

func (*Removed) Kind() Kind { return KindRemoved }

func (f *Removed) Fields() []Field {
	return []Field{
		need("tank", TankName, "", anyRange, &f.Tank),
		need("larvae", Whole, "larvae", larvaeRange, &f.Larvae),
		need("why", Text, "", anyRange, &f.Why),
	}
}

// The words of Ended.Why.
const (
	Settled   = "settled"
	Discarded = "discarded"
	Lost      = "lost"
)

// Ended is the larvae of a tank leaving the room.
type Ended struct {
	Tank   string
	Why    string
	Larvae *float64
}

func (*Ended) Kind() Kind { return KindEnded }

func (f *Ended) Fields() []Field {
	return []Field{
		need("tank", TankName, "", anyRange, &f.Tank),
		words(need("why", Word, "", anyRange, &f.Why), Settled, Discarded, Lost),
		may("larvae", Whole, "larvae", Range{Low: 0, High: 1e12}, &f.Larvae),
	}
}

// Sizes is a list of shell lengths read at the microscope, in micrometres.
type Sizes struct {
	Tank          string
	UM            []float64
	UMPerDivision *float64 // the eyepiece factor the readings were made with
}

func (*Sizes) Kind() Kind { return KindSizes }

func (f *Sizes) Fields() []Field {
	return []Field{
		need("tank", TankName, "", anyRange, &f.Tank),
		need("um", Numbers, "um", lengthRange, &f.UM),
		may("um_per_division", Number, "um", Range{Low: 0, High: 1000, Above: true}, &f.UMPerDivision),
	}
}

// The words of Look.Swim.
const (
	SwimGood = "good"
	SwimFair = "fair"
	SwimPoor = "poor"
)

// Look is what the stereo microscope showed of a tank's larvae.
type Look struct {
	Tank   string
	Lobes  *int
	Golden *float64 // per cent of larvae with golden gut
	Swim   string
	Dead   *float64 // per cent
	Text   string
}

func (*Look) Kind() Kind { return KindLook }

func (f *Look) Fields() []Field {
	return []Field{
		need("tank", TankName, "", anyRange, &f.Tank),
		may("lobes", Whole, "lobes", Range{Low: 2, High: 6}, &f.Lobes),
		may("golden", Number, "per cent", percentRange, &f.Golden),
		words(may("swim", Word, "", anyRange, &f.Swim), SwimGood, SwimFair, SwimPoor),
		may("dead", Number, "per cent", percentRange, &f.Dead),
		may("text", Text, "", anyRange, &f.Text),
	}
}

// Count is larvae counted in subsamples of a known volume.
type Count struct {
	Tank      string
	Live      []int // one number a subsample
	SampleML  float64
	HoldingML float64
	Dead      []int // empty shells, one number a subsample
}

func (*Count) Kind() Kind { return KindCount }

func (f *Count) Fields() []Field {
	return []Field{
		need("tank", TankName, "", anyRange, &f.Tank),
		need("live", Wholes, "larvae", countRange, &f.Live),
		need("sample_ml", Number, "mL", volumeRange, &f.SampleML),
		need("holding_ml", Number, "mL", volumeRange, &f.HoldingML),
		may("dead", Wholes, "larvae", countRange, &f.Dead),
	}
}

// Sample returns what was counted in the terms of package count.
func (f *Count) Sample() count.Sample {
	return count.Sample{Live: f.Live, Dead: f.Dead, SampleML: f.SampleML, HoldingML: f.HoldingML}
}
