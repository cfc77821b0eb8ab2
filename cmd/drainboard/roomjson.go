package main

import (
	"time"

	"drainboard/model"
)

// roomJSON is room.toml as JSON, under the keys it has there: what the room gives
// and, where it gives nothing, the default in force.
type roomJSON struct {
	Version   int            `json:"version"`
	Name      string         `json:"name"`
	Timezone  string         `json:"timezone,omitempty"` // left out where it is the machine's
	House     houseJSON      `json:"house"`
	Algae     []algaJSON     `json:"algae"`
	Tank      []tankJSON     `json:"tank"`
	Supply    []supplyJSON   `json:"supply"`
	Procedure []stepJSON     `json:"procedure"`
	Entries   map[string]int `json:"entries"` // by kind
	Total     int            `json:"total"`
}

type houseJSON struct {
	ChangeHours    float64         `json:"change_hours"`
	GraceHours     float64         `json:"grace_hours"`
	EarlyHours     float64         `json:"early_hours"`
	WindowHours    float64         `json:"window_hours"`
	LookHours      float64         `json:"look_hours"`
	FeedHours      float64         `json:"feed_hours"`
	Order          string          `json:"order"`
	Crew           int             `json:"crew"`
	DayMinutes     float64         `json:"day_minutes"`
	ReadyUM        float64         `json:"ready_um"`
	ReadyLobes     int             `json:"ready_lobes"`
	GoldenPercent  float64         `json:"golden_percent"`
	DeadPercent    float64         `json:"dead_percent"`
	SieveFactor    float64         `json:"sieve_factor"`
	CullPercent    float64         `json:"cull_percent"`
	CultureHours   float64         `json:"culture_hours"`
	ReservePercent float64         `json:"reserve_percent"`
	Temperature    temperatureJSON `json:"temperature"`
	Minutes        minutesJSON     `json:"minutes"`
	Litres         flowJSON        `json:"litres_per_minute"`
	Wash           washRulesJSON   `json:"wash"`
	Mesh           []meshJSON      `json:"mesh"`
	Density        []densityJSON   `json:"density"`
	Ration         []rationJSON    `json:"ration"`
	Growth         []corridorJSON  `json:"growth"`
	Eyepiece       []eyepieceJSON  `json:"eyepiece"`
}

type temperatureJSON struct {
	Best     [2]float64 `json:"best"`
	Bearable [2]float64 `json:"bearable"`
	StepFine float64    `json:"step_fine"`
	StepHold float64    `json:"step_hold"`
}

type minutesJSON struct {
	Handle float64 `json:"handle"`
	Wash   float64 `json:"wash"`
}

type flowJSON struct {
	Drain float64 `json:"drain"`
	Fill  float64 `json:"fill"`
}

type washRulesJSON struct {
	MLPerLitre   float64 `json:"ml_per_litre"`
	TankLitres   float64 `json:"tank_litres"`
	BinLitres    float64 `json:"bin_litres"`
	StockPercent float64 `json:"stock_percent"`
}

type meshJSON struct {
	FromDay int       `json:"from_day"`
	UM      []float64 `json:"um"`
}

type densityJSON struct {
	FromDay  int     `json:"from_day"`
	PerLitre float64 `json:"per_litre"`
}

type rationJSON struct {
	FromDay    int                `json:"from_day"`
	CellsPerML float64            `json:"cells_per_ml"`
	Share      map[string]float64 `json:"share"`
}

type corridorJSON struct {
	FromDay int     `json:"from_day"`
	LowUM   float64 `json:"low_um"`
	HighUM  float64 `json:"high_um"`
}

type eyepieceJSON struct {
	Name  string  `json:"name"`
	UMPer float64 `json:"um_per_division"`
}

type algaJSON struct {
	Name      string  `json:"name"`
	Full      string  `json:"full"`
	PgPerCell float64 `json:"pg_per_cell"`
}

type tankJSON struct {
	Name   string  `json:"name"`
	Litres float64 `json:"litres"`
	Row    int     `json:"row,omitempty"`
	Column int     `json:"column,omitempty"`
}

type supplyJSON struct {
	Name string `json:"name"`
}

type stepJSON struct {
	Name string `json:"name"`
	Lane string `json:"lane"`
	Text string `json:"text"`
}

// roomOf is a room with the numbers of its entries.
func roomOf(l *model.Ledger) roomJSON {
	room := l.Room()
	r := roomJSON{
		Version: 1, Name: room.Name, Timezone: zoneName(room.Zone), House: houseOf(room.House),
		Algae: []algaJSON{}, Tank: []tankJSON{}, Supply: []supplyJSON{}, Procedure: []stepJSON{},
		Entries: map[string]int{}, Total: len(l.Entries()),
	}
	for _, a := range room.Algae {
		r.Algae = append(r.Algae, algaJSON(a))
	}
	for _, t := range room.Tanks {
		r.Tank = append(r.Tank, tankJSON(t))
	}
	for _, s := range room.Supplies {
		r.Supply = append(r.Supply, supplyJSON(s))
	}
	for _, s := range room.Procedure {
		r.Procedure = append(r.Procedure, stepJSON{s.Name, string(s.Lane), s.Text})
	}
	for _, e := range l.Entries() {
		r.Entries[string(e.Kind())]++
	}
	return r
}

// zoneName is a zone as room.toml names it; the machine's own has no name there.
func zoneName(zone *time.Location) string {
	if zone == time.Local {
		return ""
	}
	return zone.String()
}

func houseOf(h model.House) houseJSON {
	t := h.Temperature
	return houseJSON{
		ChangeHours: h.ChangeHours, GraceHours: h.GraceHours, EarlyHours: h.EarlyHours, WindowHours: h.WindowHours,
		LookHours: h.LookHours, FeedHours: h.FeedHours, Order: h.Order, Crew: h.Crew, DayMinutes: h.DayMinutes,
		ReadyUM: h.Growth.ReadyUM, ReadyLobes: h.Growth.ReadyLobes,
		GoldenPercent: h.Growth.GoldenShare, DeadPercent: h.Growth.DeadShare,
		SieveFactor: h.Growth.SieveFactor, CullPercent: h.Growth.CullPercent,
		CultureHours: h.Feeding.CultureHours, ReservePercent: h.Feeding.ReserveShare,
		Temperature: temperatureJSON{
			[2]float64{t.Best.Low, t.Best.High}, [2]float64{t.Bearable.Low, t.Bearable.High}, t.StepFine, t.StepHold,
		},
		Minutes: minutesJSON(h.Minutes), Litres: flowJSON(h.Litres), Wash: washRulesJSON(h.Wash),
		Mesh:     mapped(h.Mesh, func(b model.MeshBand) meshJSON { return meshJSON(b) }),
		Density:  mapped(h.Density, func(b model.DensityBand) densityJSON { return densityJSON(b) }),
		Ration:   mapped(h.Ration, func(b model.RationBand) rationJSON { return rationJSON(b) }),
		Growth:   mapped(h.Corridor, func(b model.GrowthBand) corridorJSON { return corridorJSON(b) }),
		Eyepiece: mapped(h.Growth.Eyepieces, func(m model.Magnification) eyepieceJSON { return eyepieceJSON(m) }),
	}
}

// mapped turns every item of a list into another; the list is never null in
// JSON.
func mapped[A, B any](items []A, turn func(A) B) []B {
	out := make([]B, len(items))
	for i, x := range items {
		out[i] = turn(x)
	}
	return out
}
