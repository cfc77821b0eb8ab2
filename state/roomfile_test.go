package state

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"drainboard/model"
)

const roomsDir = "../testdata/rooms"

var byZone = cmp.Comparer(func(a, b *time.Location) bool { return a.String() == b.String() })

func TestEveryKeyIsRead(t *testing.T) {
	text := readFile(t, roomsDir, "every-key", "room.toml")
	got, problems := decodeRoom("room.toml", text, "x")
	for _, p := range problems {
		t.Error(p)
	}
	want := &model.Room{
		Name: "Südraum", Zone: nassau(t),
		House: model.House{
			ChangeHours: 24, GraceHours: 3.5, WindowHours: 8, EarlyHours: 10, LookHours: 12, FeedHours: 8,
			Order: model.DueFirst, Crew: 1, DayMinutes: 240,
			Temperature: model.TemperatureRules{Best: model.Band{Low: 26.5, High: 28.5}, Bearable: model.Band{Low: 24, High: 31}, StepFine: 1.5, StepHold: 3},
			Minutes:     model.MinuteRules{Handle: 7, Wash: 9},
			Litres:      model.FlowRules{Drain: 5, Fill: 10},
			Wash:        model.WashRules{MLPerLitre: 12.5, TankLitres: 5, BinLitres: 25, StockPercent: 20},
			Growth: model.GrowthRules{
				ReadyUM: 1000, ReadyLobes: 4, GoldenShare: 60, DeadShare: 10, SieveFactor: 0.9, CullPercent: 3,
				Eyepieces: []model.Magnification{{Name: "4x", UMPer: 24.5}},
			},
			Feeding:  model.FeedRules{CultureHours: 24, ReserveShare: 20},
			Mesh:     []model.MeshBand{{FromDay: 0, UM: []float64{90}}, {FromDay: 10, UM: []float64{180, 210.5}}},
			Density:  []model.DensityBand{{FromDay: 0, PerLitre: 150}, {FromDay: 10, PerLitre: 40}},
			Ration:   []model.RationBand{{FromDay: 2, CellsPerML: 8000, Share: map[string]float64{"T-Iso": 3, "chaet 2": 1}}},
			Corridor: []model.GrowthBand{{FromDay: 7, LowUM: 400, HighUM: 550}},
		},
		Algae:    []model.Alga{{Name: "T-Iso", Full: "Tisochrysis", PgPerCell: 20.5}, {Name: "chaet 2", Full: "chaet 2"}},
		Tanks:    []model.Tank{{Name: "C1", Litres: 120, Row: 2, Column: 3}, {Name: "D 1", Litres: 60.5}},
		Supplies: []model.Supply{{Name: "header"}, {Name: "chiller"}},
	}
	if diff := cmp.Diff(want, got, byZone); diff != "" {
		t.Errorf("room differs (-want +got):\n%s", diff)
	}
}

func TestWhatIsLeftOutHasItsDefault(t *testing.T) {
	f := openRoom(t, filepath.Join(roomsDir, "smallest"), Options{})
	want := &model.Room{
		Name: "smallest", Zone: time.UTC, House: model.DefaultHouse(), Algae: model.DefaultAlgae(),
		Tanks: []model.Tank{{Name: "A", Litres: 40}}, Procedure: model.DefaultProcedure(),
	}
	if diff := cmp.Diff(want, f.Room(), byZone); diff != "" {
		t.Errorf("room differs (-want +got):\n%s", diff)
	}
}

func TestDefaultZoneIsTheMachines(t *testing.T) {
	room, problems := decodeRoom("room.toml", "version = 1\n[[tank]]\nname = \"A\"\nlitres = 40\n", "x")
	if len(problems) > 0 || room.Zone != time.Local {
		t.Errorf("zone = %v, problems %v; want the machine's", room.Zone, problems)
	}
}

// The default ration is of an alga that a room with algae of its own may lack.
func TestNoDefaultRationOfAnAlgaTheRoomLacks(t *testing.T) {
	text := "version = 1\n[[algae]]\nname = \"chaet\"\n[[tank]]\nname = \"A\"\nlitres = 40\n"
	room, problems := decodeRoom("room.toml", text, "x")
	if len(problems) > 0 || len(room.House.Ration) > 0 {
		t.Errorf("ration = %v, problems %v; want none of either", room.House.Ration, problems)
	}
}

