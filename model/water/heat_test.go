package water

import "testing"

func TestWarming(t *testing.T) {
	// EOS-80 at salinity 35 and 25 degrees: 1000 L, 1 K = 4.0910 MJ = 1.1364 kWh,
	// so 1 kW warms it by 0.8800 K an hour (worked out apart from this code).
	got := must(Heating{Litres: 1000, Salinity: 35, From: 25, To: 26, Kilowatts: 1}.Warming())
	near(t, "megajoules", got.Megajoules, 4.0910, 0.002)
	near(t, "kilowatt hours", got.KilowattHours, 1.1364, 0.0005)
	near(t, "kelvin an hour", 60/got.Minutes, 0.8800, 0.0005)
	near(t, "half the time at 2 kW", must(Heating{Litres: 1000, Salinity: 35, From: 25, To: 26, Kilowatts: 2}.Warming()).Minutes, got.Minutes/2, 1e-9)
	if got := must(Heating{Litres: 1000, Salinity: 35, From: 25, To: 25, Kilowatts: 1}.Warming()); got != (Warming{}) {
		t.Errorf("nothing to warm: got %+v", got)
	}
}

func TestWarmingRefuses(t *testing.T) {
	_, err := Heating{Litres: 100, Salinity: 35, From: 28, To: 26, Kilowatts: 1}.Warming()
	refused(t, err, "to", "cannot cool")
	for _, x := range append(notNumbers(), -1) {
		_, err = Heating{Litres: 100, Salinity: 35, From: 25, To: 26, Kilowatts: x}.Warming()
		refused(t, err, "kilowatts", "more than 0")
		_, err = Heating{Litres: x, Salinity: 35, From: 25, To: 26, Kilowatts: 1}.Warming()
		refused(t, err, "litres", "more than 0")
		_, err = Heating{Litres: 1, Salinity: x, From: 25, To: 26, Kilowatts: 1}.Warming()
		refused(t, err, "salinity", "between 0 and 42")
	}
	_, err = Heating{Litres: 1, Salinity: 35, From: 25, To: 41, Kilowatts: 1}.Warming()
	refused(t, err, "to", "between -2 and 40")
}
