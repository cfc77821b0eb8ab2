package keys

import (
	"fmt"
	"strings"
)

// Markdown writes tables for the README: one heading and one table each.
func Markdown(tables ...Table) string {
	var b strings.Builder
	for i, t := range tables {
		if i > 0 {
			b.WriteByte('\n')
		}
		fmt.Fprintf(&b, "### %s\n\n| Key | What it does |\n|---|---|\n", t.Title)
		for _, row := range t.Bindings {
			fmt.Fprintf(&b, "| %s | %s |\n", escape(row.Names()), escape(row.Long))
		}
	}
	return b.String()
}

func escape(s string) string { return strings.ReplaceAll(s, "|", `\|`) }

// Problems says what is wrong with a table that works beside others: a key with
// two meanings, a row without key, action or sentence. Each screen's test
// expects none.
func Problems(tables ...Table) []string {
	var out []string
	owner := map[string]string{}
	for _, t := range tables {
		for _, b := range t.Bindings {
			where := fmt.Sprintf("%s: %s", t.Title, b.Action)
			if b.Action == "" || b.Long == "" || len(b.Keys) == 0 {
				out = append(out, where+" lacks its action, keys or sentence")
			}
			for _, k := range b.Keys {
				if other, taken := owner[k]; taken {
					out = append(out, fmt.Sprintf("%s and %s share the key %s", other, where, k))
				}
				owner[k] = where
				out = append(out, unfit(where, k)...)
			}
		}
	}
	return out
}

// unfit names keys that terminals cannot tell from others or that Match would
// never see.
func unfit(where, k string) []string {
	switch {
	case k == "ctrl+i", k == "ctrl+m", k == "ctrl+[", k == "ctrl+j", k == "ctrl+h":
		return []string{fmt.Sprintf("%s: terminals report %s as another key", where, k)}
	case k != strings.ToLower(k):
		return []string{fmt.Sprintf("%s: %s differs from a small letter by case only", where, k)}
	case strings.HasPrefix(k, "alt+"):
		return []string{fmt.Sprintf("%s: %s is a chord", where, k)}
	}
	return nil
}
