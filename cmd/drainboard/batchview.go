package main

import (
	"time"

	"drainboard/model"
	"drainboard/model/growth"
)

// batchView is one batch in show --json.
type batchView struct {
	Name      string   `json:"name"`
	Hatched   string   `json:"hatched"`
	AgeDays   int      `json:"age_days"`
	Tanks     []string `json:"tanks"`
	Survival  *float64 `json:"survival"`
	MeanUM    *float64 `json:"mean_um"`
	UMPerDay  *float64 `json:"um_per_day"`
	ReadyDate *string  `json:"ready_date"`
	ReadyLow  *string  `json:"ready_low"`
	ReadyHigh *string  `json:"ready_high"`
}

// batchViews shows the batches that have larvae in the room.
func batchViews(l *model.Ledger, now time.Time) []batchView {
	views := []batchView{}
	for _, b := range l.Batches() {
		if l.Here(b) {
			views = append(views, viewBatch(l, b, now))
		}
	}
	return views
}

func viewBatch(l *model.Ledger, b *model.Batch, now time.Time) batchView {
	zone := l.Room().Zone
	v := batchView{Name: b.Name, Hatched: b.Hatched.String(), AgeDays: b.AgeDays(now, zone)}
	if !b.Hatched.Moment.IsZero() {
		v.Hatched = stamp(b.Hatched.Moment, zone)
	}
	for _, t := range l.BatchTanks(b) {
		v.Tanks = append(v.Tanks, t.Tank.Name)
	}
	if survival, err := l.Survival(b); err == nil {
		v.Survival = known(survival.Share.Value.X, survival.Share.Value.Known, 3)
	}
	v.addGrowth(l, b)
	return v
}

// addGrowth adds the mean of the last day of lengths, the growth and the day on
// which the batch should be ready, each as far as the looks tell.
func (v *batchView) addGrowth(l *model.Ledger, b *model.Batch) {
	looks, err := l.SampleLooks(b)
	if err != nil || len(looks) == 0 {
		return
	}
	v.MeanUM = known(looks[len(looks)-1].MeanUM, true, 1)
	g, err := l.Growth(b)
	if err != nil {
		return // looks of one day
	}
	fit := g.Best()
	v.UMPerDay = known(fit.PerDay(fit.LastAgeDay), true, 1)
	ready, err := l.Ready(b)
	if err != nil || ready.State == growth.Never {
		return // looks of two days, or no growth to speak of
	}
	v.ReadyDate = dayAt(l, b, ready.AgeDays)
	if !ready.LowOpen {
		v.ReadyLow = dayAt(l, b, ready.Interval.Low)
	}
	if !ready.HighOpen {
		v.ReadyHigh = dayAt(l, b, ready.Interval.High)
	}
}

func dayAt(l *model.Ledger, b *model.Batch, ageDays float64) *string {
	day := l.DayAtAge(b, ageDays).String()
	return &day
}
