package main

import (
	"fmt"
	"strings"
	"time"

	"drainboard/model"
	"drainboard/model/paper"
	"drainboard/state"

	"github.com/spf13/cobra"
)

// newHandover is the command that tells the next shift.
func newHandover(p *program) *cobra.Command {
	var (
		ask   asking
		since string
	)
	c := &cobra.Command{
		Use: "handover --since T", Short: "What happened, what deviated, what is open and what comes next", Args: noWords,
		Long: "What happened since a moment, what went otherwise than the room has it, what is open, the alarms\n" +
			"and what falls due within a day: one page of 80 columns. --since takes RFC 3339, a time of day\n" +
			"as 06:00 (the last time it was), or a length as 12h.",
		RunE: doing(func([]string) error {
			if since == "" {
				return usagef("handover: --since is missing; write it as 06:00, 12h or 2026-11-25T06:00:00-05:00")
			}
			return p.handover(ask, since)
		}),
	}
	ask.flags(c)
	c.Flags().StringVar(&since, "since", "", "from this `time` on")
	return c
}

func (p *program) handover(ask asking, since string) error {
	now, err := ask.moment(p)
	if err != nil {
		return err
	}
	return p.reading(func(f *state.Folder) error {
		from, err := sinceMoment(since, now, f.Room().Zone)
		if err != nil {
			return err
		}
		h, err := paper.NewHandover(f.Ledger().At(now), from, now)
		if err != nil {
			return fmt.Errorf("handover: %w", err)
		}
		if ask.json {
			return p.printJSON(viewHandover(h))
		}
		return p.print(handoverText(h))
	})
}

// sinceMoment reads what --since says: a moment, a time of day or a length.
func sinceMoment(s string, now time.Time, zone *time.Location) (time.Time, error) {
	s = strings.TrimSpace(s)
	from, err := model.ParseMoment(s)
	if err == nil {
		if from.After(now) {
			return from, usagef("handover: --since %s lies after %s", s, stamp(now, zone))
		}
		return from, nil
	}
	if clockTime, bad := time.Parse("15:04", s); bad == nil {
		here := now.In(zone)
		for back := range 2 {
			day := time.Date(here.Year(), here.Month(), here.Day()-back, clockTime.Hour(), clockTime.Minute(), 0, 0, zone)
			if !day.After(now) {
				return day, nil
			}
		}
	}
	if length, bad := time.ParseDuration(s); bad == nil && length > 0 {
		return now.Add(-length), nil
	}
	return time.Time{}, usagef("handover: --since %q: write it as 06:00, 12h or 2026-11-25T06:00:00-05:00", s)
}
