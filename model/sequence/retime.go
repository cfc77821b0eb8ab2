package sequence

import "fmt"

// Retime times a list that people have made or changed, exactly as it stands: in
// its order, with its destinations, ByRule leaving one to the rule. A leg that
// cannot be made is named in the complaints and the others are still timed. A leg
// may wait for a tank that is emptied before it; its source must be among
// Problem.Sources, so whoever adds a tank to the list adds its source too. Sources
// that are not in the list are unmoved. The plan's Best is false: nothing is
// proved. The error is for a problem that cannot be planned at all.
func Retime(p Problem, legs []Leg) (Plan, []Complaint, error) {
	r, err := newRoom(p)
	if err != nil {
		return Plan{}, nil, err
	}
	plan, complaints := r.timetable(legs)
	for i := range plan.Unmoved {
		plan.Unmoved[i].Why = r.notListed(plan, plan.Unmoved[i].Source)
		for _, c := range complaints {
			if c.From == plan.Unmoved[i].Tank {
				plan.Unmoved[i].Why = c.Why
			}
		}
	}
	return plan, complaints, nil
}

// notListed says that a source, or the last of its parts, is not in the list.
func (r *room) notListed(plan Plan, j int) string {
	moved := 0
	for _, m := range plan.Moves {
		moved += b2i(m.Source == j)
	}
	if moved == 0 {
		return "not in the list"
	}
	return fmt.Sprintf("%d of its %d parts not in the list", r.jobs[j].parts-moved, r.jobs[j].parts)
}
