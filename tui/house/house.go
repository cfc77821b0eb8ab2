// Package house shows the rules of the room as they were read from room.toml,
// beside the defaults. It changes nothing: people edit the file. It imports no
// other screen.
package house

import (
	"fmt"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"drainboard/model"
	"drainboard/tui/desk"
	"drainboard/tui/keys"
	"drainboard/tui/screen"
	"drainboard/tui/text"
)

// House is the screen of the house rules.
type House struct {
	desk *desk.Desk
	page screen.Page
	h    int // rows of the last frame, for paging
}

// New returns the screen of a desk.
func New(d *desk.Desk) *House { return &House{desk: d} }

// Title is the name of the screen.
func (s *House) Title() string { return "House" }

// Init has nothing to prepare.
func (s *House) Init() tea.Cmd { return nil }

// Capturing is false: nothing is typed here.
func (s *House) Capturing() bool { return false }

// Keys is what the keys do.
func (s *House) Keys() keys.Table {
	return keys.Table{Title: "House", Bindings: []keys.Binding{
		{Action: "scroll", Keys: []string{"up", "down", "pgup", "pgdown", "home", "end"}, Label: "arrows", Short: "scroll", Long: "Scroll through the rules."},
	}}
}

// Update takes a key.
func (s *House) Update(msg tea.Msg) (screen.Screen, tea.Cmd) {
	key, ok := msg.(tea.KeyMsg)
	if !ok {
		return s, nil
	}
	if action, _ := keys.Everywhere().Match(key); action == keys.Back {
		return s, screen.Send(screen.Back{})
	}
	s.page, _ = s.page.Update(key, s.h)
	return s, nil
}

// View draws the rules in exactly h rows of w cells.
func (s *House) View(w, h int) []string {
	th := s.desk.Theme
	head := []string{
		text.Fit(th.Title.Render(" HOUSE RULES of "+text.Clean(s.desk.Ledger.Room().Name)), w),
		text.Fit(th.Faint.Render(" as read from room.toml at the start; * differs from the default. Edit the file to change them."), w),
	}
	s.h = max(1, h-len(head))
	s.page.Lines = s.lines()
	return text.Frame(append(head, s.page.View(th, w, s.h)...), w, h)
}

// rule is one line: a key of room.toml, its value here and by default.
type rule struct{ key, here, usual, unit string }

func (s *House) lines() []string {
	th := s.desk.Theme
	room := s.desk.Ledger.Room()
	var lines []string
	for _, r := range rules(room.House, model.DefaultHouse()) {
		mark, style := " ", th.Plain
		if r.here != r.usual {
			mark, style = "*", th.Strong
		}
		lines = append(lines, " "+mark+" "+text.Fit(r.key, 30)+" "+style.Render(r.here)+" "+th.Faint.Render(r.unit))
	}
	lines = append(lines, "")
	return append(lines, places(room)...)
}

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

func band(b model.Band) string { return number(b.Low) + " to " + number(b.High) }

