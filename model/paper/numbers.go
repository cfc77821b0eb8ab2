package paper

import (
	"fmt"
	"slices"
	"strings"
)

// Numbers are the entries a figure comes from, by their n.
type Numbers []int

// String lists the numbers ascending, each once, runs of three and more
// shortened: "12-15, 19".
func (n Numbers) String() string {
	sorted := slices.Compact(slices.Sorted(slices.Values(n)))
	var parts []string
	for i := 0; i < len(sorted); {
		end := i
		for end+1 < len(sorted) && sorted[end+1] == sorted[end]+1 {
			end++
		}
		switch end - i {
		case 0:
			parts = append(parts, fmt.Sprint(sorted[i]))
		case 1:
			parts = append(parts, fmt.Sprint(sorted[i]), fmt.Sprint(sorted[end]))
		default:
			parts = append(parts, fmt.Sprintf("%d-%d", sorted[i], sorted[end]))
		}
		i = end + 1
	}
	return strings.Join(parts, ", ")
}
