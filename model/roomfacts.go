package model

// Washed is an acid wash and rinse done; the tank is still empty.
type Washed struct {
	Tank        string
	AcidML      *float64
	WaterLitres *float64
}

func (*Washed) Kind() Kind { return KindWashed }

func (f *Washed) Fields() []Field {
	return []Field{
		need("tank", TankName, "", anyRange, &f.Tank),
		may("acid_ml", Number, "mL", Range{Low: 0, High: 1e6}, &f.AcidML),
		may("water_litres", Number, "L", Range{Low: 0, High: 1e6}, &f.WaterLitres),
	}
}

// Filled is a washed tank filled with clean water: ready.
type Filled struct {
	Tank    string
	Celsius *float64
}

func (*Filled) Kind() Kind { return KindFilled }

func (f *Filled) Fields() []Field {
	return []Field{
		need("tank", TankName, "", anyRange, &f.Tank),
		may("celsius", Number, "degrees C", celsiusRange, &f.Celsius),
	}
}

// Temperature is a reading of a tank or of a water source.
type Temperature struct {
	Tank, Supply string // one of the two
	Celsius      float64
}

func (*Temperature) Kind() Kind { return KindTemperature }

func (f *Temperature) Fields() []Field {
	return []Field{
		may("tank", TankName, "", anyRange, &f.Tank),
		may("supply", Source, "", anyRange, &f.Supply),
		need("celsius", Number, "degrees C", celsiusRange, &f.Celsius),
	}
}

// Cells is microalgae counted in a chamber: of a culture, or left in a tank.
type Cells struct {
	Algae, Tank string // one of the two
	Counts      []int
	ChamberML   float64 // the volume one count covers
	Dilution    *float64
}

func (*Cells) Kind() Kind { return KindCells }

func (f *Cells) Fields() []Field {
	return []Field{
		may("algae", AlgaName, "", anyRange, &f.Algae),
		may("tank", TankName, "", anyRange, &f.Tank),
		need("counts", Wholes, "cells", countRange, &f.Counts),
		need("chamber_ml", Number, "mL", Range{Low: 0, High: 1000, Above: true}, &f.ChamberML),
		may("dilution", Number, "", dilutionRange, &f.Dilution),
	}
}

// Fed is algae poured into a tank, litres of culture by alga.
type Fed struct {
	Tank   string
	Litres map[string]float64
}

func (*Fed) Kind() Kind { return KindFed }

func (f *Fed) Fields() []Field {
	return []Field{
		need("tank", TankName, "", anyRange, &f.Tank),
		need("litres", PerAlga, "L", Range{Low: 0, High: 1e5}, &f.Litres),
	}
}

// Water is what was measured in the water of a tank or a source.
type Water struct {
	Tank, Supply string // one of the two
	Salinity     *float64
	PH           *float64
	OxygenMgL    *float64
	AmmoniaMgL   *float64 // total ammonia nitrogen
}

func (*Water) Kind() Kind { return KindWater }

func (f *Water) Fields() []Field {
	return []Field{
		may("tank", TankName, "", anyRange, &f.Tank),
		may("supply", Source, "", anyRange, &f.Supply),
		may("salinity", Number, "", Range{Low: 0, High: 60}, &f.Salinity),
		may("ph", Number, "", Range{Low: 4, High: 11}, &f.PH),
		may("oxygen_mg_l", Number, "mg/L", Range{Low: 0, High: 30}, &f.OxygenMgL),
		may("ammonia_mg_l", Number, "mg/L", Range{Low: 0, High: 100}, &f.AmmoniaMgL),
	}
}

// Service takes a tank out of use, or back into it.
type Service struct {
	Tank string
	Out  bool
	Why  string
}

func (*Service) Kind() Kind { return KindService }

func (f *Service) Fields() []Field {
	return []Field{
		need("tank", TankName, "", anyRange, &f.Tank),
		need("out", Flag, "", anyRange, &f.Out),
		may("why", Text, "", anyRange, &f.Why),
	}
}

// Suspect marks a tank to be changed last and with its own gear, or clears it.
type Suspect struct {
	Tank string
	On   bool
	Why  string
}

func (*Suspect) Kind() Kind { return KindSuspect }

func (f *Suspect) Fields() []Field {
	return []Field{
		need("tank", TankName, "", anyRange, &f.Tank),
		need("on", Flag, "", anyRange, &f.On),
		may("why", Text, "", anyRange, &f.Why),
	}
}

// Opened begins a change session with the moves agreed on. A tank whose larvae go
// in several parts is the source of as many moves, in equal parts; two of one batch
// that are put together have one destination.
type Opened struct{ Moves []Leg }

func (*Opened) Kind() Kind { return KindOpened }

func (f *Opened) Fields() []Field {
	return []Field{need("moves", Legs, "", anyRange, &f.Moves)}
}

// StepDone is a step of a change session done or deferred. Why holds the reason
// of a deferral, or what was answered when the step was done.
type StepDone struct {
	Session int // n of the session's opened
	Move    int // from 1; 0 for a step of the whole session
	Name    string
	Done    bool
	Why     string
}

func (*StepDone) Kind() Kind { return KindStep }

func (f *StepDone) Fields() []Field {
	return []Field{
		need("session", Whole, "", entryRange, &f.Session),
		need("move", Whole, "", moveRange, &f.Move),
		need("name", ShortName, "", anyRange, &f.Name),
		need("done", Flag, "", anyRange, &f.Done),
		may("why", Text, "", anyRange, &f.Why),
	}
}

// Closed ends a change session.
type Closed struct {
	Session  int
	Complete bool
	Why      string
}

func (*Closed) Kind() Kind { return KindClosed }

func (f *Closed) Fields() []Field {
	return []Field{
		need("session", Whole, "", entryRange, &f.Session),
		need("complete", Flag, "", anyRange, &f.Complete),
		may("why", Text, "", anyRange, &f.Why),
	}
}

// Corrected makes an earlier entry void, or lets it read as if the fields in
// Set had been given. Set may also hold at and by.
type Corrected struct {
	Entry int
	Why   string
	Void  bool
	Set   map[string]any
}

func (*Corrected) Kind() Kind { return KindCorrected }

func (f *Corrected) Fields() []Field {
	return []Field{
		need("entry", Whole, "", entryRange, &f.Entry),
		need("why", Text, "", anyRange, &f.Why),
		may("void", Flag, "", anyRange, &f.Void),
		may("set", Changes, "", anyRange, &f.Set),
	}
}

// Noted is a remark on the room or on one tank.
type Noted struct {
	Text string
	Tank string
}

func (*Noted) Kind() Kind { return KindNoted }

func (f *Noted) Fields() []Field {
	return []Field{
		need("text", Text, "", anyRange, &f.Text),
		may("tank", TankName, "", anyRange, &f.Tank),
	}
}