// small is a room.toml of eleven lines to put one fault into.
const small = `version = 1
name = "Small"
timezone = "UTC"
[house]
[[tank]]
name = "C1"
litres = 120
[[tank]]
name = "C2"
litres = 120
# end
`

// Each fault is put in place of a text of small; the refusal must name the line,
// the key and what would be right.
func TestRoomsThatAreRefused(t *testing.T) {
	long := strings.Repeat("x", 17)
	many := &strings.Builder{}
	for i := range 199 {
		fmt.Fprintf(many, "[[tank]]\nname = \"T%d\"\nlitres = 1\n", i)
	}
	house := func(lines string) [2]string { return [2]string{"[house]\n", "[house]\n" + lines + "\n"} }
	end := func(lines string) [2]string { return [2]string{"# end\n", lines + "\n"} }
	volume := func(v string) [2]string { return [2]string{"C2\"\nlitres = 120", "C2\"\n" + v} }
	name := func(n string) [2]string { return [2]string{`"C2"`, n} }
	cases := map[string]struct {
		put  [2]string // old and new text
		line int
		want string
	}{
		"no version":         {[2]string{"version = 1", ""}, 1, "version: is missing; write version = 1"},
		"later version":      {[2]string{"version = 1", "version = 2"}, 1, "version: written by a later version"},
		"version nought":     {[2]string{"version = 1", "version = 0"}, 1, "version: 0 was never written"},
		"version as text":    {[2]string{"version = 1", `version = "1"`}, 1, "version: a whole number is expected"},
		"no TOML":            {[2]string{`"Small"`, "Small"}, 2, "not TOML"},
		"text left open":     {[2]string{`"Small"`, `"Small`}, 2, "not TOML"},
		"key twice":          {[2]string{"# end", "litres = 3"}, 11, "not TOML"},
		"table twice":        {end("[house]"), 11, "not TOML"},
		"empty name":         {[2]string{`"Small"`, `" "`}, 2, "name: is empty"},
		"long name":          {[2]string{`Small`, strings.Repeat("x", 61)}, 2, "name: is 61 characters long; at most 60"},
		"name with a tab":    {[2]string{`Small`, `a\tb`}, 2, "name: holds a character"},
		"name as number":     {[2]string{`"Small"`, "3"}, 2, "name: text in quotes is expected, not the number 3"},
		"unknown zone":       {[2]string{`"UTC"`, `"Nassau"`}, 3, `timezone: "Nassau" is not a time zone; write an IANA name`},
		"empty zone":         {[2]string{`"UTC"`, `""`}, 3, "timezone: \"\" is not a time zone"},
		"local zone":         {[2]string{`"UTC"`, `"Local"`}, 3, "timezone: \"Local\" is not a time zone"},
		"zone as a date":     {[2]string{`"UTC"`, "2026-01-01"}, 3, "timezone: text in quotes is expected, not a date"},
		"unknown key":        {[2]string{"timezone", "tiemzone"}, 3, "tiemzone: is not known here; did you mean timezone?"},
		"unknown table":      {end("[kitchen]"), 11, "kitchen: is not known here; known are version, name"},
		"unknown house key":  {house("change_hour = 48"), 5, "house.change_hour: is not known here; did you mean change_hours?"},
		"house as a number":  {[2]string{"[house]", "house = 3"}, 4, "house: a table [house] is expected, not the number 3"},
		"change nought":      {house("change_hours = 0"), 5, "house.change_hours: 0 is out of range"},
		"change negative":    {house("change_hours = -48"), 5, "house.change_hours: -48 is out of range"},
		"change infinite":    {house("change_hours = inf"), 5, "house.change_hours: a number is expected"},
		"change not a value": {house("change_hours = nan"), 5, "house.change_hours: a number is expected"},
		"change as text":     {house(`change_hours = "48"`), 5, `house.change_hours: a number is expected, not the text "48"`},
		"grace negative":     {house("grace_hours = -1"), 5, "house.grace_hours: -1 is out of range; a number from 0"},
		"window negative":    {house("window_hours = -1"), 5, "house.window_hours: -1"},
		"early negative":     {house("early_hours = -1"), 5, "house.early_hours: -1"},
		"look nought":        {house("look_hours = 0"), 5, "house.look_hours: 0"},
		"feed nought":        {house("feed_hours = 0"), 5, "house.feed_hours: 0"},
		"unknown order":      {house(`order = "oldest"`), 5, `house.order: "oldest" is not one of oldest-first, youngest-first, due-first`},
		"crew of three":      {house("crew = 3"), 5, "house.crew: 3: 1 or 2 people"},
		"half a crew":        {house("crew = 1.5"), 5, "house.crew: a whole number is expected"},
		"day too long":       {house("day_minutes = 1441"), 5, "house.day_minutes: 1441"},
		"day negative":       {house("day_minutes = -1"), 5, "house.day_minutes: -1"},
		"ready nought":       {house("ready_um = 0"), 5, "house.ready_um: 0"},
		"three lobes":        {house("ready_lobes = 3"), 5, "house.ready_lobes: 3: a veliger has 2, 4 or 6"},
		"golden over 100":    {house("golden_percent = 101"), 5, "house.golden_percent: 101"},
		"dead negative":      {house("dead_percent = -1"), 5, "house.dead_percent: -1"},
		"factor nought":      {house("sieve_factor = 0"), 5, "house.sieve_factor: 0"},
		"cull over 100":      {house("cull_percent = 100.5"), 5, "house.cull_percent: 100.5"},
		"culture nought":     {house("culture_hours = 0"), 5, "house.culture_hours: 0"},
		"all kept back":      {house("reserve_percent = 100"), 5, "house.reserve_percent: 100"},
		"best out of order":  {house("temperature.best = [29, 27]"), 5, "house.temperature.best: [29, 27] is not in order"},
		"best of one":        {house("temperature.best = [29]"), 5, "house.temperature.best: two numbers are expected"},
		"best as number":     {house("temperature.best = 29"), 5, "house.temperature.best: a list of numbers is expected"},
		"best with a text":   {house("temperature.best = [27, \"29\"]"), 5, "house.temperature.best: a number is expected"},
		"best not bearable":  {house("temperature.best = [24, 28]"), 5, "house.temperature.best: 24 to 28 does not lie within bearable (25 to 31.5)"},
		"bearable too hot":   {house("temperature.bearable = [25, 310]"), 5, "house.temperature.bearable: 310"},
		"fine above hold":    {house("temperature.step_fine = 5"), 5, "house.temperature.step_fine: 5 is above step_hold (4)"},
		"hold nought":        {house("temperature.step_fine = 0\ntemperature.step_hold = 0"), 6, "house.temperature.step_hold: 0"},
		"handle nought":      {house("minutes.handle = 0"), 5, "house.minutes.handle: 0"},
		"wash negative":      {house("minutes.wash = -8"), 5, "house.minutes.wash: -8"},
		"drain nought":       {house("litres_per_minute.drain = 0"), 5, "house.litres_per_minute.drain: 0"},
		"fill negative":      {house("litres_per_minute.fill = -1"), 5, "house.litres_per_minute.fill: -1"},
		"acid nought":        {house("wash.ml_per_litre = 0"), 5, "house.wash.ml_per_litre: 0"},
		"wash nought":        {house("wash.tank_litres = 0"), 5, "house.wash.tank_litres: 0"},
		"bin negative":       {house("wash.bin_litres = -20"), 5, "house.wash.bin_litres: -20"},
		"stock nought":       {house("wash.stock_percent = 0"), 5, "house.wash.stock_percent: 0 is out of range; a number from 0.5 up to 40 per cent by weight"},
		"stock over 40":      {house("wash.stock_percent = 40.5"), 5, "house.wash.stock_percent: 40.5"},
		"unknown wash key":   {house("wash.litres = 3"), 5, "house.wash.litres: is not known here; known are ml_per_litre"},

		"no mesh":               {house("mesh = []"), 5, "house.mesh: has no band"},
		"empty mesh":            {end("[[house.mesh]]\nfrom_day = 0\num = []"), 13, "house.mesh[1].um: is empty"},
		"mesh nought":           {end("[[house.mesh]]\nfrom_day = 0\num = [0]"), 13, "house.mesh[1].um: 0 is out of range"},
		"mesh twice":            {end("[[house.mesh]]\nfrom_day = 0\num = [150, 150]"), 13, "house.mesh[1].um: names 150 twice"},
		"mesh missing":          {end("[[house.mesh]]\nfrom_day = 0"), 11, "house.mesh[1].um: is missing; write um = [105, 150]"},
		"mesh without a day":    {end("[[house.mesh]]\num = [150]"), 11, "house.mesh[1].from_day: is missing"},
		"mesh of a number":      {end("[[house.mesh]]\nfrom_day = 0\num = 150"), 13, "house.mesh[1].um: a list of numbers is expected"},
		"mesh table not a list": {end("[house.mesh]\nfrom_day = 0\num = [150]"), 11, "house.mesh: a list of tables [[house.mesh]] is expected"},
		"mesh list of numbers":  {house("mesh = [105, 150]"), 5, "house.mesh: a list of tables [[house.mesh]] is expected, not a list of the number 105"},
		"mesh bands unordered":  {end("[[house.mesh]]\nfrom_day = 12\num = [200]\n[[house.mesh]]\nfrom_day = 0\num = [105]"), 15, "house.mesh[2].from_day: 0 does not come after"},
		"mesh bands overlap":    {end("[[house.mesh]]\nfrom_day = 0\num = [200]\n[[house.mesh]]\nfrom_day = 0\num = [105]"), 15, "house.mesh[2].from_day: 0 does not come after"},
		"negative day":          {end("[[house.density]]\nfrom_day = -1\nper_litre = 100"), 12, "house.density[1].from_day: -1 is out of range"},
		"half a day":            {end("[[house.density]]\nfrom_day = 0.5\nper_litre = 100"), 12, "house.density[1].from_day: a whole number is expected"},
		"density unordered":     {end("[[house.density]]\nfrom_day = 3\nper_litre = 100\n[[house.density]]\nfrom_day = 2\nper_litre = 50"), 15, "house.density[2].from_day: 2 does not come after"},
		"density nought":        {end("[[house.density]]\nfrom_day = 0\nper_litre = 0"), 13, "house.density[1].per_litre: 0"},
		"ration unordered":      {end("[[house.ration]]\nfrom_day = 3\ncells_per_ml = 1\nshare = { iso = 1 }\n[[house.ration]]\nfrom_day = 3\ncells_per_ml = 1\nshare = { iso = 1 }"), 16, "house.ration[2].from_day: 3 does not come after"},
		"ration nought":         {end("[[house.ration]]\nfrom_day = 0\ncells_per_ml = 0\nshare = { iso = 1 }"), 13, "house.ration[1].cells_per_ml: 0"},
		"share of no alga":      {end("[[house.ration]]\nfrom_day = 0\ncells_per_ml = 9\nshare = { iso = 1, chaet = 1 }"), 14, "house.ration[1].share.chaet: is not an alga of this room (iso)"},
		"share of nothing":      {end("[[house.ration]]\nfrom_day = 0\ncells_per_ml = 9\nshare = { iso = 0 }"), 14, "house.ration[1].share: adds up to nothing"},
		"share negative":        {end("[[house.ration]]\nfrom_day = 0\ncells_per_ml = 9\nshare = { iso = -1 }"), 14, "house.ration[1].share.iso: -1"},
		"share empty":           {end("[[house.ration]]\nfrom_day = 0\ncells_per_ml = 9\nshare = {}"), 14, "house.ration[1].share: adds up to nothing"},
		"share as number":       {end("[[house.ration]]\nfrom_day = 0\ncells_per_ml = 9\nshare = 1"), 14, "house.ration[1].share: a table is expected"},
		"share as text":         {end("[[house.ration]]\nfrom_day = 0\ncells_per_ml = 9\nshare = { iso = \"1\" }"), 14, "house.ration[1].share.iso: a number is expected"},
		"growth out of order":   {end("[[house.growth]]\nfrom_day = 7\nlow_um = 500\nhigh_um = 400"), 13, "house.growth[1].low_um: 500 is not below high_um (400)"},
		"growth unordered":      {end("[[house.growth]]\nfrom_day = 7\nlow_um = 400\nhigh_um = 500\n[[house.growth]]\nfrom_day = 7\nlow_um = 400\nhigh_um = 500"), 16, "house.growth[2].from_day: 7 does not come after"},
		"growth half":           {end("[[house.growth]]\nfrom_day = 7\nlow_um = 400"), 11, "house.growth[1].high_um: is missing"},
		"eyepiece nought":       {end("[[house.eyepiece]]\nname = \"4x\"\num_per_division = 0"), 13, "house.eyepiece[1].um_per_division: 0"},
		"eyepiece twice":        {end("[[house.eyepiece]]\nname = \"4x\"\num_per_division = 20\n[[house.eyepiece]]\nname = \"4X\"\num_per_division = 20"), 15, `house.eyepiece[2].name: "4X" is there already`},

		"alga twice":      {end("[[algae]]\nname = \"iso\"\n[[algae]]\nname = \"ISO\""), 14, `algae[2].name: "ISO" is there already`},
		"alga, no name":   {end("[[algae]]\nfull = \"Isochrysis\""), 11, "algae[1].name: is missing"},
		"alga with comma": {end("[[algae]]\nname = \"i,so\""), 12, "algae[1].name: \"i,so\" holds one of"},
		"alga weight":     {end("[[algae]]\nname = \"iso\"\npg_per_cell = -1"), 13, "algae[1].pg_per_cell: -1"},
		"alga full name":  {end("[[algae]]\nname = \"iso\"\nfull = \"a\\u0007\""), 13, "algae[1].full: is too long or holds"},
		"supply twice":    {end("[[supply]]\nname = \"h\"\n[[supply]]\nname = \"H\""), 14, `supply[2].name: "H" is there already`},
		"supply of space": {end("[[supply]]\nname = \" h\""), 12, "supply[1].name: \" h\" begins or ends with a space"},
		"supply key":      {end("[[supply]]\nname = \"h\"\nlitres = 3"), 13, "supply[1].litres: is not known here; known are name"},

		"no tank":           {[2]string{small[strings.Index(small, "[[tank]]"):], ""}, 1, "tank: the room has no tank; add [[tank]]"},
		"too many tanks":    {end(many.String()), 5, "tank: 201 tanks; at most 200"},
		"tank twice":        {name(`"C1"`), 9, `tank[2].name: "C1" is there already`},
		"tank in lower":     {name(`"c1"`), 9, `tank[2].name: "c1" is there already; names differ by more than their case`},
		"no volume":         {volume(""), 8, "tank[2].litres: is missing; write litres = 120"},
		"volume nought":     {volume("litres = 0"), 10, "tank[2].litres: 0 is out of range; a number above 0"},
		"volume negative":   {volume("litres = -120"), 10, "tank[2].litres: -120"},
		"volume as text":    {volume(`litres = "120"`), 10, "tank[2].litres: a number is expected"},
		"volume misspelt":   {volume("liters = 120"), 8, "tank[2].litres: is missing"},
		"volume of a lake":  {volume("litres = 1e9"), 10, "tank[2].litres: 1000000000 is out of range"},
		"tank without name": {[2]string{`name = "C2"`, ""}, 8, "tank[2].name: is missing"},
		"tank name empty":   {name(`""`), 9, "tank[2].name: is empty; 1 to 16"},
		"tank name long":    {name(`"` + long + `"`), 9, "is 17 characters long; at most 16"},
		"tank name space":   {name(`"C2 "`), 9, "begins or ends with a space"},
		"tank name comma":   {name(`"C,2"`), 9, "holds one of"},
		"tank name colon":   {name(`"C:2"`), 9, "holds one of"},
		"tank name equals":  {name(`"C=2"`), 9, "holds one of"},
		"tank name arrow":   {name(`"C>2"`), 9, "holds one of"},
		"tank name slash":   {name(`"C/2"`), 9, "holds one of"},
		"tank name back":    {name(`'C\2'`), 9, "holds one of"},
		"tank name quote":   {name(`'C"2'`), 9, "holds one of"},
		"tank name control": {name(`"C\u00012"`), 9, "holds a character that cannot be shown"},
		"tank name hidden":  {name(`"C\u200b2"`), 9, "holds a character that cannot be shown"},
		"tank name dash":    {name(`"C2-"`), 9, "ends in a dash"},
		"row alone":         {volume("litres = 120\nrow = 1"), 11, "tank[2].row: stands without a column"},
		"column alone":      {volume("litres = 120\ncolumn = 1"), 11, "tank[2].column: stands without a row"},
		"row negative":      {volume("litres = 120\nrow = -1\ncolumn = 1"), 11, "tank[2].row: -1"},
		"place taken": {
			[2]string{"# end\n", "row = 1\ncolumn = 1\n[[tank]]\nname = \"C3\"\nlitres = 1\nrow = 1\ncolumn = 1\n"},
			16,
			"tank[3].row: C2 stands in row 1, column 1 already",
		},
		"tank as a table": {[2]string{small[strings.Index(small, "[[tank]]"):], "[tank]\nname = \"C1\"\nlitres = 1\n"}, 5, "tank: a list of tables [[tank]] is expected"},
	}
	if _, problems := decodeRoom("room.toml", small, "x"); len(problems) > 0 {
		t.Fatalf("the room without a fault is refused: %v", problems)
	}
	for label, c := range cases {
		t.Run(label, func(t *testing.T) {
			if !strings.Contains(small, c.put[0]) {
				t.Fatalf("there is no %q to put the fault in place of", c.put[0])
			}
			_, problems := decodeRoom("room.toml", strings.Replace(small, c.put[0], c.put[1], 1), "x")
			if len(problems) == 0 {
				t.Fatal("it was taken")
			}
			got := problems[0].Error()
			where := fmt.Sprintf("room.toml:%d: ", c.line)
			if !strings.HasPrefix(got, where) || !strings.Contains(got, c.want) || strings.Contains(got, "\n") {
				t.Errorf("refusal: %s\nwant:    %s%s", got, where, c.want)
			}
			if len(problems) > 1 && label != "volume misspelt" {
				t.Errorf("one fault, %d refusals: %v", len(problems), problems)
			}
		})
	}
}