// rules sets every rule of a house beside its default.
func rules(here, usual model.House) []rule {
	row := func(key, unit string, value func(model.House) string) rule {
		return rule{key, value(here), value(usual), unit}
	}
	figure := func(key, unit string, value func(model.House) float64) rule {
		return row(key, unit, func(h model.House) string { return number(value(h)) })
	}
	return []rule{
		figure("change_hours", "h", func(h model.House) float64 { return h.ChangeHours }),
		figure("grace_hours", "h", func(h model.House) float64 { return h.GraceHours }),
		figure("window_hours", "h", func(h model.House) float64 { return h.WindowHours }),
		figure("look_hours", "h", func(h model.House) float64 { return h.LookHours }),
		figure("feed_hours", "h", func(h model.House) float64 { return h.FeedHours }),
		figure("day_minutes", "min; 0 is no limit", func(h model.House) float64 { return h.DayMinutes }),
		figure("early_hours", "h", func(h model.House) float64 { return h.EarlyHours }),
		row("order", "", func(h model.House) string { return h.Order }),
		row("crew", "people", func(h model.House) string { return strconv.Itoa(h.Crew) }),
		row("temperature.best", "°C", func(h model.House) string { return band(h.Temperature.Best) }),
		row("temperature.bearable", "°C", func(h model.House) string { return band(h.Temperature.Bearable) }),
		figure("temperature.step_fine", "°C", func(h model.House) float64 { return h.Temperature.StepFine }),
		figure("temperature.step_hold", "°C", func(h model.House) float64 { return h.Temperature.StepHold }),
		figure("minutes.handle", "min", func(h model.House) float64 { return h.Minutes.Handle }),
		figure("minutes.wash", "min", func(h model.House) float64 { return h.Minutes.Wash }),
		figure("litres_per_minute.drain", "L/min", func(h model.House) float64 { return h.Litres.Drain }),
		figure("litres_per_minute.fill", "L/min", func(h model.House) float64 { return h.Litres.Fill }),
		figure("wash.ml_per_litre", "mL/L", func(h model.House) float64 { return h.Wash.MLPerLitre }),
		figure("wash.tank_litres", "L", func(h model.House) float64 { return h.Wash.TankLitres }),
		figure("wash.bin_litres", "L", func(h model.House) float64 { return h.Wash.BinLitres }),
		figure("wash.stock_percent", "% HCl by weight, from the bottle's label", func(h model.House) float64 { return h.Wash.StockPercent }),
		figure("ready_um", "µm", func(h model.House) float64 { return h.Growth.ReadyUM }),
		row("ready_lobes", "lobes", func(h model.House) string { return strconv.Itoa(h.Growth.ReadyLobes) }),
		figure("golden_percent", "%", func(h model.House) float64 { return h.Growth.GoldenShare }),
		figure("dead_percent", "%", func(h model.House) float64 { return h.Growth.DeadShare }),
		figure("sieve_factor", "", func(h model.House) float64 { return h.Growth.SieveFactor }),
		figure("cull_percent", "%", func(h model.House) float64 { return h.Growth.CullPercent }),
		figure("culture_hours", "h", func(h model.House) float64 { return h.Feeding.CultureHours }),
		row("mesh", "µm by age", meshes),
		row("density", "larvae per L by age", densities),
		row("ration", "cells per mL by age", rations),
		row("growth", "µm by age", corridor),
		row("eyepiece", "µm per division", eyepieces),
	}
}

// joined lists parts, or says that there are none.
func joined(parts []string) string {
	if len(parts) == 0 {
		return "none"
	}
	return strings.Join(parts, "; ")
}

func meshes(h model.House) string {
	var parts []string
	for _, b := range h.Mesh {
		um := make([]string, len(b.UM))
		for i, x := range b.UM {
			um[i] = number(x)
		}
		parts = append(parts, fmt.Sprintf("day %d: %s", b.FromDay, strings.Join(um, " or ")))
	}
	return joined(parts)
}

func densities(h model.House) string {
	var parts []string
	for _, b := range h.Density {
		parts = append(parts, fmt.Sprintf("day %d: %s", b.FromDay, number(b.PerLitre)))
	}
	return joined(parts)
}

func rations(h model.House) string {
	var parts []string
	for _, b := range h.Ration {
		parts = append(parts, fmt.Sprintf("day %d: %s", b.FromDay, number(b.CellsPerML)))
	}
	return joined(parts)
}

func corridor(h model.House) string {
	var parts []string
	for _, b := range h.Corridor {
		parts = append(parts, fmt.Sprintf("day %d: %s to %s", b.FromDay, number(b.LowUM), number(b.HighUM)))
	}
	return joined(parts)
}

func eyepieces(h model.House) string {
	var parts []string
	for _, m := range h.Growth.Eyepieces {
		parts = append(parts, text.Clean(m.Name)+": "+number(m.UMPer))
	}
	return joined(parts)
}

// places lists what stands in the room.
func places(r *model.Room) []string {
	var tanks, supplies, algae []string
	for _, t := range r.Tanks {
		tanks = append(tanks, text.Clean(t.Name)+" "+number(t.Litres)+" L")
	}
	for _, s := range r.Supplies {
		supplies = append(supplies, text.Clean(s.Name))
	}
	for _, a := range r.Algae {
		algae = append(algae, text.Clean(a.Name))
	}
	return []string{
		"   tanks     " + joined(tanks),
		"   supplies  " + joined(supplies),
		"   algae     " + joined(algae),
		"   timezone  " + r.Zone.String(),
	}
}