func TestAllFaultsAreCollected(t *testing.T) {
	text := strings.NewReplacer("[house]", "[house]\ncrew = 3\ncolour = 1", "litres = 120", "litres = 0").Replace(small)
	_, problems := decodeRoom("room.toml", text, "x")
	var lines []int
	for _, p := range problems {
		lines = append(lines, p.Line)
	}
	if diff := cmp.Diff([]int{5, 6, 9, 12}, lines); diff != "" {
		t.Errorf("lines of the refusals (-want +got):\n%s\n%v", diff, problems)
	}
	dir := t.TempDir()
	writeFile(t, text, dir, "room.toml")
	_, err := Open(dir, Options{})
	if err == nil || !strings.Contains(err.Error(), "house.crew") || !strings.HasSuffix(err.Error(), "(and 3 more; drainboard verify lists them)") {
		t.Errorf("Open says %v; want the first fault and the number of the others", err)
	}
}

func TestARoomOfTwoHundredTanksIsTaken(t *testing.T) {
	dir := t.TempDir()
	if err := Init(dir, InitOptions{Tanks: model.MaxTanks}); err != nil {
		t.Fatal(err)
	}
	if n := len(openRoom(t, dir, Options{}).Room().Tanks); n != 200 {
		t.Errorf("%d tanks; want 200", n)
	}
}

// A file saved by an editor that marks UTF-8 and ends lines by CR LF.
func TestOtherEditorsAreTaken(t *testing.T) {
	text := "\ufeff" + strings.ReplaceAll(small, "\n", "\r\n")
	if _, problems := decodeRoom("room.toml", text, "x"); len(problems) > 0 {
		t.Errorf("refused: %v", problems)
	}
	text = strings.Replace(text, "name = \"C2\"", "name = \"C1\"", 1)
	if _, problems := decodeRoom("room.toml", text, "x"); len(problems) != 1 || problems[0].Line != 9 {
		t.Errorf("problems = %v; want one on line 9", problems)
	}
}

func FuzzRoom(f *testing.F) {
	f.Add(small)
	for _, room := range []string{"every-key", "smallest"} {
		text, err := os.ReadFile(filepath.Join(roomsDir, room, "room.toml"))
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	f.Add(writeRoom(withDefaults("x", InitOptions{})))
	f.Fuzz(func(t *testing.T, text string) {
		room, problems := decodeRoom("room.toml", text, "x")
		for _, p := range problems {
			if p.Line < 1 || p.Line > strings.Count(text, "\n")+1 || strings.ContainsAny(p.Text, "\n\r") {
				t.Errorf("refusal %q on line %d of %q", p.Text, p.Line, text)
			}
		}
		if len(problems) > 0 {
			return
		}
		if wrong := room.Check(); len(wrong) > 0 {
			t.Errorf("taken, but Check says %v", wrong)
		}
		if _, err := model.LoadLedger(room, nil); err != nil {
			t.Error(err)
		}
	})
}
